import { type Condition, conditionRows } from './condition-rows.ts';
import { advance, firstIterate, isDone, measure } from './inner-point.ts';

/** Rounds, at most: some fifteen are enough where there is an answer. */
const MOST_ROUNDS = 50;

/**
 * Unknowns that minimise Σ ½·curvature·x² + slope·x under linear conditions: a convex quadratic program with one
 * solution at most. Bounded in time: conditions that cannot be met together are found out by not converging.
 *
 * Source: method of inner points with predictor and corrector, S. Mehrotra, SIAM Journal on Optimization 2 (1992)
 * 575-601, as told for quadratic programs by J. Nocedal and S. Wright, Numerical Optimization, 2nd ed. (2006), chapter
 * 16.6 (from memory).
 *
 * @param curvatures of the objective along each unknown [any unit], all above zero
 * @param slopes of the objective along each unknown [any unit]
 * @param conditions what is asked of the unknowns, numbers of no more than some orders of magnitude
 * @returns the unknowns [any unit], or null if no such unknowns are found
 */
export function leastQuadratic(
  curvatures: ArrayLike<number>,
  slopes: ArrayLike<number>,
  conditions: readonly Condition[],
): Float64Array | null {
  const size = curvatures.length;
  if (conditions.length === 0) {
    return Float64Array.from(slopes, (slope, index) => -slope / (curvatures[index] as number));
  }
  const program = { curvatures, slopes, ...conditionRows(conditions, size) };
  const iterate = firstIterate(program);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    measure(program, iterate);
    if (isDone(iterate)) return iterate.unknowns;
    if (!advance(program, iterate)) return null;
  }
  return null;
}
