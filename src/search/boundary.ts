import type { KelvinDifference } from '../quantities/dimensions.ts';
import { clampRatio, isAdequate, type Point, type Trial } from './trial.ts';

/** Width of the bracket, in the logarithm of the speeds, at which the boundary counts as found: 0.0003 dB. */
const LOG_SPEED_TOLERANCE = 1.2e-5;
/** Excess on the cool side [K] small enough to stop early: worth about 0.0002 dB. */
export const EXCESS_TOLERANCE: KelvinDifference = 2e-4;
/** First stride in log speed per kelvin of excess: limits commonly move by some 30 K per unit of log speed. */
const STRIDE_PER_KELVIN = 1 / 25;
const LEAST_STRIDE = 1e-3;
const MOST_STRIDE = 0.5;
const MAX_TRIALS = 60;

/** Speeds moved together: every bank by the same factor, each held between its floor and full speed. */
function scaled(trial: Trial, base: Float64Array, shift: number): Float64Array {
  const factor = Math.exp(shift);
  return base.map((ratio, bank) => clampRatio(trial, bank, ratio * factor));
}

/** Speeds moved together, by how much, and what comes of it. */
interface Shifted {
  readonly shift: number;
  readonly point: Point;
}

interface Bracket {
  /** Where the search began. */
  readonly base: Point;
  warm: Shifted;
  cool: Shifted;
}

/** Range of shifts beyond which nothing moves any more. */
function range(trial: Trial, base: Float64Array): { low: number; high: number } {
  let low = 0;
  let high = 0;
  base.forEach((ratio, bank) => {
    low = Math.min(low, Math.log((trial.floors[bank] as number) / ratio));
    high = Math.max(high, Math.log((trial.ceilings[bank] as number) / ratio));
  });
  return { low, high };
}

/** A stride that probably just reaches the other side. */
function firstStride(point: Point): number {
  const likely = Math.abs(point.worst) * STRIDE_PER_KELVIN;
  return Number.isFinite(likely) ? Math.min(MOST_STRIDE, Math.max(LEAST_STRIDE, likely)) : MOST_STRIDE;
}

/** Shares of a stride that are looked at if there is no solution at its end [-]. */
const SHORTER = [0.5, 0.25] as const;

/** The end of a stride; where there is no solution, an adequate point on the way to it if one is met. */
function past(at: (shift: number) => Shifted, from: number, end: Shifted): Shifted {
  if (end.point.failure === null) return end;
  for (const share of SHORTER) {
    const there = at(from + share * (end.shift - from));
    if (isAdequate(there.point)) return there;
  }
  return end;
}

/** Strides from the base until limits are met on one side and missed on the other. */
function bracket(trial: Trial, base: Float64Array): Bracket | { readonly base: Point; readonly edge: Point } {
  const { low, high } = range(trial, base);
  const at = (shift: number): Shifted => ({ shift, point: trial.evaluate(scaled(trial, base, shift)) });
  let here = at(0);
  const start = here.point;
  // Speeds that are no numbers lead nowhere: the edge is where they are.
  if (!base.every(Number.isFinite)) return { base: start, edge: here.point };
  const upward = !isAdequate(here.point);
  const end = upward ? high : low;
  let stride = firstStride(here.point);
  for (; ; stride *= 2) {
    if (here.shift === end) return { base: start, edge: here.point };
    const shift = upward ? Math.min(end, here.shift + stride) : Math.max(end, here.shift - stride);
    const next = past(at, here.shift, at(shift));
    if (isAdequate(next.point) === upward) {
      return upward ? { base: start, warm: here, cool: next } : { base: start, warm: next, cool: here };
    }
    here = next;
  }
}

/** How closely a boundary is looked for. */
export interface BoundaryAim {
  /** Excess on the cool side small enough to stop [K]. */
  readonly slack: KelvinDifference;
  /** Energy from which on a point is of no interest [-]: the search stops once nothing quieter is to be expected. */
  readonly enough: number;
}

const CLOSELY: BoundaryAim = { slack: EXCESS_TOLERANCE, enough: Number.POSITIVE_INFINITY };

/** Whether a point on the warm side is so loud that none on the cool side is of interest; without a solution nobody knows. */
function isBeyond({ energy, failure }: Point, enough: number): boolean {
  return failure === null && energy >= enough;
}

/** Times a slack may be worth what it commonly is, in log speed, for the search to stop there [-]. */
const COMMON_WORTH = 5;

/** Whether the cool end is near enough to the boundary, in kelvins and in speed: some limits hardly move with it. */
function isClose(warm: Shifted, cool: Shifted, slack: KelvinDifference): boolean {
  const left = -cool.point.worst;
  if (left > slack) return false;
  const rest = (Math.abs(cool.shift - warm.shift) * left) / (left + Math.max(0, warm.point.worst));
  return rest <= COMMON_WORTH * slack * STRIDE_PER_KELVIN;
}

/** False position with Illinois weights; the cool end always holds all limits. */
function narrow(trial: Trial, base: Float64Array, found: Bracket, { slack, enough }: BoundaryAim): Point {
  let { warm, cool } = found;
  let warmExcess = warm.point.worst;
  let coolExcess = cool.point.worst;
  for (let count = 0; count < MAX_TRIALS; count++) {
    if (isClose(warm, cool, slack) || isBeyond(warm.point, enough)) break;
    if (Math.abs(cool.shift - warm.shift) <= LOG_SPEED_TOLERANCE) break;
    const share = Number.isFinite(warmExcess) ? -coolExcess / (warmExcess - coolExcess) : 0.5;
    // Aim a trifle to the cool side, so that the bracket closes from there.
    const aim = Math.min(0.98, Math.max(0.02, share * (1 - 1e-4)));
    const shift = cool.shift + aim * (warm.shift - cool.shift);
    const point = trial.evaluate(scaled(trial, base, shift));
    if (isAdequate(point)) {
      cool = { shift, point };
      coolExcess = point.worst;
      warmExcess *= 0.5;
    } else {
      warm = { shift, point };
      warmExcess = point.worst;
      coolExcess *= 0.5;
    }
  }
  return cool.point;
}

/** Where the limits begin to hold, and where the search for that began. */
export interface Boundary {
  readonly base: Point;
  /** A point at which all limits hold, or the point at the end of the range if they never do. */
  readonly slowest: Point;
}

/**
 * Moves all banks together, in proportion, to the slowest speeds at which every limit still holds; banks
 * stop at their floors and at full speed.
 *
 * Finds a boundary near the base; where the airway is such that faster is not always cooler, other
 * boundaries may exist further off.
 *
 * @param trial build and duty
 * @param base speeds to start from [-]
 * @param aim how closely; as closely as ever if absent
 */
export function boundaryFrom(trial: Trial, base: Float64Array, aim: BoundaryAim = CLOSELY): Boundary {
  const found = bracket(trial, base);
  return { base: found.base, slowest: 'edge' in found ? found.edge : narrow(trial, base, found, aim) };
}

/**
 * The slowest speeds in the proportions of a base at which every limit still holds, as `boundaryFrom` finds them.
 *
 * @param trial build and duty
 * @param base speeds to start from [-]
 * @param aim how closely; as closely as ever if absent
 */
export function slowestAdequate(trial: Trial, base: Float64Array, aim?: BoundaryAim): Point {
  return boundaryFrom(trial, base, aim).slowest;
}
