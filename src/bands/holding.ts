import { latinHypercube } from '../numerics/latin-hypercube.ts';
import type { Fraction } from '../quantities/dimensions.ts';
import { normalQuantile } from '../sound/normal-distribution.ts';
import { HALF_WIDTH } from './doubt.ts';
import type { Effect, Response } from './response.ts';

/** Draws from which a probability is counted: it is known to about 0.01. */
const DRAWS = 2000;
const SEED = 1;

let scores: Float64Array | undefined;

/**
 * Middles of equally likely strata of a standard normal variable, in half-widths of its 90 % band [-]. Made when first
 * asked for: they take longer than the rest of a start.
 */
function strata(): Float64Array {
  scores ??= Float64Array.from(
    { length: DRAWS },
    (_, index) => normalQuantile((index + 0.5) / DRAWS) / HALF_WIDTH,
  );
  return scores;
}

/** Margins as they are stated and how they move, in one duty or in all. */
export interface Margins {
  /** As stated [K]. */
  readonly stated: Float64Array;
  /** What moves them, order of `stated`. */
  readonly effects: readonly Pick<Effect, 'below' | 'above'>[];
}

/** Margins of the limits of some duties, in the order of the duties. */
export function marginsOf({ readings, expected, effects }: Response, wanted?: number): Margins {
  const indexes: number[] = [];
  let at = 0;
  for (const [duty, { margins, temperatures, flows }] of readings.entries()) {
    if (wanted === undefined || wanted === duty)
      indexes.push(...Array.from(margins.keys(), (limit) => at + limit));
    // Flow through the box, power of the fans and level come last.
    at += margins.length + temperatures.length + flows.length + 3;
  }
  const picked = (values: Float64Array): Float64Array =>
    Float64Array.from(indexes, (index) => values[index] as number);
  return {
    stated: picked(expected),
    effects: effects
      .map(({ below, above }) => ({ below: picked(below), above: picked(above) }))
      .filter(({ below, above }) => below.some((value) => value !== 0) || above.some((value) => value !== 0)),
  };
}

/** Dimensions that are made at once [-]: more than most builds have doubts. */
const DIMENSIONS = 64;
let made: readonly Uint32Array[] = [];

/** Orders of the draws by dimension; made once, since the first of more are the same as those of fewer. */
function ordersFor(dimensions: number): readonly Uint32Array[] {
  if (made.length < dimensions) made = latinHypercube(DRAWS, Math.max(DIMENSIONS, dimensions), SEED);
  return made;
}

/** By how much a margin moves in each draw [K], all that moves it taken as independent. */
function drawnMargins({ effects }: Margins, limit: number, orders: readonly Uint32Array[]): Float64Array {
  const drawn = new Float64Array(DRAWS);
  const middles = strata();
  effects.forEach(({ below, above }, index) => {
    const order = orders[index] as Uint32Array;
    const down = below[limit] as number;
    const up = above[limit] as number;
    if (down === 0 && up === 0) return;
    for (let draw = 0; draw < DRAWS; draw++) {
      const score = middles[order[draw] as number] as number;
      const change = score < 0 ? -score * down : score * up;
      // What has no way to move in this direction does not: an endless displacement of the other one says nothing.
      if (change !== 0) drawn[draw] = (drawn[draw] as number) + change;
    }
  });
  return drawn;
}

/** How limits are held whatever their margins are: draws of what moves each of them. */
export interface Draws {
  /** By limit, by draw [K]. */
  readonly moved: readonly Float64Array[];
}

/**
 * Draws what moves each margin away from what is stated, of all limits together: what they share moves them alike.
 *
 * Source: propagation of distributions (JCGM 101) through the linear response, drawn by a Latin hypercube.
 *
 * @param margins of some limits
 */
export function drawsOf(margins: Margins): Draws {
  const orders = ordersFor(margins.effects.length);
  return { moved: Array.from(margins.stated, (_, limit) => drawnMargins(margins, limit, orders)) };
}

/** A margin that is short by less is none [K]: speeds are found to within this. */
const ACCURACY = 1e-6;

/**
 * Probability that limits hold, all of them at once [-]; 1 if there are none.
 *
 * Source: share of draws.
 *
 * @param draws of what moves the margins
 * @param stated margins as stated [K]
 */
export function probabilityOfHolding({ moved }: Draws, stated: ArrayLike<number>): Fraction {
  let holding = 0;
  for (let draw = 0; draw < DRAWS; draw++) {
    const holds = moved.every(
      (changes, limit) => (stated[limit] as number) + (changes[draw] as number) >= -ACCURACY,
    );
    if (holds) holding += 1;
  }
  return holding / DRAWS;
}
