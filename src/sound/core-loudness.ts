import type { Decibels } from '../quantities/dimensions.ts';
import { energy, levelOf } from './levels.ts';

/** Third-octave bands the method takes, 25 Hz to 12.5 kHz [-]. */
export const THIRD_OCTAVES = 28;

/**
 * Ends of the ranges of level in which the low bands are taken down by the same amount [dB].
 * Source: ISO 532-1:2017, table A.3 (published: MoSQITo, _main_loudness.py).
 */
const RANGES: readonly Decibels[] = [45, 55, 65, 71, 80, 90, 100, 120];

/**
 * What is added to the bands from 25 to 250 Hz in each of these ranges [dB].
 * Source: ISO 532-1:2017, table A.3 (published: MoSQITo, _main_loudness.py).
 */
const LOW_BANDS: readonly (readonly Decibels[])[] = [
  [-32, -24, -16, -10, -5, 0, -7, -3, 0, -2, 0],
  [-29, -22, -15, -10, -4, 0, -7, -2, 0, -2, 0],
  [-27, -19, -14, -9, -4, 0, -6, -2, 0, -2, 0],
  [-25, -17, -12, -9, -3, 0, -5, -2, 0, -2, 0],
  [-23, -16, -11, -7, -3, 0, -4, -1, 0, -1, 0],
  [-20, -14, -10, -6, -3, 0, -4, -1, 0, -1, 0],
  [-18, -12, -9, -6, -2, 0, -3, -1, 0, -1, 0],
  [-15, -10, -8, -4, -2, 0, -3, -1, 0, -1, 0],
];

/** Low bands that make up each of the three lowest critical bands: first and one past the last. */
const LOW_CRITICAL: readonly (readonly [number, number])[] = [
  [0, 6],
  [6, 9],
  [9, 11],
];

/** A critical band of the method. */
interface CriticalBand {
  /** Level at threshold in quiet [dB]. */
  readonly threshold: Decibels;
  /** Taken off for the way to the inner ear [dB]. */
  readonly transmission: Decibels;
  /** Taken off because third octaves are not critical bands [dB]. */
  readonly width: Decibels;
}

/**
 * The critical bands.
 * Source: ISO 532-1:2017, tables A.4 to A.7 (published: MoSQITo, _main_loudness.py).
 */
const CRITICAL_BANDS: readonly CriticalBand[] = [
  [30, 0, -0.25],
  [18, 0, -0.6],
  [12, 0, -0.8],
  [8, 0, -0.8],
  [7, 0, -0.5],
  [6, 0, 0],
  [5, 0, 0.5],
  [4, 0, 1.1],
  [3, 0, 1.5],
  [3, 0, 1.7],
  [3, -0.5, 1.8],
  [3, -1.6, 1.8],
  [3, -3.2, 1.7],
  [3, -5.4, 1.6],
  [3, -5.6, 1.4],
  [3, -4, 1.2],
  [3, -1.5, 0.8],
  [3, 2, 0.5],
  [3, 5, 0],
  [3, 12, -0.5],
].map(([threshold = 0, transmission = 0, width = 0]) => ({ threshold, transmission, width }));

/** Energy of a low band as the ear weighs it. */
function lowEnergy(level: Decibels, band: number): number {
  const range = RANGES.findIndex((end, index) => level <= end - (LOW_BANDS[index]?.[band] ?? 0));
  return energy(level + (LOW_BANDS.at(range)?.[band] ?? 0));
}

/** Levels of the critical bands: three made of the low third octaves, then one for each of the others. */
function criticalLevels(thirds: readonly Decibels[]): readonly Decibels[] {
  const low = thirds.slice(0, 11).map(lowEnergy);
  const sums = LOW_CRITICAL.map(([from, to]) =>
    levelOf(low.slice(from, to).reduce((sum, value) => sum + value, 0)),
  );
  return [...sums, ...thirds.slice(11)];
}

/** Core loudness of a critical band [sone/Bark]. */
function coreOf(level: Decibels, { threshold, transmission, width }: CriticalBand): number {
  const arriving = level - transmission;
  if (arriving <= threshold) return 0;
  const excitation = energy(arriving - width - threshold);
  return Math.max(0, 0.0635 * 10 ** (0.025 * threshold) * ((0.75 + 0.25 * excitation) ** 0.25 - 1));
}

/**
 * Core loudness of the critical bands [sone/Bark]: what each would have without masking by its neighbours, and
 * a last one that is 0. Free field.
 *
 * Source: ISO 532-1:2017, annex A, method of Zwicker for stationary sounds.
 *
 * @param thirds unweighted levels of the third octaves from 25 Hz to 12.5 kHz [dB]
 * @throws RangeError if there are not 28 of them
 */
export function coreLoudness(thirds: readonly Decibels[]): readonly number[] {
  if (thirds.length !== THIRD_OCTAVES) throw new RangeError(`${THIRD_OCTAVES} third octaves are needed`);
  const [lowest = 0, ...others] = criticalLevels(thirds).map((level, index) =>
    coreOf(level, CRITICAL_BANDS[index] as CriticalBand),
  );
  // The threshold varies within the lowest critical band.
  return [lowest * Math.min(1, 0.4 + 0.32 * lowest ** 0.2), ...others, 0];
}
