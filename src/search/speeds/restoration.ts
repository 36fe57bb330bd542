import { leastQuadratic } from '../../numerics/quadratic-program.ts';
import { isAdequate, type Point, type Trial } from '../trial.ts';
import { withinBounds } from './bundle-step.ts';
import { roomAround, stepped, tangentAt } from './tangent.ts';

const MOST_STEPS = 4;
/** Greatest step of a log speed [-]. */
const REACH = 0.25;
/** How far below a limit is aimed, for each step once more [K]. */
const AIM = 1e-3;

/**
 * Goes from speeds that break limits to the nearest that hold them, by slopes.
 *
 * @param trial build and duty
 * @param start a point
 * @param look is told of every point met
 * @returns an adequate point, or null if slopes do not lead to one
 */
export function restored(trial: Trial, start: Point, look: (point: Point) => Point): Point | null {
  const size = start.ratios.length;
  let here = start;
  for (let count = 1; count <= MOST_STEPS && !isAdequate(here); count++) {
    const tangent = tangentAt(trial, here, 1);
    if (!tangent) return null;
    const { low, high } = roomAround(trial, here, REACH);
    const limits = tangent.excessSlopes.map((slopes, limit) => ({
      slopes,
      most: -(tangent.excess[limit] as number) - count * AIM,
    }));
    const conditions = [...withinBounds(low, high, size), ...limits];
    const step = leastQuadratic(new Float64Array(size).fill(1), new Float64Array(size), conditions);
    if (!step) return null;
    here = look(stepped(trial, here, step));
  }
  return isAdequate(here) ? here : null;
}
