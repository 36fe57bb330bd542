import type { Fraction, Pascals } from '../quantities/dimensions.ts';
import { dualOf, effortOf, leastEnergyFor, type PlacedBank, PRICES } from './bank-effort.ts';
import type { LegDemand } from './demand.ts';

/** A stretch of flows above the least one, as factors of it. */
interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Where more flow always takes more noise, the least flow is all there is to look at. */
const LEAST_ONLY: readonly Stretch[] = [{ from: 1, to: 1 }];
/**
 * Otherwise the need is looked at stretch by stretch, with the pressure of the lower and the working point of the
 * upper end, because more flow can make a heavily loaded fan quieter.
 */
const STRETCHES: readonly Stretch[] = [
  { from: 1, to: 1.04 },
  { from: 1.04, to: 1.25 },
  { from: 1.25, to: 1.8 },
  { from: 1.8, to: Number.POSITIVE_INFINITY },
];
/**
 * Relative growth of the needed rise with the flow from which more flow always takes more noise: a fan's level
 * grows with 55 lg of its speed, which the steepest part of the working-point and stall terms (60 dB per unit of
 * flow share) cannot make up for.
 */
const SAFE_GROWTH = 1.25;
const GROWTH_STEP = 1e-3;

/** What a leg's banks are asked for on each stretch of flow. */
export interface Needs {
  readonly stretches: readonly Stretch[];
  /** Rise at the lower end of each stretch [Pa]. */
  readonly rises: Float64Array;
}

/** Upper end of a stretch [kg/s]; the last has none, even where no flow is asked for. */
function topOf(demand: LegDemand, to: number): number {
  return to === Number.POSITIVE_INFINITY ? to : demand.flow * to;
}

/** A bank in its place of a leg. */
export interface LegBank {
  readonly placed: PlacedBank;
  /** Its position in the leg. */
  readonly stage: number;
  /** Factor on its positive pressure rise if another bank runs before it [-]. */
  readonly derating: Fraction;
}

/** Lower bounds of one bank's part in meeting a demand; worked out when first asked for. */
export interface BankDuals {
  /** One dual per stretch of flow. */
  readonly stretches: readonly Float64Array[];
  /** Greatest rise it can give on each stretch [Pa]. */
  readonly most: Float64Array;
}

/** The duals of a bank against a demand of its leg. */
export function dualsOf(bank: LegBank, derating: Fraction, demand: LegDemand, needs: Needs): BankDuals {
  const most = new Float64Array(needs.stretches.length);
  const density = demand.densities[bank.stage] as number;
  const stretches = needs.stretches.map(({ from, to }, index) => {
    const effort = effortOf(bank.placed, demand.flow * from, topOf(demand, to), density);
    const out = new Float64Array(PRICES.length);
    dualOf(effort, derating, out);
    const full = effort.rises[effort.rises.length - 1] as number;
    most[index] = full > 0 ? derating * full : full;
    return out;
  });
  return { stretches, most };
}

/**
 * What the banks of a leg are asked for.
 *
 * @param demand least flow and losses of the leg
 * @param against pressure to push against beside the losses [Pa]
 */
export function needsOf(demand: LegDemand, against: Pascals): Needs {
  const rise = demand.lossAt(demand.flow) + against;
  const more = demand.lossAt(demand.flow * (1 + GROWTH_STEP)) + against;
  const safe = rise > 0 && (more - rise) / (GROWTH_STEP * rise) >= SAFE_GROWTH;
  const stretches = safe ? LEAST_ONLY : STRETCHES;
  return {
    stretches,
    rises: Float64Array.from(stretches, ({ from }) => demand.lossAt(demand.flow * from) + against),
  };
}

/** Least energy of one bank alone that meets a demand [-]. */
export function aloneCost(bank: LegBank, demand: LegDemand, needs: Needs): number {
  const density = demand.densities[bank.stage] as number;
  let least = Number.POSITIVE_INFINITY;
  needs.stretches.forEach(({ from, to }, index) => {
    const needed = needs.rises[index] as number;
    const value = leastEnergyFor(bank.placed, needed, demand.flow * from, topOf(demand, to), density);
    if (value < least) least = value;
  });
  return least;
}

/** Greatest over the prices of: duals of the banks plus price times need; a lower bound of their energy [-]. */
export function togetherCost(duals: readonly BankDuals[], needs: Needs): number {
  let least = Number.POSITIVE_INFINITY;
  for (let stretch = 0; stretch < needs.rises.length; stretch++) {
    const needed = needs.rises[stretch] as number;
    let given = 0;
    for (const dual of duals) given += dual.most[stretch] as number;
    if (given < needed) continue;
    const value = dualValue(duals, stretch, needed);
    if (value < least) least = value;
  }
  return least;
}

function dualValue(duals: readonly BankDuals[], stretch: number, needed: number): number {
  let best = Number.NEGATIVE_INFINITY;
  for (let price = 0; price < PRICES.length; price++) {
    let sum = (PRICES[price] as number) * needed;
    for (const dual of duals) sum += (dual.stretches[stretch] as Float64Array)[price] as number;
    if (sum > best) best = sum;
  }
  return best;
}
