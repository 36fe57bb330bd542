import type { Rating } from '../fan/fan-model.ts';
import type { Decibels, RevolutionsPerSecond } from '../quantities/dimensions.ts';
import type { SoundAssumptions } from './sound-assumptions.ts';

/** A rated level at the logarithm of a speed ratio. */
export interface LevelKnot {
  /** ln of speed over full speed [-]. */
  readonly at: number;
  /** Level at 1 m [dB]. */
  readonly level: Decibels;
}

/** How the level rises with speed, and how sure that is. */
export interface SpeedExponent {
  /** Rise [dB per decade of speed]. */
  readonly exponent: Decibels;
  /** One-sigma uncertainty [dB per decade]. */
  readonly uncertainty: Decibels;
}

/**
 * Ratings as knots over ln of the speed ratio, ascending; of several at one speed the loudest is kept.
 *
 * Source: definition; that the loudest counts is a model assumption, no source.
 *
 * @param ratings ratings in any order, speeds [1/s] > 0
 * @param fullSpeed speed at ratio 1 [1/s], > 0
 */
export function knotsOf(ratings: readonly Rating[], fullSpeed: RevolutionsPerSecond): LevelKnot[] {
  const loudest = new Map<number, Decibels>();
  for (const { speed, level } of ratings) {
    const at = Math.log(speed / fullSpeed);
    loudest.set(at, Math.max(level, loudest.get(at) ?? level));
  }
  return [...loudest].map(([at, level]) => ({ at, level })).sort((one, other) => one.at - other.at);
}

/**
 * Exponent of speed fitted through knots and weighed against the prior, within the range believed [dB per decade].
 *
 * Least squares with equal scatter: two knots give (L2 - L1)/lg(N2/N1); a single one leaves the prior. Fit and
 * prior are joined by inverse variances. The uncertainty is that of the weighing, before the range is applied.
 * Source: sound law of fans L ~ m lg N (AMCA, ASHRAE, from memory); weighing and range: model assumption, no source.
 *
 * @param knots knots with distinct places
 * @param assumptions `speedExponent`, its uncertainty and range, `ratingScatter`
 */
export function fittedExponent(knots: readonly LevelKnot[], assumptions: SoundAssumptions): SpeedExponent {
  const { speedExponent, speedExponentUncertainty, speedExponentRange, ratingScatter } = assumptions;
  const mean = knots.reduce((sum, knot) => sum + knot.at, 0) / knots.length / Math.LN10;
  let spread = 0;
  let product = 0;
  for (const { at, level } of knots) {
    const offset = at / Math.LN10 - mean;
    spread += offset * offset;
    product += offset * level;
  }
  // product/spread is the fitted exponent and spread/scatter² its weight, so no division by a zero spread.
  const fitWeight = spread / ratingScatter ** 2;
  const priorWeight = 1 / speedExponentUncertainty ** 2;
  const weight = fitWeight + priorWeight;
  const joined = (product / ratingScatter ** 2 + speedExponent * priorWeight) / weight;
  const { least, most } = speedExponentRange;
  return { exponent: Math.min(most, Math.max(least, joined)), uncertainty: 1 / Math.sqrt(weight) };
}

/**
 * Knots whose level rises from each to the next by at least a given exponent; a level too low is raised, because
 * a fan that turns faster is not quieter and the louder figure is the safer one.
 *
 * Source: model assumption, no source.
 *
 * @param knots knots ascending in speed
 * @param leastRise least rise [dB per decade], > 0
 */
export function risingKnots(knots: readonly LevelKnot[], leastRise: Decibels): LevelKnot[] {
  const rising: LevelKnot[] = [];
  for (const knot of knots) {
    const before = rising.at(-1);
    const least =
      before === undefined ? knot.level : before.level + (leastRise * (knot.at - before.at)) / Math.LN10;
    rising.push({ at: knot.at, level: Math.max(knot.level, least) });
  }
  return rising;
}
