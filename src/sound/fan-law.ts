import type { Decibels, KilogramsPerCubicMetre, Metres } from '../quantities/dimensions.ts';

/**
 * Sound law exponents of similar fans, unweighted [dB per decade].
 * Source: AMCA and ASHRAE fan sound laws (from memory).
 */
const SPEED_EXPONENT = 50;
const SIZE_EXPONENT = 70;
const DENSITY_EXPONENT = 20;

/**
 * Change of a fan's level with speed at the same point of its curve [dB].
 *
 * Source: fan sound law, 50 lg(N2/N1) unweighted; A-weighted levels rise faster.
 *
 * @param ratio new speed over old [-], > 0
 * @param exponent rise per decade [dB]
 */
export function speedChange(ratio: number, exponent: Decibels = SPEED_EXPONENT): Decibels {
  return exponent * Math.log10(ratio);
}

/**
 * Change of level between similar fans of different size at one speed [dB].
 *
 * Source: fan sound law, 70 lg(D2/D1).
 *
 * @param from old size [m], > 0
 * @param to new size [m], > 0
 */
export function sizeChange(from: Metres, to: Metres): Decibels {
  return SIZE_EXPONENT * Math.log10(to / from);
}

/**
 * Change of a fan's level with the density of the air [dB].
 *
 * Source: fan sound law, 20 lg(ρ2/ρ1).
 *
 * @param from old density [kg/m³], > 0
 * @param to new density [kg/m³], > 0
 */
export function densityChange(from: KilogramsPerCubicMetre, to: KilogramsPerCubicMetre): Decibels {
  return DENSITY_EXPONENT * Math.log10(to / from);
}
