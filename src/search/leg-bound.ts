import { isAsked } from '../enclosure/asked-limits.ts';
import type { Build, Duty, Enclosure, Leg } from '../enclosure/enclosure.ts';
import type { Plant } from '../enclosure/machine.ts';
import { energy } from '../sound/levels.ts';
import { type CellBound, type CellList, firstCells, refineCells, type Until } from './cell-list.ts';
import { coolPlantOf } from './cooling-bound.ts';
import { createDemand, withoutFans } from './demand.ts';
import { CELLS, demandTable } from './demand-table.ts';
import { type LegCost, type LegLibrary, type LegTask, legCostTable } from './leg-cost-table.ts';
import { type OneChamberPlan, oneChamberPlan } from './one-chamber-plan.ts';
import type { OptionForest } from './option-tree.ts';
import { elementKey } from './space.ts';

/** Allowance for the discrete tables of speed and the second-order effect of temperature on density [dB]. */
const ALLOWANCE = energy(-0.04);

/** Lower bounds of the sound energy at 1 m that builds need in each duty. */
export interface LegBound {
  /** Cells of a set of builds of which nothing is known yet. */
  readonly unknown: CellList;
  /**
   * Cells of a build, or a set of builds, in one duty, as tight as wanted or until they exceed `enough`; they start
   * from what was found of a set that holds it.
   */
  readonly refine: (build: Build, duty: number, from: CellList, until: Until) => CellList;
}

/** What sets of elements have in common. */
interface Shared {
  readonly costs: Map<string, LegCost>;
  readonly library: LegLibrary;
}

/**
 * Costs of the inward leg. They do not depend on the elements of the outward leg unless a limit does, so sets
 * that differ only there share them.
 */
function inwardCost(
  enclosure: Enclosure,
  plan: OneChamberPlan,
  elements: Build,
  duty: Duty,
  shared: Shared,
  task: LegTask,
): LegCost {
  const outward = plan.outward === null ? [] : (enclosure.legs[plan.outward] as Leg).through;
  const limited = enclosure.parts.some(
    (part) => isAsked(part) && part.seat.kind === 'fins' && outward.includes(part.seat.place),
  );
  const relevant = elements.filter((_, place) => limited || !outward.includes(place));
  const key = `${duty.id}: ${relevant.join(' ')}`;
  const found =
    shared.costs.get(key) ?? legCostTable(enclosure, elements, plan.inward as number, task, shared.library);
  shared.costs.set(key, found);
  return found;
}

function cellBound(
  enclosure: Enclosure,
  barePlant: Plant,
  plan: OneChamberPlan,
  elements: Build,
  duty: Duty,
  shared: Shared,
): CellBound {
  const table = demandTable(enclosure, plan, createDemand(barePlant, plan, elements, duty));
  const inward = (node: number) => ({ demand: table.at(node).inward, against: table.at(node).pressure });
  const outward = (node: number) => ({ demand: table.at(node).outward, against: -table.at(node).pressure });
  const into = plan.inward === null ? null : inwardCost(enclosure, plan, elements, duty, shared, inward);
  const out =
    plan.outward === null ? null : legCostTable(enclosure, elements, plan.outward, outward, shared.library);
  return (build, low, high) => {
    // Pushing in is least work at the low end of a cell, drawing out at its high end.
    const { required } = table.at(low);
    if (!Number.isFinite(required)) return Number.POSITIVE_INFINITY;
    if (plan.outward === null && required > table.at(high).released) return Number.POSITIVE_INFINITY;
    return ALLOWANCE * ((into ? into(build, low) : 0) + (out ? out(build, high) : 0));
  };
}

/** Whether a bank lets air pass beside its turning fans: the bound knows only the law of those. */
function hasLostFans({ places }: Enclosure): boolean {
  return places.some((place) => place.kind === 'bank' && place.options.some((bank) => bank?.lost));
}

/**
 * Prepares a bound that takes an airway apart at its one chamber; null where the airway is not so simple.
 *
 * For each pressure of the chamber the flows that keep the limits are known without knowing the fans, and so are
 * the rises asked of each leg. The legs then no longer depend on each other: a build can be no quieter than the
 * sum of what its legs need, at the chamber pressure that suits them best. Between grid pressures each leg is
 * given the end of the cell that asks less of it. Banks in series share a rise by Lagrangian duality.
 *
 * @param enclosure the scenario
 * @param plant its plan
 * @param forest groups of the options of its places
 */
export function createLegBound(enclosure: Enclosure, plant: Plant, forest: OptionForest): LegBound | null {
  const plan = oneChamberPlan(plant);
  if (!plan || hasLostFans(enclosure)) return null;
  const barePlant = coolPlantOf(withoutFans(enclosure));
  const bounds = new Map<number, readonly CellBound[]>();
  const shared: Shared = {
    costs: new Map(),
    library: {
      book: { placed: new Map(), grids: new Map(), legs: new Map() },
      tables: { trees: forest, kept: [] },
    },
  };
  const boundFor = (build: Build, duty: number): CellBound => {
    const key = elementKey(enclosure, build);
    let found = bounds.get(key);
    if (!found) {
      found = enclosure.duties.map((each) => cellBound(enclosure, barePlant, plan, build, each, shared));
      bounds.set(key, found);
    }
    return found[duty] as CellBound;
  };
  return {
    unknown: firstCells(CELLS),
    refine: (build, duty, from, until) => refineCells(boundFor(build, duty), build, from, until),
  };
}
