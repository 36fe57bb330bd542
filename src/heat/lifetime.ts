import type { KelvinDifference } from '../quantities/dimensions.ts';

/** Cooler by this, a capacitor lives twice as long [K]. */
const HALVING: KelvinDifference = 10;

/**
 * Factor on the life of an electrolytic capacitor [-] that is cooler by so much: 2^(ΔT/10 K). Indicative only: no law
 * for chips, solder or fans.
 *
 * Source: rule of ten kelvins, common practice of capacitor makers (published: application notes).
 *
 * @param cooler temperature drop [K]; negative if it gets warmer
 */
export function lifeFactor(cooler: KelvinDifference): number {
  return 2 ** (cooler / HALVING);
}
