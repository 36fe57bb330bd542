import type { Duty, Enclosure } from '../enclosure/enclosure.ts';
import type { BuildOutcome } from '../enclosure/outcome.ts';
import type { Decibels } from '../quantities/dimensions.ts';

/** What a ranking goes by: one sound energy made of those of all duties. */
export interface Objective {
  /** Energy of a build from the energies of its duties [-]; infinite if any duty cannot be met. */
  readonly energyOf: (enclosure: Enclosure, energies: Float64Array) => number;
  /**
   * Energy a duty may have so that the whole stays below one to beat, if the others need no less than given [-];
   * infinite where the duty does not count.
   */
  readonly budgetOf: (enclosure: Enclosure, energies: Float64Array, duty: number, toBeat: number) => number;
  /** Whether a duty counts; one that does not only has to be met. */
  readonly counts: (enclosure: Enclosure, duty: number) => boolean;
  /** Level of a build that has been worked out [dB]. */
  readonly levelOf: (outcome: BuildOutcome) => Decibels;
}

function share(enclosure: Enclosure, duty: number): number {
  return (enclosure.duties[duty] as Duty).share;
}

function lasts(enclosure: Enclosure, duty: number): boolean {
  return share(enclosure, duty) > 0;
}

/** Mean of the sound energy over time (LAeq). */
const mean: Objective = {
  energyOf: (enclosure, energies) => {
    let sum = 0;
    for (let duty = 0; duty < energies.length; duty++) {
      const value = energies[duty] as number;
      if (value === Number.POSITIVE_INFINITY) return value;
      sum += share(enclosure, duty) * value;
    }
    return sum;
  },
  budgetOf: (enclosure, energies, duty, toBeat) => {
    const own = share(enclosure, duty);
    if (own === 0 || toBeat === Number.POSITIVE_INFINITY) return Number.POSITIVE_INFINITY;
    let others = 0;
    for (let index = 0; index < energies.length; index++) {
      if (index !== duty) others += share(enclosure, index) * (energies[index] as number);
    }
    return (toBeat - others) / own;
  },
  counts: lasts,
  levelOf: ({ level }) => level,
};

/** Loudest duty that has a share of the time. */
const loudest: Objective = {
  energyOf: (enclosure, energies) => {
    let most = 0;
    for (let duty = 0; duty < energies.length; duty++) {
      const value = energies[duty] as number;
      if (value === Number.POSITIVE_INFINITY) return value;
      if (share(enclosure, duty) > 0 && value > most) most = value;
    }
    return most;
  },
  budgetOf: (enclosure, _, duty, toBeat) => (share(enclosure, duty) > 0 ? toBeat : Number.POSITIVE_INFINITY),
  counts: lasts,
  levelOf: (outcome) => outcome.loudest,
};

/** The objectives by their names. */
export const OBJECTIVES = { mean, loudest } as const;
