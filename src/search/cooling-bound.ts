import { askedLimits } from '../enclosure/asked-limits.ts';
import type { Build, Duty, Enclosure } from '../enclosure/enclosure.ts';
import { assemble, type Machine, type Plant, plantOf } from '../enclosure/machine.ts';
import type { KelvinDifference } from '../quantities/dimensions.ts';
import { fastestWithin } from './bank-limits.ts';
import { createTrial, type Point, type Trial } from './trial.ts';

/**
 * Allowance of the bound for the one effect that the ordering of speeds does not cover: air of another density in a
 * bypass that flows outward [K]. Model assumption, no source.
 */
const DENSITY_ALLOWANCE: KelvinDifference = 0.25;
/**
 * The same where a leg draws exhaust in again, as a share of how far limits lie above the room [-]: its warm air is
 * thinner, so that without it less air would take the other ways in, which may be those that cool. Model assumption, no
 * source.
 */
const RECIRCULATION_ALLOWANCE = 0.02;

/**
 * How much warmer than allowed the coolest point of a build may look though the build is adequate [K].
 *
 * @param plant of the scenario, with its recirculation
 * @param duty the state of use
 */
export function coolingAllowance(plant: Plant, duty: Duty): KelvinDifference {
  if (plant.enclosure.legs.every(({ recirculation }) => recirculation === 0)) return DENSITY_ALLOWANCE;
  const highest = Math.max(0, ...askedLimits({ plant }, duty).map(({ limit }) => limit));
  return Math.max(DENSITY_ALLOWANCE, RECIRCULATION_ALLOWANCE * (highest - duty.room));
}

/** A build seen at its coolest: no heat of the fans, no recirculation. */
export interface CoolTrials {
  /** Coolest point in a duty with every bank at most this loud by itself [sound energy at 1 m]. */
  readonly coolestWithin: (duty: number, allowed: number) => Point | null;
  readonly passes: () => number;
}

/** Plan of the same airway without recirculation, and with nothing asked beside its limits. */
export function coolPlantOf(enclosure: Enclosure): Plant {
  const legs = enclosure.legs.map((leg) => ({ ...leg, recirculation: 0 }));
  // What is asked of working points has nothing to do with how cool a build can be.
  const { asks: _, ...plain } = enclosure;
  // Faster fans may warm a part without a limit: how hot it gets at these speeds proves nothing of others.
  const heat = { ...enclosure.assumptions.heat, hottestPart: Number.POSITIVE_INFINITY };
  return plantOf({ ...plain, legs, assumptions: { ...enclosure.assumptions, heat } });
}

/** Greatest speeds of the banks at which each by itself keeps within an energy; null if one cannot. */
function speedsWithin(machine: Machine, allowed: number): Float64Array | null {
  const { fanFloor } = machine.plant.enclosure.assumptions.sound;
  const speeds = new Float64Array(machine.banks.length);
  for (const [index, { bank, speedLevel, installation, nearness }] of machine.banks.entries()) {
    const { holdFloor } = bank.fan;
    const own = allowed / nearness;
    speeds[index] = fastestWithin(speedLevel, bank.count, holdFloor, installation, fanFloor, own);
    if (speeds[index] === 0) return null;
  }
  return speeds;
}

/**
 * Prepares the cooling bound of a build: where faster is always cooler, the coolest a build can be without any
 * bank being too loud by itself is with every bank just that loud.
 *
 * @param coolPlant plan made by `coolPlantOf`
 * @param build one option index per place
 */
export function coolTrials(coolPlant: Plant, build: Build): CoolTrials {
  const machine = assemble(coolPlant, build);
  const trials = new Map<number, Trial>();
  const trialOf = (duty: number): Trial => {
    let trial = trials.get(duty);
    if (!trial) {
      trial = createTrial(machine, coolPlant.enclosure.duties[duty] as Duty, 0);
      trials.set(duty, trial);
    }
    return trial;
  };
  return {
    coolestWithin: (duty, allowed) => {
      const speeds = speedsWithin(machine, allowed);
      return speeds ? trialOf(duty).evaluate(speeds) : null;
    },
    passes: () => [...trials.values()].reduce((sum, trial) => sum + trial.passes(), 0),
  };
}
