/** Loudness level at which loudness is 1 sone [phon]. */
const ONE_SONE = 40;

/** Constants of the branch below 1 sone. Source: ISO 532-1 (published: MoSQITo, sone_to_phon.py and loudness_zwst). */
const QUIET = { offset: 0.0005, exponent: 0.35 };

/**
 * Loudness of a loudness level [sone].
 *
 * A-weighted decibels are no phons: 30 dB(A) of fan noise has about 42 phon.
 * Source: ISO 532-1; N = 2^((LN - 40)/10) from 40 phon on, LN = 40 (N + 0.0005)^0.35 below.
 *
 * @param phons loudness level [phon], below about 3 the loudness is 0
 */
export function sones(phons: number): number {
  if (phons >= ONE_SONE) return 2 ** ((phons - ONE_SONE) / 10);
  return Math.max(0, (Math.max(0, phons) / ONE_SONE) ** (1 / QUIET.exponent) - QUIET.offset);
}

/**
 * Loudness level of a loudness [phon].
 *
 * Source: ISO 532-1, as in `sones`.
 *
 * @param loudness loudness [sone], ≥ 0
 */
export function phons(loudness: number): number {
  if (loudness >= 1) return ONE_SONE + 10 * Math.log2(loudness);
  return Math.min(ONE_SONE, ONE_SONE * (Math.max(0, loudness) + QUIET.offset) ** QUIET.exponent);
}
