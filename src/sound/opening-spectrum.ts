import type { Decibels, MetresPerSecond } from '../quantities/dimensions.ts';
import { atLevel, type Band, OCTAVES } from './spectrum.ts';

/** Frequency at which flow noise peaks, over the face velocity [1/m]: 48.8 Hz per ft/s. */
const PEAK = 160.1;

/**
 * Shape of the octave spectrum of a vent or grille [dB]: -5.82 - 0.15 a - 1.13 a², a octaves below the peak.
 *
 * It does not sum to 0 dB, so it must be brought to a level before use.
 * Source: Long, Architectural Acoustics, 2nd ed., equation 13.31, round devices (published: phonometry, hvac.py);
 * octaves below the peak are not rounded, so that the shape moves smoothly with the velocity.
 *
 * @param centre octave centre [Hz], > 0
 * @param velocity velocity on the gross face [m/s], > 0
 */
export function openingShape(centre: number, velocity: MetresPerSecond): Decibels {
  const below = Math.log2((PEAK * velocity) / centre);
  return -5.82 - 0.15 * below - 1.13 * below * below;
}

/**
 * Octave spectrum of a vent or grille known by its A-weighted level, 63 Hz to 8 kHz.
 *
 * Source: as `openingShape`, brought to the level given.
 *
 * @param level A-weighted level [dB]
 * @param velocity velocity on the gross face [m/s], > 0
 */
export function openingSpectrum(level: Decibels, velocity: MetresPerSecond): Band[] {
  return atLevel(
    OCTAVES.map((centre) => ({ centre, level: openingShape(centre, velocity) })),
    level,
  );
}
