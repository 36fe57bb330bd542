import { elementLoss } from '../airway/series.ts';
import { type CloseElement, closeElements, wallsOf } from '../enclosure/closeness.ts';
import type { Bank, BankPlace, Build, Enclosure, Leg } from '../enclosure/enclosure.ts';
import type { Fraction, KilogramsPerSecond, Pascals } from '../quantities/dimensions.ts';
import type { LegDemand } from './demand.ts';

/** What a bank costs beside the leg's own losses because walls and elements stand close to it. */
export interface BankCloseness {
  /** Position of the bank in its leg. */
  readonly stage: number;
  /** Inertial coefficient of the walls [1/m⁴]. */
  readonly walls: number;
  /** Elements between it and the place for fans before it, and behind it. */
  readonly before: readonly CloseElement[];
  readonly behind: readonly CloseElement[];
}

/** Shares of the extra losses on each side that are counted to a bank [-]. */
export interface CountedSides {
  readonly before: Fraction;
  readonly behind: Fraction;
}

/** All of them: nothing else is near. */
export const BOTH_SIDES: CountedSides = { before: 1, behind: 1 };

/** What is known of a place for fans next to another. */
export type NextPlace = 'none' | 'taken' | 'open';

/**
 * Share of what lies between two places for fans that is counted to one of them [-]. Both together never count more
 * than the greater of the two extra losses, which is the true one.
 */
export function countedShare(own: NextPlace, next: NextPlace): Fraction {
  if (next === 'none') return 1;
  if (own === next) return 0.5;
  return own === 'taken' ? 1 : 0;
}

/**
 * Walls and elements close to a bank, as far as they do not depend on what stands in other places for fans.
 *
 * @param enclosure the scenario
 * @param elements build of which only the elements matter
 * @param leg of the bank
 * @param stage its position in the leg
 * @param bank the fans
 */
export function bankCloseness(
  enclosure: Enclosure,
  elements: Build,
  leg: Leg,
  stage: number,
  bank: Bank,
): BankCloseness {
  const place = enclosure.places[leg.through[stage] as number] as BankPlace;
  const look = { leg, position: stage, past: false };
  return {
    stage,
    walls: wallsOf(enclosure, place, bank) ?? 0,
    before: closeElements(enclosure, elements, bank, { ...look, step: -1, gap: place.inletGap }),
    behind: closeElements(enclosure, elements, bank, { ...look, step: 1, gap: place.outletGap }),
  };
}

/** Extra losses of the elements on one side at a mass flow [Pa]. */
function sideLoss(elements: readonly CloseElement[], demand: LegDemand, flow: KilogramsPerSecond): Pascals {
  let sum = 0;
  for (const { position, element, used } of elements) {
    const density = demand.densities[position] as number;
    const viscosity = demand.viscosities[position] as number;
    const whole = elementLoss(element, flow / density, density, viscosity);
    sum += elementLoss(element, flow / (density * used), density, viscosity) - whole;
  }
  return sum;
}

/**
 * What closeness costs a bank at a mass flow, at least [Pa].
 *
 * @param closeness of the bank
 * @param sides shares counted to it
 * @param demand of its leg, for the air
 * @param flow mass flow [kg/s], ≥ 0
 */
export function closenessCost(
  closeness: BankCloseness,
  sides: CountedSides,
  demand: LegDemand,
  flow: KilogramsPerSecond,
): Pascals {
  const walls = (closeness.walls / (demand.densities[closeness.stage] as number)) * flow * flow;
  const before = sides.before > 0 ? sides.before * sideLoss(closeness.before, demand, flow) : 0;
  const behind = sides.behind > 0 ? sides.behind * sideLoss(closeness.behind, demand, flow) : 0;
  return walls + before + behind;
}

/** Growth of an element's loss with the flow, d ln Δp / d ln Q [-]. */
function growthOf({ position, element }: CloseElement, demand: LegDemand): number {
  const density = demand.densities[position] as number;
  const viscosity = demand.viscosities[position] as number;
  const step = 1e-3;
  const flow = demand.flow / density;
  const loss = elementLoss(element, flow, density, viscosity);
  return (elementLoss(element, flow * (1 + step), density, viscosity) / loss - 1) / step;
}

/** Every element that some bank of several stands close to, once. */
export function closeToAny(banks: readonly BankCloseness[]): readonly CloseElement[] {
  const found = new Map<number, CloseElement>();
  for (const { before, behind } of new Set(banks)) {
    for (const close of [...before, ...behind]) found.set(close.position, close);
  }
  return [...found.values()];
}

/**
 * Least growth with the flow of all extra losses [-], two if there are none: an element's loss grows no less the more
 * it is concentrated.
 *
 * @param close elements that banks of the leg may stand close to
 * @param demand of the leg
 */
export function leastGrowth(close: readonly CloseElement[], demand: LegDemand): number {
  return close.reduce((least, one) => Math.min(least, growthOf(one, demand)), 2);
}
