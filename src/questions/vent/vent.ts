import { perforatedElement } from '../../elements/perforated.ts';
import type { CubicMetresPerSecond, Decibels } from '../../quantities/dimensions.ts';
import { withElement } from '../levers/with-occupant.ts';
import { isAdequateBuild, meanLevel, solveAnew } from '../solved-change.ts';
import { type HoleFamily, holeFamily } from './hole-family.ts';
import { type VentCandidate, ventCandidates } from './vent-candidates.ts';
import { type VentCurve, ventCurve } from './vent-curve.ts';
import { type VentPattern, ventPattern } from './vent-pattern.ts';
import { openState, type VentState } from './vent-state.ts';
import { sureAsItIs, type VentSure, ventSure } from './vent-sure.ts';
import type { VentTask } from './vent-task.ts';

/** Flows below this are none [m³/s]. */
const STILL: CubicMetresPerSecond = 1e-7;

/** What is found about an opening. */
export interface VentAnswer {
  readonly task: VentTask;
  /** With no opening at all in the way. */
  readonly open: VentState;
  /** The sheet that stands there now; absent if it is none. */
  readonly now?: VentPattern;
  /** Patterns, the best first. */
  readonly candidates: readonly VentCandidate[];
  /** Against the free area of holes as those of the best pattern. */
  readonly family: HoleFamily;
  readonly curve: VentCurve;
  /** With the best pattern and speeds found anew. */
  readonly anew: SolvedAnew;
  /** How sure what the best pattern and the opening as it is do is; null where there is no solution. */
  readonly sure: { readonly best: VentSure | null; readonly asItIs: VentSure | null };
}

/** A build with the best pattern, its speeds found anew. */
export interface SolvedAnew {
  readonly adequate: boolean;
  /** Mean over time [dB]. */
  readonly level: Decibels;
  /** By how much that is less than at the speeds that hold the limits now [dB]. */
  readonly quieter: Decibels;
}

function solvedAnew(task: VentTask, best: VentCandidate): SolvedAnew {
  const { enclosure, build } = withElement(
    task.enclosure,
    task.build,
    task.place,
    perforatedElement(best.sheet),
  );
  const solved = solveAnew(enclosure, build);
  const level = meanLevel(solved);
  return {
    adequate: isAdequateBuild(solved),
    level,
    quieter: meanLevel(solveAnew(task.enclosure, task.build)) - level,
  };
}

/**
 * How large an opening must be and which holes to cut: the best pattern of each shape, and flow, temperature and noise
 * against the free area of holes as the best one has.
 *
 * @param task the opening
 * @returns what was found, or why nothing was, in words
 */
export function ventAnswer(task: VentTask): VentAnswer | string {
  const open = openState(task);
  if (!open) return 'air and heat do not settle even with nothing in the way of the opening';
  if (!(open.flow > STILL)) return 'no air passes this opening, whatever stands in it';
  const candidates = ventCandidates(task, open);
  const [best] = candidates;
  if (!best)
    return 'no hole that may be made fits the field: a larger field, thinner sheet or more room to the blades';
  const now = task.stands ? ventPattern(task, task.sheet, open) : undefined;
  const family = holeFamily({ ...best.sheet, web: task.leastWeb });
  return {
    task,
    open,
    ...(now ? { now } : {}),
    candidates,
    family,
    curve: ventCurve(task, family, open),
    anew: solvedAnew(task, best),
    sure: { best: ventSure(task, perforatedElement(best.sheet)), asItIs: sureAsItIs(task) },
  };
}
