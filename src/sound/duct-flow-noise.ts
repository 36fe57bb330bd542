import type { Decibels, MetresPerSecond, SquareMetres } from '../quantities/dimensions.ts';

/**
 * Unweighted sound power level of the flow in a straight smooth duct [dB]: 7 + 50 lg v + 10 lg S.
 *
 * Source: VDI 2081 part 1, as Bies, Hansen and Howard, Engineering Noise Control, 5th ed., equation 8.251
 * (published: phonometry, hvac.py, with a printed example).
 *
 * @param area clear area [m²], > 0
 * @param velocity mean velocity [m/s], > 0
 */
export function ductFlowPower(area: SquareMetres, velocity: MetresPerSecond): Decibels {
  return 7 + 50 * Math.log10(velocity) + 10 * Math.log10(area);
}

/**
 * A-weighted sound power level of the flow in a straight smooth duct [dB]: -25 + 70 lg v + 10 lg S.
 *
 * Source: VDI 2081 part 1 (published: phonometry, hvac.py).
 *
 * @param area clear area [m²], > 0
 * @param velocity mean velocity [m/s], > 0
 */
export function ductFlowPowerWeighted(area: SquareMetres, velocity: MetresPerSecond): Decibels {
  return -25 + 70 * Math.log10(velocity) + 10 * Math.log10(area);
}
