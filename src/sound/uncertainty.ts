import type { Decibels, Fraction } from '../quantities/dimensions.ts';
import { energy } from './levels.ts';
import { normalProbability, normalQuantile } from './normal-distribution.ts';
import type { SoundAssumptions } from './sound-assumptions.ts';

/** A level with its one-sigma uncertainty. */
export interface UncertainLevel {
  /** Level [dB]; -Infinity counts for nothing. */
  readonly level: Decibels;
  /** One-sigma uncertainty [dB], ≥ 0. */
  readonly uncertainty: Decibels;
}

/** Correlation [-] of the errors of two different terms, by their places in the list; symmetric, -1 to 1. */
export type Correlation = (one: number, other: number) => Fraction;

/** Energy-weighted uncertainties of the terms [dB]; their weights sum to 1. */
function weightedUncertainties(terms: readonly UncertainLevel[]): Decibels[] {
  const energies = terms.map((term) => energy(term.level));
  const sum = energies.reduce((total, share) => total + share, 0);
  return terms.map((term, index) => (sum > 0 ? ((energies[index] ?? 0) / sum) * term.uncertainty : 0));
}

/**
 * One-sigma uncertainty of an energetic sum [dB]: √(w u R u w), w the energy shares.
 *
 * First order, good up to about 3 dB of uncertainty; see `sumBias`. All silent gives 0.
 * Source: ISO/IEC Guide 98-3 (GUM), law of propagation.
 *
 * @param terms levels [dB] with uncertainties [dB]
 * @param correlation correlation of two terms [-]
 */
export function sumUncertainty(terms: readonly UncertainLevel[], correlation: Correlation): Decibels {
  const weighted = weightedUncertainties(terms);
  let variance = 0;
  weighted.forEach((one, row) => {
    variance += one * one;
    weighted.slice(0, row).forEach((other, column) => {
      variance += 2 * correlation(row, column) * one * other;
    });
  });
  return Math.sqrt(Math.max(0, variance));
}

/**
 * What the mean of a sum of independent uncertain levels exceeds the sum of the mean levels by [dB], ≥ 0.
 *
 * Small below 3 dB of uncertainty. Source: second-order expansion of the energetic sum, derived.
 *
 * @param terms levels [dB] with independent uncertainties [dB]
 */
export function sumBias(terms: readonly UncertainLevel[]): Decibels {
  const weighted = weightedUncertainties(terms);
  let spread = 0;
  terms.forEach((term, index) => {
    const one = weighted[index] ?? 0;
    spread += one * term.uncertainty - one * one;
  });
  return (Math.LN10 / 20) * spread;
}

/** One-sigma uncertainty of a difference of two levels [dB]. */
function differenceUncertainty(one: Decibels, other: Decibels, correlation: Fraction): Decibels {
  return Math.sqrt(Math.max(0, one * one + other * other - 2 * correlation * one * other));
}

/**
 * Probability that one level is truly below another [-]; equal levels give 0.5.
 *
 * Source: difference of two normal variables, derived.
 *
 * @param one level [dB] with uncertainty [dB]
 * @param other level [dB] with uncertainty [dB]
 * @param correlation correlation of their errors [-], -1 to 1
 */
export function probabilityQuieter(
  one: UncertainLevel,
  other: UncertainLevel,
  correlation: Fraction,
): Fraction {
  if (one.level === other.level) return 0.5;
  const spread = differenceUncertainty(one.uncertainty, other.uncertainty, correlation);
  return normalProbability((other.level - one.level) / spread);
}

/**
 * Difference of level needed to be quieter with a given probability [dB].
 *
 * Source: difference of two normal variables, derived.
 *
 * @param probability probability asked for [-], 0 to 1
 * @param one uncertainty of one level [dB]
 * @param other uncertainty of the other [dB]
 * @param correlation correlation of their errors [-], -1 to 1
 */
export function neededDifference(
  probability: Fraction,
  one: Decibels,
  other: Decibels,
  correlation: Fraction,
): Decibels {
  return normalQuantile(probability) * differenceUncertainty(one, other, correlation);
}

/** How sure it is that the quieter of two is quieter, as a code. */
export type Verdict = 'clearly-quieter' | 'probably-quieter' | 'no-real-difference';

/**
 * Verdict on a probability of being quieter.
 *
 * Source: model assumption, no source.
 *
 * @param probability probability of being quieter [-], 0 to 1
 * @param assumptions limits in `verdict`
 */
export function verdict(probability: Fraction, assumptions: SoundAssumptions): Verdict {
  if (probability >= assumptions.verdict.clear) return 'clearly-quieter';
  return probability >= assumptions.verdict.probable ? 'probably-quieter' : 'no-real-difference';
}
