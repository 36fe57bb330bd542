import type { CubicMetresPerSecond, Decibels, Fraction, Pascals } from '../quantities/dimensions.ts';
import type { Band } from './spectrum.ts';
import { OCTAVES } from './spectrum.ts';

/*
 * Estimates for a fan without any rating. They were made for ventilation fans above 300 mm and tend to come out
 * high for small ones: 6 dB uncertain, and never to be mixed with rated fans in one ranking.
 */

/** Kinds of axial fans the ASHRAE law knows. */
export type AxialKind = 'tubeaxial' | 'propeller';

/**
 * Specific sound power, 63 Hz to 8 kHz, and the rise in the octave of the blade-pass tone [dB].
 * Source: Long, Architectural Acoustics, 2nd ed., tables 13.5 and 13.7, wheel below 1 m
 * (published: phonometry, hvac.py).
 */
const SPECIFIC_POWER: Readonly<
  Record<AxialKind, { readonly octaves: readonly Decibels[]; readonly bladePass: Decibels }>
> = {
  tubeaxial: { octaves: [48, 47, 49, 53, 52, 51, 43, 40], bladePass: 7 },
  propeller: { octaves: [48, 51, 58, 56, 55, 52, 46, 42], bladePass: 5 },
};

/** Reference flow 1 cfm [m³/s] and pressure 1 inch of water [Pa] of the ASHRAE law, as its SI form rounds them. */
const REFERENCE = { flow: 0.472e-3, pressure: 249 };

/**
 * Least share of the peak efficiency, and the allowance from there on [dB].
 * Source: Long, Architectural Acoustics, 2nd ed., table 13.6 (published: phonometry, hvac.py).
 */
const EFFICIENCY_STEPS: readonly { readonly from: Fraction; readonly allowance: Decibels }[] = [
  { from: 0.9, allowance: 0 },
  { from: 0.85, allowance: 3 },
  { from: 0.75, allowance: 6 },
  { from: 0.65, allowance: 9 },
  { from: 0.55, allowance: 12 },
  { from: 0.5, allowance: 15 },
];

/** Allowance below half the peak efficiency [dB]. */
const POOREST_ALLOWANCE: Decibels = 16;

/** Half an octave as a frequency ratio [-]. */
const HALF_OCTAVE = Math.SQRT2;

/**
 * What a fan away from its best efficiency is louder [dB].
 *
 * Source: Long, Architectural Acoustics, 2nd ed., table 13.6 (published: phonometry, hvac.py).
 *
 * @param share static efficiency over its peak [-], 0 to 1
 */
export function efficiencyAllowance(share: Fraction): Decibels {
  const step = EFFICIENCY_STEPS.find(({ from }) => share >= from);
  return step?.allowance ?? POOREST_ALLOWANCE;
}

/** Duty of a fan that has no rating. */
export interface UnratedDuty {
  readonly kind: AxialKind;
  /** Volume flow [m³/s], > 0. */
  readonly flow: CubicMetresPerSecond;
  /** Pressure rise [Pa], > 0. */
  readonly pressure: Pascals;
  /** Static efficiency over its peak [-]; 0.8 if unknown. */
  readonly efficiencyShare: Fraction;
  /** Blade-pass frequency [Hz]; absent: no tone. */
  readonly bladePass?: number;
}

/**
 * Sound power spectrum of an axial fan from its duty: KW + 10 lg Q + 20 lg p + C, in cfm and inches of water.
 *
 * Source: ASHRAE law as in the US manual TM 5-805-4, equation C-5 (published); a public library has 10 lg p, which
 * contradicts the 50 lg N of the fan laws.
 *
 * @param duty kind, flow [m³/s], pressure [Pa], efficiency share [-], blade pass [Hz]
 */
export function unratedSpectrum(duty: UnratedDuty): Band[] {
  const { octaves, bladePass } = SPECIFIC_POWER[duty.kind];
  const common =
    10 * Math.log10(duty.flow / REFERENCE.flow) +
    20 * Math.log10(duty.pressure / REFERENCE.pressure) +
    efficiencyAllowance(duty.efficiencyShare);
  return OCTAVES.map((centre, index) => {
    const ratio = duty.bladePass === undefined ? 0 : duty.bladePass / centre;
    const tone = ratio >= 1 / HALF_OCTAVE && ratio < HALF_OCTAVE ? bladePass : 0;
    return { centre, level: (octaves[index] ?? 0) + common + tone };
  });
}

/**
 * Sound power level of an axial fan from its duty [dB]: 42 + 10 lg Q + 20 lg p.
 *
 * Source: VDI 2081-1:2001, axial with downstream diffuser, 2 dB and up to 7 for a poor fan (published: phonometry).
 *
 * @param flow volume flow [m³/s], > 0
 * @param pressure total pressure rise [Pa], > 0
 */
export function unratedPower(flow: CubicMetresPerSecond, pressure: Pascals): Decibels {
  return 42 + 10 * Math.log10(flow) + 20 * Math.log10(pressure);
}

/**
 * What a fan is louder than `unratedPower` away from its best point [dB].
 *
 * Source: VDI 2081-1:2001, figure 13, axial (published: phonometry, hvac.py).
 *
 * @param share flow over the flow of best efficiency [-], 0.2 to 1.5
 */
export function offDutyAllowance(share: Fraction): Decibels {
  return 18.9 + share * (-46.6 + share * (33 - 5.2 * share));
}
