import type { Decibels, RevolutionsPerSecond } from '../quantities/dimensions.ts';

/**
 * Blade-pass frequency [Hz]: blades × speed.
 *
 * Source: kinematics (published: phonometry, hvac.py).
 *
 * @param blades number of blades [-], ≥ 1
 * @param speed speed [1/s]
 */
export function bladePass(blades: number, speed: RevolutionsPerSecond): number {
  return blades * speed;
}

/**
 * Beat frequency of two tones [Hz].
 *
 * Source: kinematics.
 *
 * @param one frequency of one tone [Hz]
 * @param other frequency of the other [Hz]
 */
export function beat(one: number, other: number): number {
  return Math.abs(one - other);
}

/**
 * Swing between the loudest and the quietest moment of a beat [dB]; Infinity for equal tones.
 *
 * Concerns the tones only, not the broadband part. Source: derived from the sum of two sine pressures.
 *
 * @param difference level difference of the two tones [dB], sign ignored
 */
export function beatDepth(difference: Decibels): Decibels {
  const ratio = 10 ** (-Math.abs(difference) / 20);
  return 20 * Math.log10((1 + ratio) / (1 - ratio));
}

/**
 * Loudest moment of a beat over the louder tone alone [dB].
 *
 * Source: derived from the sum of two sine pressures.
 *
 * @param difference level difference of the two tones [dB], sign ignored
 */
export function beatPeak(difference: Decibels): Decibels {
  return 20 * Math.log10(1 + 10 ** (-Math.abs(difference) / 20));
}

/**
 * Width of the critical band round a tone [Hz].
 *
 * Source: ECMA-418-1 (published: phonometry, page on tone audibility).
 *
 * @param frequency frequency of the tone [Hz], ≥ 0
 */
export function criticalBandwidth(frequency: number): number {
  return 25 + 75 * (1 + 1.4 * (frequency / 1000) ** 2) ** 0.69;
}

/** Range in which ECMA-418-1 judges tones [Hz] (published: phonometry, page on tone prominence). */
const JUDGED = { from: 89.1, to: 11_200 };

/** Limit that falls with frequency up to 1 kHz and is constant above. */
function prominenceLimit(frequency: number, constant: Decibels, slope: Decibels): Decibels | undefined {
  if (!(frequency >= JUDGED.from && frequency <= JUDGED.to)) return undefined;
  return constant + slope * Math.max(0, Math.log10(1000 / frequency));
}

/**
 * Tone-to-noise ratio from which a tone is prominent [dB]; undefined outside 89.1 Hz to 11.2 kHz.
 *
 * Source: ECMA-418-1 (published: phonometry, page on tone prominence; MoSQITo, _tnr_main_calc.py).
 *
 * @param frequency frequency of the tone [Hz]
 */
export function toneToNoiseLimit(frequency: number): Decibels | undefined {
  return prominenceLimit(frequency, 8, 8.33);
}

/**
 * Prominence ratio from which a tone is prominent [dB]; undefined outside 89.1 Hz to 11.2 kHz.
 *
 * Source: ECMA-418-1 (published: phonometry, page on tone prominence; MoSQITo, _pr_main_calc.py).
 *
 * @param frequency frequency of the tone [Hz]
 */
export function prominenceRatioLimit(frequency: number): Decibels | undefined {
  return prominenceLimit(frequency, 9, 10);
}

/**
 * Audibility of a tone in noise ΔLta [dB].
 *
 * Source: ISO 1996-2:2007, equation C.3 (published: python-acoustics, iso_1996_2_2007.py).
 *
 * @param tone level of the tone [dB]
 * @param noise level of the masking noise in the critical band [dB]
 * @param frequency centre of the critical band [Hz], ≥ 0
 */
export function tonalAudibility(tone: Decibels, noise: Decibels, frequency: number): Decibels {
  return tone - noise + 2 + Math.log10(1 + (frequency / 502) ** 2.5);
}

/**
 * Adjustment Kt for an audible tone [dB]: 0 below 4 dB, rising to 6 at 10 dB.
 *
 * Source: ISO 1996-2:2007, equations C.4 to C.6 (published: python-acoustics, iso_1996_2_2007.py).
 *
 * @param audibility audibility of the tone ΔLta [dB]
 */
export function tonalAdjustment(audibility: Decibels): Decibels {
  return Math.min(6, Math.max(0, audibility - 4));
}
