import type { Fraction } from '../quantities/dimensions.ts';

/** Beyond this many standard deviations the tail is below the rounding of doubles. */
const TAIL = 8;

/**
 * Probability that a standard normal variable is below z [-].
 *
 * Source: G. Marsaglia, Evaluating the normal distribution, Journal of Statistical Software 11(4), 2004: the
 * series z + z³/3 + z⁵/(3·5) + ...
 *
 * @param z standardised value [-]; infinities give 0 and 1
 */
export function normalProbability(z: number): Fraction {
  if (z <= -TAIL) return 0;
  if (z >= TAIL) return 1;
  let sum = 0;
  let term = z;
  for (let odd = 3; sum + term !== sum; odd += 2) {
    sum += term;
    term *= (z * z) / odd;
  }
  return 0.5 + (sum * Math.exp(-0.5 * z * z)) / Math.sqrt(2 * Math.PI);
}

/** Halvings that take the bracket below the rounding of doubles. */
const HALVINGS = 60;

/**
 * Standardised value below which a normal variable falls with a given probability [-].
 *
 * Source: bisection of `normalProbability`.
 *
 * @param probability probability [-], 0 to 1; the ends give infinities
 */
export function normalQuantile(probability: Fraction): number {
  if (probability <= 0) return Number.NEGATIVE_INFINITY;
  if (probability >= 1) return Number.POSITIVE_INFINITY;
  let low = -TAIL;
  let high = TAIL;
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle = (low + high) / 2;
    if (normalProbability(middle) < probability) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
