import { describeBuild } from '../enclosure/describe.ts';
import { dutyOutcome } from '../enclosure/duty-outcome.ts';
import type { Machine } from '../enclosure/machine.ts';
import type { BuildOutcome, DutyOutcome } from '../enclosure/outcome.ts';
import type { PassFailure } from '../enclosure/pass.ts';
import type { KelvinDifference } from '../quantities/dimensions.ts';
import { energy, levelOf } from '../sound/levels.ts';
import type { SolvedBuild } from './solve-build.ts';

/** A build that could not be worked out in one of its duties. */
export interface FailedBuild {
  readonly duty: string;
  readonly reason: PassFailure;
}

/** Level of the mean sound energy over the duties by their shares [dB]. */
function meanLevel(duties: readonly DutyOutcome[]): number {
  return levelOf(duties.reduce((sum, duty) => sum + duty.share * energy(duty.level), 0));
}

/**
 * The outcome of a build in all duties at given speeds, for showing.
 *
 * @param machine the build
 * @param ratios speeds of the banks in each duty, order of the scenario's duties [-]
 * @param reserve least margin with every bank at full speed, beyond what is asked [K]
 * @returns the outcome, or the duty in which there is none and why
 */
export function outcomeAt(
  machine: Machine,
  ratios: readonly Float64Array[],
  reserve: KelvinDifference,
): BuildOutcome | FailedBuild {
  const { enclosure } = machine.plant;
  const duties: DutyOutcome[] = [];
  for (const [index, duty] of enclosure.duties.entries()) {
    const outcome = dutyOutcome(machine, duty, ratios[index] as Float64Array);
    if (typeof outcome === 'string') return { duty: duty.id, reason: outcome };
    duties.push(outcome);
  }
  return {
    build: describeBuild(enclosure, machine.build),
    adequate: duties.every(({ adequate }) => adequate),
    duties,
    level: meanLevel(duties),
    loudest: Math.max(...duties.filter(({ share }) => share > 0).map(({ level }) => level)),
    fanPower: duties.reduce((sum, { share, fanPower }) => sum + share * fanPower, 0),
    reserve,
  };
}

/** The outcome of a build at the speeds found for it. */
export function buildOutcome(solved: SolvedBuild): BuildOutcome | FailedBuild {
  return outcomeAt(
    solved.machine,
    solved.duties.map(({ point }) => point.ratios),
    solved.reserve,
  );
}

/** Whether an outcome is none. */
export function isFailed(outcome: BuildOutcome | FailedBuild): outcome is FailedBuild {
  return 'reason' in outcome;
}
