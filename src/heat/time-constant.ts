import type { JoulesPerKilogramKelvin, KelvinsPerWatt } from '../quantities/dimensions.ts';

/**
 * Time [s] in which a temperature covers 63 % of its way to the end: R·m·c. After five of them a reading is steady.
 *
 * Source: first-order lag, derived.
 *
 * @param resistance from the body to the air [K/W], > 0
 * @param mass of the body [kg], > 0
 * @param specificHeat of its material [J/(kg·K)], > 0
 */
export function timeConstant(
  resistance: KelvinsPerWatt,
  mass: number,
  specificHeat: JoulesPerKilogramKelvin,
): number {
  return resistance * mass * specificHeat;
}
