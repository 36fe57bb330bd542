import type { Build, Duty, Enclosure } from '../enclosure/enclosure.ts';
import type { Plant } from '../enclosure/machine.ts';
import { createAirPowerBound } from './air-power-bound.ts';
import { createLegBound } from './leg-bound.ts';
import type { Objective } from './objective.ts';

/** Lower bounds of the sound energy of builds, by duty, at 1 m [-]; infinite where a build cannot do. */
export interface Promises {
  /** Quick to have; bank places may be open. */
  readonly coarse: (build: Build) => Float64Array;
  /**
   * As tight as bounds without a pass get; stops early once the build is above the energy to beat.
   * `toBeat` is an energy of the objective, at 1 m [-].
   */
  readonly fine: (build: Build, toBeat: number) => Float64Array;
}

/**
 * Prepares the bounds that fit an airway.
 *
 * @param enclosure the scenario
 * @param plant its plan
 * @param objective what the ranking goes by
 */
export function createPromises(enclosure: Enclosure, plant: Plant, objective: Objective): Promises {
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
      if (objective.energyOf(enclosure, energies) >= toBeat) break;
      // A duty without a share is only asked whether it can be met at all: any finite value will do.
      const { share } = enclosure.duties[duty] as Duty;
      const enough = share === 0 ? 0 : objective.budgetOf(enclosure, energies, duty, toBeat);
      const value = legs.fine(build, duty, enough);
      energies[duty] = Math.max(energies[duty] as number, value);
    }
    return energies;
  };
  return { coarse, fine };
}
