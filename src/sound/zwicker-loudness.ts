import type { Decibels } from '../quantities/dimensions.ts';
import { coreLoudness, THIRD_OCTAVES } from './core-loudness.ts';
import type { Band } from './spectrum.ts';

/**
 * Upper ends of the critical bands [Bark].
 * Source: ISO 532-1:2017, annex A (published: MoSQITo, _calc_slopes.py).
 */
const ENDS: readonly number[] = [
  0.9, 1.8, 2.8, 3.5, 4.4, 5.4, 6.6, 7.9, 9.2, 10.6, 12.3, 13.8, 15.2, 16.7, 18.1, 19.3, 20.6, 21.8, 22.7,
  23.6, 24,
];

/**
 * Lower ends of the ranges of specific loudness with one steepness of the upper slope [sone/Bark].
 * Source: ISO 532-1:2017, table A.8 (published: MoSQITo, _calc_slopes.py).
 */
const RANGES: readonly number[] = [
  21.5, 18, 15.1, 11.5, 9, 6.1, 4.4, 3.1, 2.13, 1.36, 0.82, 0.42, 0.3, 0.22, 0.15, 0.1, 0.035, 0,
];

/**
 * Steepness of the upper slopes in each range, for the lowest eight critical bands; the last is for all above
 * [sone/Bark²]. Source: ISO 532-1:2017, table A.9 (published: MoSQITo, _calc_slopes.py).
 */
const SLOPES: readonly (readonly number[])[] = [
  [13, 8.2, 6.3, 5.5, 5.5, 5.5, 5.5, 5.5],
  [9, 7.5, 6, 5.1, 4.5, 4.5, 4.5, 4.5],
  [7.8, 6.7, 5.6, 4.9, 4.4, 3.9, 3.9, 3.9],
  [6.2, 5.4, 4.6, 4, 3.5, 3.2, 3.2, 3.2],
  [4.5, 3.8, 3.6, 3.2, 2.9, 2.7, 2.7, 2.7],
  [3.7, 3, 2.8, 2.35, 2.2, 2.2, 2.2, 2.2],
  [2.9, 2.3, 2.1, 1.9, 1.8, 1.7, 1.7, 1.7],
  [2.4, 1.7, 1.5, 1.35, 1.3, 1.3, 1.3, 1.3],
  [1.95, 1.45, 1.3, 1.15, 1.1, 1.1, 1.1, 1.1],
  [1.5, 1.2, 0.94, 0.86, 0.82, 0.82, 0.82, 0.82],
  [0.72, 0.67, 0.64, 0.63, 0.62, 0.62, 0.62, 0.62],
  [0.59, 0.53, 0.51, 0.5, 0.42, 0.42, 0.42, 0.42],
  [0.4, 0.33, 0.26, 0.24, 0.24, 0.22, 0.22, 0.22],
  [0.27, 0.21, 0.2, 0.18, 0.17, 0.17, 0.17, 0.17],
  [0.16, 0.15, 0.14, 0.12, 0.11, 0.11, 0.11, 0.11],
  [0.12, 0.11, 0.1, 0.08, 0.08, 0.08, 0.08, 0.08],
  [0.09, 0.08, 0.07, 0.06, 0.06, 0.06, 0.06, 0.05],
  [0.06, 0.05, 0.03, 0.02, 0.02, 0.02, 0.02, 0.02],
];

/** First range whose lower end is below a specific loudness; the last if there is none. */
function rangeBelow(loudness: number): number {
  const found = RANGES.findIndex((end) => end < loudness);
  return found < 0 ? RANGES.length - 1 : found;
}

function steepness(range: number, band: number): number {
  return SLOPES[range]?.[Math.min(7, Math.max(0, band - 1))] ?? 0;
}

/** Where the pattern of specific loudness has got to: place [Bark], height [sone/Bark], area so far [sone]. */
interface Pattern {
  place: number;
  height: number;
  area: number;
}

/** Follows the slope that masks from below until it meets the core loudness of the band or the band ends. */
function followSlope(pattern: Pattern, core: number, band: number, end: number): void {
  const range = rangeBelow(pattern.height);
  const slope = steepness(range, band);
  const floor = Math.max(RANGES[range] ?? 0, core);
  const reach = (pattern.height - floor) / slope;
  const step = Math.min(reach, end - pattern.place);
  const height = step < reach ? pattern.height - step * slope : floor;
  pattern.area += (step * (pattern.height + height)) / 2;
  pattern.place = step < reach ? end : pattern.place + step;
  pattern.height = height;
}

/**
 * Loudness of a stationary sound in the free field [sone].
 *
 * Source: ISO 532-1:2017, annex A, method of Zwicker: core loudness of the critical bands, joined by slopes that
 * stand for masking towards higher bands; the loudness is the area under the pattern.
 *
 * @param thirds unweighted levels of the third octaves from 25 Hz to 12.5 kHz [dB], below 120; -Infinity is none
 * @throws RangeError if there are not 28 of them
 */
export function zwickerLoudness(thirds: readonly Decibels[]): number {
  const cores = coreLoudness(thirds);
  const pattern: Pattern = { place: 0, height: 0, area: 0 };
  ENDS.forEach((end, band) => {
    const core = cores[band] ?? 0;
    while (pattern.place < end && pattern.height > core) followSlope(pattern, core, band, end);
    if (pattern.height <= core) {
      pattern.area += core * (end - pattern.place);
      pattern.height = core;
    }
    pattern.place = end;
  });
  return pattern.area;
}

/** Place of the lowest third of the 63 Hz octave among the third octaves. */
const FIRST_THIRD = 3;
const THIRDS_IN_OCTAVE = 3;

/**
 * Loudness of an octave spectrum in the free field [sone]; what lies outside 63 Hz to 8 kHz is taken as nothing.
 *
 * Each octave is divided evenly into its three thirds, which is right for spectra without tones.
 * Source: `zwickerLoudness`; the division is a model assumption, no source.
 *
 * @param bands octaves from 63 Hz to 8 kHz with unweighted levels [dB], ascending
 */
export function octaveLoudness(bands: readonly Band[]): number {
  const thirds = new Array<Decibels>(THIRD_OCTAVES).fill(Number.NEGATIVE_INFINITY);
  bands.forEach(({ level }, octave) => {
    const first = FIRST_THIRD + THIRDS_IN_OCTAVE * octave;
    thirds.fill(level - 10 * Math.log10(THIRDS_IN_OCTAVE), first, first + THIRDS_IN_OCTAVE);
  });
  return zwickerLoudness(thirds);
}
