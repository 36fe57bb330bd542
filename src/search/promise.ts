import type { Build, Duty, Enclosure } from '../enclosure/enclosure.ts';
import type { Plant } from '../enclosure/machine.ts';
import { createAirPowerBound } from './air-power-bound.ts';
import { createLegBound } from './leg-bound.ts';

/** Lower bounds of the sound energy of builds, by duty, at 1 m [-]; infinite where a build cannot do. */
export interface Promises {
  /** Quick to have; bank places may be open. */
  readonly coarse: (build: Build) => Float64Array;
  /**
   * As tight as bounds without a pass get; stops early once the build is above the energy to beat.
   * `toBeat` is the mean over the duties by their shares, at 1 m [-].
   */
  readonly fine: (build: Build, toBeat: number) => Float64Array;
}

/** Mean of energies over the duties by their shares [-]; infinite if any duty cannot be met. */
export function meanEnergy(enclosure: Enclosure, energies: Float64Array): number {
  let sum = 0;
  for (let duty = 0; duty < energies.length; duty++) {
    const value = energies[duty] as number;
    if (value === Number.POSITIVE_INFINITY) return value;
    sum += (enclosure.duties[duty] as Duty).share * value;
  }
  return sum;
}

/**
 * Energy a duty may have so that the mean stays below one to beat, if the others need no less than given [-].
 * Infinite for a duty without a share.
 */
export function budgetOf(enclosure: Enclosure, energies: Float64Array, duty: number, toBeat: number): number {
  const { share } = enclosure.duties[duty] as Duty;
  if (share === 0 || toBeat === Number.POSITIVE_INFINITY) return Number.POSITIVE_INFINITY;
  let others = 0;
  for (let index = 0; index < energies.length; index++) {
    if (index !== duty) others += (enclosure.duties[index] as Duty).share * (energies[index] as number);
  }
  return (toBeat - others) / share;
}

/**
 * Prepares the bounds that fit an airway.
 *
 * @param enclosure the scenario
 * @param plant its plan
 */
export function createPromises(enclosure: Enclosure, plant: Plant): Promises {
  const airPower = createAirPowerBound(enclosure);
  const legs = createLegBound(enclosure, plant);
  if (!legs) return { coarse: airPower, fine: (build) => airPower(build) };
  const coarse = (build: Build): Float64Array =>
    airPower(build).map((value, duty) =>
      (enclosure.duties[duty] as Duty).share > 0 ? Math.max(value, legs.coarse(build, duty)) : value,
    );
  const fine = (build: Build, toBeat: number): Float64Array => {
    const energies = coarse(build);
    for (let duty = 0; duty < energies.length; duty++) {
      if (meanEnergy(enclosure, energies) >= toBeat) break;
      // A duty without a share is only asked whether it can be met at all: any finite value will do.
      const { share } = enclosure.duties[duty] as Duty;
      const enough = share === 0 ? 0 : budgetOf(enclosure, energies, duty, toBeat);
      const value = legs.fine(build, duty, enough);
      energies[duty] = Math.max(energies[duty] as number, value);
    }
    return energies;
  };
  return { coarse, fine };
}
