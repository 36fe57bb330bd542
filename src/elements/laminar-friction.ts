import type { Fraction } from '../quantities/dimensions.ts';

/**
 * Growth of the friction while a velocity profile develops: Fanning 3.44, here times 4 for Darcy.
 *
 * Source: Shah & London, Laminar Flow Forced Convection in Ducts (1978); composite form of Muzychka &
 * Yovanovich (from memory).
 */
const ENTRANCE_FACTOR = 4 * 3.44;

/**
 * Product of Darcy friction factor and Reynolds number of developed laminar flow in a rectangular duct [-].
 *
 * 96·(1 - 1.3553α + 1.9467α² - 1.7012α³ + 0.9564α⁴ - 0.2537α⁵), within 0.06 % of the exact series. The
 * Reynolds number is on the hydraulic diameter 4·area/perimeter.
 *
 * Source: Shah & London, Laminar Flow Forced Convection in Ducts (1978), from memory.
 *
 * @param aspect short side over long side [-], 0 to 1
 */
export function rectangularFriction(aspect: Fraction): number {
  const polynomial =
    1 + aspect * (-1.3553 + aspect * (1.9467 + aspect * (-1.7012 + aspect * (0.9564 - 0.2537 * aspect))));
  return 96 * polynomial;
}

/**
 * Coefficient c in f·Re = √(c·Re + (f·Re)²_developed) of a duct with a developing laminar profile [-].
 *
 * The composite gives the developed value in a long duct and the entrance value 13.76/√L⁺ in a short one,
 * L⁺ = L/(Dh·Re). All friction factors are Darcy's.
 *
 * Source: Muzychka & Yovanovich composite of Shah & London's limits (from memory).
 *
 * @param relativeLength length over hydraulic diameter [-], > 0
 */
export function entranceGrowth(relativeLength: number): number {
  return ENTRANCE_FACTOR ** 2 / relativeLength;
}
