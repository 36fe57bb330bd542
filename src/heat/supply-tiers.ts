import type { Fraction } from '../quantities/dimensions.ts';

/** Efficiency at one load. */
export interface TierPoint {
  /** Output over rating [-]. */
  readonly load: Fraction;
  readonly efficiency: Fraction;
}

/** Loads the programme tests at [-]; the first for its best tier only. */
const LOADS = [0.1, 0.2, 0.5, 1] as const;

function points(percents: readonly number[]): readonly TierPoint[] {
  return percents.map((percent, index) => ({
    load: LOADS[index + LOADS.length - percents.length] as number,
    efficiency: percent / 100,
  }));
}

/**
 * Least efficiency of supplies by tier, at 10 (best tier only), 20, 50 and 100 % of their rating, by the mains they were
 * tested at. Published: table of the public programme for internal supplies; one of two copies prints 87 % for silver
 * at full load and 115 V, taken as a slip.
 */
export const supplyTiers = {
  '115 V': {
    base: points([80, 80, 80]),
    bronze: points([82, 85, 82]),
    silver: points([85, 88, 85]),
    gold: points([87, 90, 87]),
    platinum: points([90, 92, 89]),
    titanium: points([90, 92, 94, 90]),
  },
  '230 V': {
    base: points([82, 85, 82]),
    bronze: points([85, 88, 85]),
    silver: points([87, 90, 87]),
    gold: points([90, 92, 89]),
    platinum: points([92, 94, 90]),
    titanium: points([90, 94, 96, 94]),
  },
  '230 V redundant': {
    bronze: points([81, 85, 81]),
    silver: points([85, 89, 85]),
    gold: points([88, 92, 88]),
    platinum: points([90, 94, 91]),
    titanium: points([90, 94, 96, 91]),
  },
} as const satisfies Record<string, Record<string, readonly TierPoint[]>>;

/**
 * Efficiency of a tier at a load [-]: linear between the tested loads, held beyond them. Below the least tested load a
 * real supply is worse, and nothing is published.
 *
 * Source: linear interpolation, common practice.
 *
 * @param tier tested loads, rising
 * @param load output over rating [-], ≥ 0
 */
export function tierEfficiency(tier: readonly TierPoint[], load: Fraction): Fraction {
  const above = tier.findIndex((point) => point.load >= load);
  const upper = tier[above < 0 ? tier.length - 1 : above] as TierPoint;
  const lower = tier[above - 1];
  if (!lower) return upper.efficiency;
  const share = (load - lower.load) / (upper.load - lower.load);
  return lower.efficiency + share * (upper.efficiency - lower.efficiency);
}
