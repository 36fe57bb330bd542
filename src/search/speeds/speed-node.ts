import type { Point, Trial } from '../trial.ts';

/**
 * Excess beyond which it counts for less and less [K]: far above a limit, or where a part runs away, how far tells little
 * about where the limit is met.
 */
const NEAR_LIMIT = 8;
/** What stands for refused and not refused on that scale [K]. */
const REFUSED = 4;

/** A node of a lattice of speeds, as it is looked at. */
export interface SpeedNode {
  readonly point: Point;
  /** Logarithm of the least energy there. */
  readonly least: number;
  /** Logarithm of the energy above that; none where there is no solution. */
  readonly above: number | undefined;
  /** Excess over each limit, compressed, and last whether it is refused; none where there is no solution. */
  readonly excess: readonly number[] | undefined;
}

function compressed(excess: number): number {
  return Number.isFinite(excess) ? excess / (1 + Math.abs(excess) / NEAR_LIMIT) : NEAR_LIMIT;
}

/**
 * A point made ready to be looked at.
 *
 * @param trial build and duty
 * @param point at the speeds of the node
 */
export function speedNode(trial: Trial, point: Point): SpeedNode {
  const least = Math.log(Math.max(Number.MIN_VALUE, trial.leastEnergy(point.ratios)));
  const { energy, excess, worst, failure } = point;
  if (failure !== null) return { point, least, above: undefined, excess: undefined };
  const isRefused = worst > Math.max(0, ...excess);
  const above = Math.log(Math.max(Number.MIN_VALUE, energy)) - least;
  return { point, least, above, excess: [...Array.from(excess, compressed), isRefused ? REFUSED : -REFUSED] };
}
