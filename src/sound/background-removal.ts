import type { Decibels } from '../quantities/dimensions.ts';
import { energy, levelOf } from './levels.ts';

/** Grade of a measurement: how much background it may contain. */
export type MeasurementGrade = 'engineering' | 'survey';

/** Limits of the background correction of one grade. */
interface CorrectionLimits {
  /** Above this difference there is no correction [dB]. */
  readonly clear: Decibels;
  /** Below this difference the result is an upper bound only [dB]. */
  readonly least: Decibels;
  /** Correction held below the least difference [dB]. */
  readonly held: Decibels;
}

/**
 * Source: engineering grade ISO 3744 (published: phonometry, page on sound power; the 15 dB from memory);
 * survey grade ISO 3746 (published: python-acoustics, power.py, `lw_iso3746`).
 */
const LIMITS: Readonly<Record<MeasurementGrade, CorrectionLimits>> = {
  engineering: { clear: 15, least: 6, held: 1.3 },
  survey: { clear: 10, least: 3, held: 3 },
};

/** What to take off a measured level, and whether what is left is only an upper bound. */
export interface BackgroundCorrection {
  /** To be subtracted from the measured level [dB], ≥ 0. */
  readonly correction: Decibels;
  /** True if the source itself may be quieter still. */
  readonly upperBound: boolean;
}

/**
 * Background correction K1 of a measured level [dB].
 *
 * Source: K1 = -10 lg(1 - 10^(-ΔL/10)) within the limits of ISO 3744 and ISO 3746.
 *
 * @param difference level with the source on minus level with it off [dB]
 * @param grade grade of the measurement, which sets the limits
 */
export function backgroundCorrection(difference: Decibels, grade: MeasurementGrade): BackgroundCorrection {
  const { clear, least, held } = LIMITS[grade];
  if (difference > clear) return { correction: 0, upperBound: false };
  if (difference >= least) return { correction: -levelOf(1 - energy(-difference)), upperBound: false };
  return { correction: held, upperBound: true };
}

/**
 * Level of the source alone [dB]; -Infinity if nothing is left above the background.
 *
 * No limits are applied: near equality the result is worth little.
 * Source: derived from the energetic sum.
 *
 * @param total level with the source on [dB]
 * @param background level with it off [dB]
 */
export function removeBackground(total: Decibels, background: Decibels): Decibels {
  return levelOf(energy(total) - energy(background));
}
