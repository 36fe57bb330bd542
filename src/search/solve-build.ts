import type { Duty } from '../enclosure/enclosure.ts';
import type { Machine } from '../enclosure/machine.ts';
import type { KelvinDifference } from '../quantities/dimensions.ts';
import { type Quietest, quietestSpeeds } from './quietest-speeds.ts';
import { createTrial, fullSpeed, isAdequate, type Point } from './trial.ts';

/** Speeds of a build in one duty and what comes of them. */
export interface SolvedDuty {
  readonly duty: Duty;
  /** The quietest adequate point, or the coolest met if there is none. */
  readonly point: Point;
  readonly adequate: boolean;
}

/** Speeds of a build in every duty. */
export interface SolvedBuild {
  readonly machine: Machine;
  readonly duties: readonly SolvedDuty[];
  /** Least margin over all duties with every bank at full speed [K]. */
  readonly reserve: KelvinDifference;
  readonly passes: number;
}

/** Takes the quietest adequate point, or the coolest if there is none. */
function settled(duty: Duty, quietest: Quietest): SolvedDuty {
  const point = quietest.best ?? quietest.coolest;
  return { duty, point, adequate: isAdequate(point) };
}

/**
 * Quietest adequate speeds of a build in each duty, and what margin is left at full speed.
 *
 * @param machine the build
 * @param monotone whether faster is known never to warm a limited part in this airway
 */
export function solveBuild(machine: Machine, monotone: boolean): SolvedBuild {
  let passes = 0;
  let reserve = Number.POSITIVE_INFINITY;
  const duties = machine.plant.enclosure.duties.map((duty) => {
    const trial = createTrial(machine, duty);
    const fastest = trial.evaluate(fullSpeed(trial));
    reserve = Math.min(reserve, -fastest.warmest);
    const solved = settled(duty, quietestSpeeds(trial, monotone));
    passes += trial.passes();
    return solved;
  });
  return { machine, duties, reserve, passes };
}
