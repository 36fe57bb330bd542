import type { Decibels, Fraction, Metres } from '../quantities/dimensions.ts';

/** Nepers of energy in one decibel: 10^(L/10) = exp(L · ENERGY_PER_DECIBEL). */
const ENERGY_PER_DECIBEL = Math.LN10 / 10;

/**
 * Squared sound pressure of a level, relative to the reference [-].
 *
 * Source: definition of the level, ISO 80000-8.
 *
 * @param level level [dB], below 3000; -Infinity is silence and gives 0
 */
export function energy(level: Decibels): number {
  return Math.exp(level * ENERGY_PER_DECIBEL);
}

/**
 * Level of a relative squared pressure [dB]; 0 gives -Infinity.
 *
 * Source: definition of the level, ISO 80000-8.
 *
 * @param sum relative squared pressure [-], ≥ 0; less counts as 0
 */
export function levelOf(sum: number): Decibels {
  return sum > 0 ? Math.log(sum) / ENERGY_PER_DECIBEL : Number.NEGATIVE_INFINITY;
}

/**
 * Level of several incoherent sounds together [dB]; -Infinity if there are none.
 *
 * Holds for broadband sounds and for tones of different frequency, not for locked tones of one frequency.
 * Source: published, python-acoustics, decibel.py, `dbsum`; Bies and Hansen, Engineering Noise Control.
 *
 * @param levels levels at one point [dB]
 */
export function sumLevels(levels: readonly Decibels[]): Decibels {
  let sum = 0;
  for (const level of levels) sum += energy(level);
  return levelOf(sum);
}

/**
 * Level of n equal incoherent sounds [dB]: L + 10 lg n.
 *
 * Source: derived from the energetic sum.
 *
 * @param level level of one [dB]
 * @param count number of sources [-], ≥ 0; none gives -Infinity
 */
export function sumOfIdentical(level: Decibels, count: number): Decibels {
  return level + levelOf(count);
}

/**
 * What a quieter sound adds to a louder one [dB]: 10 lg(1 + 10^(-d/10)).
 *
 * Source: derived from the energetic sum.
 *
 * @param difference louder minus quieter level [dB]; Infinity gives 0
 */
export function riseByAdding(difference: Decibels): Decibels {
  return Math.log1p(energy(-difference)) / ENERGY_PER_DECIBEL;
}

/**
 * Level heard at another distance from a small source [dB]: L - 20 lg(r/r0).
 *
 * Holds out of doors or near the source, from about two source sizes on; nearer it overstates, far off in a
 * room it understates. Source: spherical spreading, Bies and Hansen, Engineering Noise Control (from memory).
 *
 * @param level level at the first distance [dB]
 * @param from distance at which it holds [m], > 0
 * @param to distance asked for [m], > 0
 * @throws RangeError if a distance is not above 0
 */
export function levelAtDistance(level: Decibels, from: Metres, to: Metres): Decibels {
  if (!(from > 0 && to > 0)) throw new RangeError('a distance must be above 0');
  return level - 20 * Math.log10(to / from);
}

/** A state of use with its level and its share of the time. */
export interface SoundState {
  /** Level in this state [dB]; -Infinity when everything is off. */
  readonly level: Decibels;
  /** Share of the time [-], ≥ 0. */
  readonly share: Fraction;
}

/** How far the shares may miss 1 by rounding [-]. */
const SHARE_TOLERANCE = 1e-6;

/**
 * Equivalent continuous level LAeq over states of use [dB].
 *
 * It hides rare loud states, so the loudest state belongs beside it.
 * Source: ISO 1996-1, definition of the equivalent level (published: python-acoustics, decibel.py, `dbmean`).
 *
 * @param states levels [dB] with their shares [-], which sum to 1
 * @throws RangeError if a share is negative or the shares do not sum to 1
 */
export function equivalentLevel(states: readonly SoundState[]): Decibels {
  let shares = 0;
  let sum = 0;
  for (const { level, share } of states) {
    if (!(share >= 0)) throw new RangeError('a share of time must not be negative');
    shares += share;
    sum += share * energy(level);
  }
  if (!(Math.abs(shares - 1) <= SHARE_TOLERANCE)) throw new RangeError('the shares of time must sum to 1');
  return levelOf(sum);
}
