import { bracketedRoot } from '../numerics/roots.ts';
import type { Fraction, Watts } from '../quantities/dimensions.ts';
import { type TierPoint, tierEfficiency } from './supply-tiers.ts';

/** How well a supply turns mains into direct current: by number, or by its tier and rating. */
export type SupplyEfficiency =
  | { readonly kind: 'number'; readonly efficiency: Fraction }
  | { readonly kind: 'tier'; readonly tier: readonly TierPoint[]; readonly rating: Watts };

/** A supply at a reading of the wall meter. */
export interface SupplyState {
  readonly efficiency: Fraction;
  /** Direct current [W]. */
  readonly output: Watts;
  /** What the supply itself makes of heat [W]. */
  readonly loss: Watts;
}

/** Share of its rating that a supply may give for long [-]. Common practice, no source. */
export const SUSTAINED_SHARE: Fraction = 0.8;

/** What readings of a wall meter and powers of parts may differ by [-]. Model assumption, no source. */
export const WALL_AGREEMENT: Fraction = 0.1;

/**
 * What a supply gives and loses [W] at a wall reading. With a tier the efficiency follows the load it leads to:
 * output = η(output/rating)·wall.
 *
 * Source: definition of the efficiency.
 *
 * @param wall reading of the wall meter, a mean over some ten minutes [W], > 0
 * @param how its efficiency is known
 */
export function supplyAt(wall: Watts, how: SupplyEfficiency): SupplyState {
  const efficiency = how.kind === 'number' ? how.efficiency : efficiencyAtWall(wall, how.tier, how.rating);
  const output = efficiency * wall;
  return { efficiency, output, loss: wall - output };
}

function efficiencyAtWall(wall: Watts, tier: readonly TierPoint[], rating: Watts): Fraction {
  const excess = (output: Watts) => output - tierEfficiency(tier, output / rating) * wall;
  const found = bracketedRoot(excess, 0, wall, { tolerance: 1e-9 * wall });
  return (found.ok ? found.root : found.best) / wall;
}

/**
 * Heat [W] that what a supply feeds gives off: its output less what leaves as electricity, sound or light. With the
 * supply inside its loss comes on top.
 *
 * Source: energy balance.
 *
 * @param state of the supply
 * @param useful what leaves the box in another form than heat [W], ≥ 0
 */
export function heatOfLoads({ output }: SupplyState, useful: Watts): Watts {
  return output - useful;
}

/**
 * Least rating [W] of a supply that gives an output for long.
 *
 * Source: 80 % rule, common practice.
 *
 * @param output direct current [W]
 */
export function ratingNeeded(output: Watts): Watts {
  return output / SUSTAINED_SHARE;
}
