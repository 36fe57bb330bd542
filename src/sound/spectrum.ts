import type { Decibels, RevolutionsPerSecond } from '../quantities/dimensions.ts';
import { bandWeight } from './a-weighting.ts';
import { sumLevels } from './levels.ts';

/** One band of a spectrum. */
export interface Band {
  /** Nominal centre [Hz]. */
  readonly centre: number;
  /** Unweighted level in the band [dB]. */
  readonly level: Decibels;
}

/** Nominal octave centres from 63 Hz to 8 kHz [Hz]. */
export const OCTAVES: readonly number[] = [63, 125, 250, 500, 1000, 2000, 4000, 8000];

/**
 * Unweighted level of a spectrum [dB].
 *
 * Source: energetic sum.
 *
 * @param bands bands that do not overlap
 */
export function bandsLevel(bands: readonly Band[]): Decibels {
  return sumLevels(bands.map((band) => band.level));
}

/**
 * A-weighted level of a spectrum [dB].
 *
 * Source: IEC 61672-1, weights at the nominal centres.
 *
 * @param bands octave or third-octave bands with nominal centres [Hz]
 * @throws RangeError if a centre is not nominal
 */
export function weightedLevel(bands: readonly Band[]): Decibels {
  return sumLevels(bands.map((band) => band.level + bandWeight(band.centre)));
}

/**
 * Shape of an axial fan's octave spectrum [dB]: -5 - 5 (lg St - 0.6)², St = f/(πn).
 *
 * It does not sum to 0 dB, so it must be brought to a level before use. Broadband only; 5 dB a band for a small
 * fan. Source: VDI 2081-1:2001, equation 15, axial (published: phonometry, hvac.py).
 *
 * @param centre octave centre [Hz], > 0
 * @param speed speed [1/s], > 0
 */
export function fanShape(centre: number, speed: RevolutionsPerSecond): Decibels {
  const offset = Math.log10(centre / (Math.PI * speed)) - 0.6;
  return -5 - 5 * offset * offset;
}

/**
 * A spectrum moved up or down to an A-weighted level, its shape kept.
 *
 * Source: derived.
 *
 * @param shape octave or third-octave bands with nominal centres [Hz] and unweighted levels [dB]
 * @param level A-weighted level wanted [dB]
 */
export function atLevel(shape: readonly Band[], level: Decibels): Band[] {
  const shift = level - weightedLevel(shape);
  return shape.map((band) => ({ centre: band.centre, level: band.level + shift }));
}

/**
 * Octave spectrum of a fan known by its A-weighted level only, 63 Hz to 8 kHz.
 *
 * Source: VDI 2081-1:2001, equation 15, brought to the level given.
 *
 * @param level A-weighted level [dB]
 * @param speed speed [1/s], > 0
 */
export function fanSpectrum(level: Decibels, speed: RevolutionsPerSecond): Band[] {
  return atLevel(
    OCTAVES.map((centre) => ({ centre, level: fanShape(centre, speed) })),
    level,
  );
}

/**
 * Several spectra of the same bands, heard together.
 *
 * Source: energetic sum, band by band.
 *
 * @param spectra octaves from 63 Hz to 8 kHz, ascending
 * @returns octaves from 63 Hz to 8 kHz; -Infinity where nothing sounds
 */
export function sumSpectra(spectra: readonly (readonly Band[])[]): Band[] {
  return OCTAVES.map((centre, octave) => ({
    centre,
    level: sumLevels(spectra.map((bands) => bands[octave]?.level ?? Number.NEGATIVE_INFINITY)),
  }));
}
