import type { Fraction, Kelvins, KelvinsPerWatt, PerKelvin, Watts } from '../quantities/dimensions.ts';

/** Temperature reported where heat has no way out [K]: hot enough to fail any limit, finite so that the sums go on. */
export const HOPELESS: Kelvins = 1e6;

/**
 * Power [W] of a part whose power rises linearly with its temperature: P = P0·(1 + a·(T − T0)), never below 0.
 *
 * Source: linear approximation, acceptable from 20 to 50 °C (published: arXiv 1404.3381).
 *
 * @param power P0 [W] at the reference temperature
 * @param slope a [1/K]
 * @param powerAt reference temperature T0 [K]
 * @param temperature T [K]
 */
export function powerAtTemperature(
  power: Watts,
  slope: PerKelvin,
  powerAt: Kelvins,
  temperature: Kelvins,
): Watts {
  return Math.max(0, power * (1 + slope * (temperature - powerAt)));
}

/**
 * Loop gain R·dP/dT [-]: below 1 the part settles, at 1 it runs away.
 *
 * Source: stability condition dP/dT < 1/R_th, published in power electronics practice on thermal runaway.
 *
 * @param resistance from the part to the air that cools it [K/W]
 * @param power P0 [W]
 * @param slope a [1/K]
 */
export function loopGain(resistance: KelvinsPerWatt, power: Watts, slope: PerKelvin): Fraction {
  return resistance * power * slope;
}

/**
 * Temperature [K] at which a part with linear power slope settles above given air:
 * T = (T_a + R·P0·(1 − a·T0)) / (1 − a·R·P0). At a loop gain of 1 or more it has none: `HOPELESS`.
 *
 * Source: closed form of the linear feedback, derived.
 *
 * @param air temperature the resistance leads to [K]
 * @param resistance from the part to that air [K/W], ≥ 0
 * @param power P0 [W]
 * @param slope a [1/K]
 * @param powerAt T0 [K]
 */
export function settledTemperature(
  air: Kelvins,
  resistance: KelvinsPerWatt,
  power: Watts,
  slope: PerKelvin,
  powerAt: Kelvins,
): Kelvins {
  const gain = loopGain(resistance, power, slope);
  if (gain >= 1) return HOPELESS;
  const temperature = (air + resistance * power * (1 - slope * powerAt)) / (1 - gain);
  // A falling power (negative slope, cold part) stops at nothing: the part is then as warm as its air.
  return Math.min(HOPELESS, Math.max(air, temperature));
}
