import type { Decibels } from '../quantities/dimensions.ts';
import type { SoundAssumptions } from './sound-assumptions.ts';

/**
 * Whether a sound is heard. `unjudged` when it is above the threshold of hearing and no background is stated:
 * nobody can say then that it is inaudible.
 */
export type Audibility = 'silent' | 'masked' | 'borderline' | 'audible' | 'unjudged';

/**
 * Whether a broadband sound is heard over a background.
 *
 * Source: model assumption, no source; the threshold of hearing for broadband fan noise lies at 13 to 15 dB(A)
 * by ISO 532-1 (computed with the loudness code of MoSQITo).
 *
 * @param level A-weighted level at the listener [dB]
 * @param background A-weighted level without the source [dB]; undefined if none was stated
 * @param toneRisk true if a tone may stand out, which is heard further below the background
 * @param assumptions margins in `audibility`
 */
export function audibility(
  level: Decibels,
  background: Decibels | undefined,
  toneRisk: boolean,
  assumptions: SoundAssumptions,
): Audibility {
  const limits = assumptions.audibility;
  if (level <= limits.silent) return 'silent';
  if (background === undefined) return 'unjudged';
  const below = background - level;
  if (below >= (toneRisk ? limits.maskedWithTone : limits.masked)) return 'masked';
  return below >= limits.borderline ? 'borderline' : 'audible';
}

/** A plain-language band of levels, quietest first. */
export type LevelBand = SoundAssumptions['levelBands'][number]['band'] | 'loud';

/**
 * Band a level at the listener falls into; a level on a limit belongs to the quieter band.
 *
 * Source: model assumption, no source.
 *
 * @param level A-weighted level at the listener [dB]
 * @param assumptions limits in `levelBands`
 */
export function levelBand(level: Decibels, assumptions: SoundAssumptions): LevelBand {
  for (const { upTo, band } of assumptions.levelBands) {
    if (level <= upTo) return band;
  }
  return 'loud';
}

/**
 * Guideline value for sound inside bedrooms at night, LAeq over 8 h [dB].
 * Source: WHO, Guidelines for Community Noise, 1999.
 */
export const BEDROOM_GUIDELINE: Decibels = 30;
