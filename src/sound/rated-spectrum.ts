import type { Rating } from '../fan/fan-model.ts';
import type { Decibels, RevolutionsPerSecond } from '../quantities/dimensions.ts';
import { atLevel, type Band, fanSpectrum, OCTAVES } from './spectrum.ts';

/**
 * Octave levels as bands.
 *
 * Source: definition.
 *
 * @param levels from 63 Hz to 8 kHz [dB]; a missing one is -Infinity
 */
export function octaveBands(levels: readonly Decibels[]): Band[] {
  return OCTAVES.map((centre, octave) => ({ centre, level: levels[octave] ?? Number.NEGATIVE_INFINITY }));
}

/**
 * Whether a fan's ratings tell how its sound is spread over the octaves.
 *
 * Source: definition.
 *
 * @param ratings of the fan [dB]
 */
export function hasOctaves(ratings: readonly Rating[]): boolean {
  return ratings.some(({ octaves }) => octaves !== undefined);
}

/** Octaves of the rating whose speed is nearest in ratio; of two equally near the slower one. */
function nearestOctaves(
  ratings: readonly Rating[],
  speed: RevolutionsPerSecond,
): readonly Decibels[] | undefined {
  let nearest: { readonly distance: number; readonly octaves: readonly Decibels[] } | undefined;
  for (const { octaves, speed: rated } of ratings) {
    const distance = Math.abs(Math.log(rated / speed));
    if (octaves && !(nearest && nearest.distance <= distance)) nearest = { distance, octaves };
  }
  return nearest?.octaves;
}

/**
 * Octave spectrum of a fan at a level and a speed, 63 Hz to 8 kHz.
 *
 * Octaves of its own are taken from the rating nearest in speed and keep their shape: they are brought to the level
 * and not moved along the frequencies. Without any, the usual shape of an axial fan is taken, which moves with the
 * speed. Source: model assumption for the own octaves; `fanSpectrum` otherwise.
 *
 * @param ratings of the fan [dB]
 * @param speed speed [1/s], > 0
 * @param level A-weighted level [dB]
 */
export function ratedSpectrum(
  ratings: readonly Rating[],
  speed: RevolutionsPerSecond,
  level: Decibels,
): Band[] {
  const own = nearestOctaves(ratings, speed);
  return own ? atLevel(octaveBands(own), level) : fanSpectrum(level, speed);
}
