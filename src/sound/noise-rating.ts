import type { Decibels } from '../quantities/dimensions.ts';
import type { Band } from './spectrum.ts';

/**
 * Noise rating curves: level in a band = a + b NR.
 * Source: ISO/R 1996 noise rating coefficients (published: two public code files; one of them pairs all rows with
 * the next higher band, which is wrong). A variant 4.2/0.98 at 500 Hz exists and differs by at most 0.5 dB.
 */
const CURVES: ReadonlyMap<number, { readonly a: Decibels; readonly b: number }> = new Map([
  [31.5, { a: 55.4, b: 0.681 }],
  [63, { a: 35.5, b: 0.79 }],
  [125, { a: 22, b: 0.87 }],
  [250, { a: 12, b: 0.93 }],
  [500, { a: 4.8, b: 0.974 }],
  [1000, { a: 0, b: 1 }],
  [2000, { a: -3.5, b: 1.015 }],
  [4000, { a: -6.1, b: 1.025 }],
  [8000, { a: -8, b: 1.03 }],
]);

/**
 * The curve of a noise rating as an octave spectrum from 31.5 Hz to 8 kHz.
 *
 * Source: ISO/R 1996 noise rating coefficients.
 *
 * @param rating noise rating NR [-]
 */
export function noiseRatingCurve(rating: number): Band[] {
  return [...CURVES].map(([centre, { a, b }]) => ({ centre, level: a + b * rating }));
}

/** Noise rating of a spectrum and the band that sets it. */
export interface NoiseRating {
  /** NR [-]. */
  readonly rating: number;
  /** Nominal centre of the governing band [Hz]. */
  readonly governing: number;
}

/**
 * Noise rating of an octave spectrum; bands without a curve do not count, undefined if none has one.
 *
 * Source: ISO/R 1996, the highest of (L - a)/b.
 *
 * @param bands octave bands with nominal centres [Hz] and unweighted levels [dB]
 */
export function noiseRating(bands: readonly Band[]): NoiseRating | undefined {
  let highest: NoiseRating | undefined;
  for (const { centre, level } of bands) {
    const curve = CURVES.get(centre);
    if (curve === undefined) continue;
    const rating = (level - curve.a) / curve.b;
    if (highest === undefined || rating > highest.rating) highest = { rating, governing: centre };
  }
  return highest;
}
