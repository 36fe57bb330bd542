import type { Decibels, Fraction } from '../quantities/dimensions.ts';
import type { SoundAssumptions } from './sound-assumptions.ts';

/**
 * Least rise of a fan's level left of the pressure peak of its curve, where it may stall [dB].
 *
 * Grows from 0 at the peak to its full size a little further left, so that the level has no jump.
 * Source: model assumption, no source; that stalled axial fans are louder is common practice.
 *
 * @param flowShare flow over free delivery at the same speed [-]
 * @param peakShare flow share of the pressure peak [-]; 0 if the curve has none
 * @param assumptions `stall`
 */
export function stallTerm(flowShare: Fraction, peakShare: Fraction, assumptions: SoundAssumptions): Decibels {
  if (peakShare <= 0 || flowShare >= peakShare) return 0;
  const { rise, ramp } = assumptions.stall;
  return rise * Math.min(1, (peakShare - flowShare) / ramp);
}
