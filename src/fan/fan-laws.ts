import type { CubicMetresPerSecond, Fraction, Pascals, Watts } from '../quantities/dimensions.ts';

/** One working point of a fan. */
export interface WorkingPoint {
  readonly flow: CubicMetresPerSecond;
  readonly pressure: Pascals;
  readonly power: Watts;
}

/** Ratios of the wanted to the known state, each > 0 [-]; 1 if absent. */
export interface SimilarityRatios {
  readonly speed?: Fraction;
  /** Of the rotor diameters of two geometrically similar fans; never of two different frames. */
  readonly diameter?: Fraction;
  readonly density?: Fraction;
}

/**
 * The same relative working point of a similar fan at another speed, diameter or density.
 *
 * Exact at equal Reynolds number; used without correction from 0.3 to 1.1 of the tested speed.
 *
 * @param point known working point
 * @param ratios wanted over known state [-]
 *
 * Source: fan laws, ASHRAE Handbook HVAC Systems and Equipment, chapter on fans (from memory).
 */
export function scaleBySimilarity(point: WorkingPoint, ratios: SimilarityRatios): WorkingPoint {
  const { speed = 1, diameter = 1, density = 1 } = ratios;
  return {
    flow: point.flow * speed * diameter ** 3,
    pressure: point.pressure * density * (speed * diameter) ** 2,
    power: point.power * density * speed ** 3 * diameter ** 5,
  };
}
