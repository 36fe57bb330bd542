import type { CloseElement } from '../enclosure/closeness.ts';
import type { Fraction, Pascals } from '../quantities/dimensions.ts';
import {
  type BankCloseness,
  BOTH_SIDES,
  type CountedSides,
  closenessCost,
  leastGrowth,
} from './bank-closeness.ts';
import { effortOf, fullRise, leastEnergyFor, newEffort, type PlacedBank } from './bank-effort.ts';
import type { LegDemand } from './demand.ts';
import { lowerToDual, PRICES } from './duals/effort-dual.ts';
import { FLOW_STEP } from './duals/flow-grid.ts';

/** A stretch of flows above the least one, as factors of it. */
interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Where more flow always takes more noise, the least flow is all there is to look at. */
const LEAST_ONLY: readonly Stretch[] = [{ from: 1, to: 1 }];
/**
 * Otherwise the need is looked at stretch by stretch, with the pressure of the lower and the working point of the
 * upper end, because more flow can make a heavily loaded fan quieter. They begin at steps of the grid of flows. The
 * first is narrow, as mostly it decides; more of them make no bound much tighter.
 */
const STRETCHES: readonly Stretch[] = [0, 3].map((steps, index, all) => ({
  from: Math.exp(steps * FLOW_STEP),
  to: Math.exp((all[index + 1] ?? Number.POSITIVE_INFINITY) * FLOW_STEP),
}));
/**
 * Relative growth of the needed rise with the flow from which more flow always takes more noise: a fan's level
 * grows with 55 lg of its speed, which the steepest part of the working-point and stall terms (60 dB per unit of
 * flow share) cannot make up for.
 */
const SAFE_GROWTH = 1.25;
/** The same for what closeness costs beside: with 1.12 the terms above still cannot make up for it. */
const SAFE_EXTRA_GROWTH = 1.12;
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
  /** Its position in the leg, and what stands close to it there. */
  readonly closeness: BankCloseness;
  /** Factor on its positive pressure rise if another bank runs before it [-]. */
  readonly derating: Fraction;
}

/** Lower bounds of one bank's part in meeting a demand; worked out when first asked for. */
export interface BankDuals {
  /** One dual per stretch of flow. */
  readonly stretches: readonly Float64Array[];
  /** Greatest rise it can give on each stretch, before the losses [Pa]. */
  readonly most: readonly number[];
  /** What stands close takes off its rise on each stretch [Pa]; the duals are without it. */
  readonly lost: readonly number[];
}

/** How a bank counts in its leg: what other banks take from it, and how much of the elements between is its own. */
export interface Counting {
  /** Factor on its positive rise [-]. */
  readonly derating: Fraction;
  readonly sides: CountedSides;
}

const room = newEffort();

/** The duals of a bank against a demand of its leg. */
export function dualsOf(bank: LegBank, counting: Counting, demand: LegDemand, needs: Needs): BankDuals {
  const { closeness, placed } = bank;
  const { derating, sides } = counting;
  const most: number[] = [];
  const lost: number[] = [];
  const density = demand.densities[closeness.stage] as number;
  const stretches = needs.stretches.map(({ from, to }) => {
    const flow = demand.flow * from;
    const effort = effortOf(placed, flow, topOf(demand, to), density, room);
    const out = new Float64Array(PRICES.length).fill(Number.POSITIVE_INFINITY);
    lowerToDual(effort, derating, out);
    const full = fullRise(effort);
    most.push(full > 0 ? derating * full : full);
    lost.push(closenessCost(closeness, sides, demand, flow));
    return out;
  });
  return { stretches, most, lost };
}

/**
 * What the banks of a leg are asked for.
 *
 * @param demand least flow and losses of the leg
 * @param against pressure to push against beside the losses [Pa]
 * @param close elements that banks of the leg may stand close to
 */
export function needsOf(demand: LegDemand, against: Pascals, close: readonly CloseElement[]): Needs {
  const rise = demand.lossAt(demand.flow) + against;
  const more = demand.lossAt(demand.flow * (1 + GROWTH_STEP)) + against;
  const grows = rise > 0 && (more - rise) / (GROWTH_STEP * rise) >= SAFE_GROWTH;
  const safe = grows && leastGrowth(close, demand) >= SAFE_EXTRA_GROWTH;
  const stretches = safe ? LEAST_ONLY : STRETCHES;
  return {
    stretches,
    rises: Float64Array.from(stretches, ({ from }) => demand.lossAt(demand.flow * from) + against),
  };
}

/** Least energy of one bank alone that meets a demand [-]. */
export function aloneCost(bank: LegBank, demand: LegDemand, needs: Needs): number {
  const { closeness, placed } = bank;
  const density = demand.densities[closeness.stage] as number;
  let least = Number.POSITIVE_INFINITY;
  needs.stretches.forEach(({ from, to }, index) => {
    const flow = demand.flow * from;
    const needed = (needs.rises[index] as number) + closenessCost(closeness, BOTH_SIDES, demand, flow);
    const value = leastEnergyFor(placed, needed, flow, topOf(demand, to), density);
    if (value < least) least = value;
  });
  return least;
}

/** Greatest over the prices of: duals of the banks plus price times need; a lower bound of their energy [-]. */
export function togetherCost(duals: readonly BankDuals[], needs: Needs): number {
  let least = Number.POSITIVE_INFINITY;
  for (let stretch = 0; stretch < needs.rises.length; stretch++) {
    let needed = needs.rises[stretch] as number;
    let given = 0;
    for (const dual of duals) {
      needed += dual.lost[stretch] as number;
      given += dual.most[stretch] as number;
    }
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
