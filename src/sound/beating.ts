import type { RevolutionsPerSecond } from '../quantities/dimensions.ts';
import type { Span } from './tone-assumptions.ts';
import { beat, criticalBandwidth } from './tones.ts';

/**
 * Beat frequencies of two blade-pass tones of fans whose speeds differ from what they are told [Hz].
 *
 * Source: kinematics; that the speeds differ by a share between two ends is a model assumption.
 *
 * @param one blade-pass frequency one fan is told [Hz]
 * @param other that of the other [Hz]
 * @param difference by how much two fans told to run alike differ, least and most [-]
 * @returns the slowest and the fastest beat; the slowest is 0 if the tones may meet
 */
export function beatRange(one: number, other: number, difference: Span): Span {
  const apart = beat(one, other);
  const tone = Math.max(one, other);
  const least = difference.from * tone;
  const most = difference.to * tone;
  const meet = apart >= least && apart <= most;
  return {
    from: meet ? 0 : Math.min(Math.abs(apart - least), Math.abs(apart - most)),
    to: apart + most,
  };
}

/**
 * The beat frequency of a span that lies nearest to another span [Hz]; in both if they overlap.
 *
 * Source: definition.
 *
 * @param span where the frequency must be [Hz]
 * @param wanted where it should be if it can [Hz]
 */
export function nearestIn(span: Span, wanted: Span): number {
  return Math.min(span.to, Math.max(span.from, Math.min(wanted.to, Math.max(wanted.from, span.from))));
}

/** What takes the beat out of two tones, in numbers. */
export interface BeatRemedies {
  /** Speed at which the second fan has the tone of the first [1/s]. */
  readonly lockAt: RevolutionsPerSecond;
  /** How near the second fan must be held to that speed for the beat to be too slow to be heard [1/s]. */
  readonly lockWithin: RevolutionsPerSecond;
  /** How far from that speed it must run for the tones to share no critical band [1/s]. */
  readonly runApart: RevolutionsPerSecond;
  /** Speeds of the second fan between which the tones share a critical band [1/s]. */
  readonly avoid: Span;
  /** Numbers of blades of the second fan, at its present speed, that are too many and too few to share one [-]. */
  readonly blades: { readonly most: number; readonly least: number };
}

/**
 * What takes the beat out of two blade-pass tones: hold the fans together, run them apart by more than a critical
 * band, where neither fluctuation nor roughness is left, or take another number of blades.
 *
 * Source: kinematics and `criticalBandwidth`; that roughness ends at the critical band: Zwicker and Fastl,
 * Psychoacoustics (from memory).
 *
 * @param tone blade-pass frequency of the first fan [Hz], > 0
 * @param blades blades of the second fan [-], ≥ 1
 * @param speed speed of the second fan [1/s], > 0
 * @param locked slower beats are not heard as such [Hz]
 */
export function beatRemedies(
  tone: number,
  blades: number,
  speed: RevolutionsPerSecond,
  locked: number,
): BeatRemedies {
  const width = criticalBandwidth(tone);
  return {
    lockAt: tone / blades,
    lockWithin: locked / blades,
    runApart: width / blades,
    avoid: { from: Math.max(0, tone - width) / blades, to: (tone + width) / blades },
    blades: { most: Math.floor((tone - width) / speed), least: Math.ceil((tone + width) / speed) },
  };
}

/**
 * Whether two spans of beat frequencies have something in common.
 *
 * Source: definition.
 *
 * @param one ends included [Hz]
 * @param other ends included [Hz]
 */
export function overlap(one: Span, other: Span): boolean {
  return one.from <= other.to && other.from <= one.to;
}
