import type { Fraction, KilogramsPerCubicMetre, KilogramsPerSecond } from '../quantities/dimensions.ts';
import { dualOf, effortOf, newEffort, type PlacedBank, PRICES } from './bank-effort.ts';
import { groupAt, type OptionTree } from './option-tree.ts';

/** A bank as far as a shared table knows it. */
export interface SharedBank {
  readonly placed: PlacedBank;
  /** Factor on its positive pressure rise if another bank runs before it [-]. */
  readonly derating: Fraction;
}

/** Best duals of a group of banks on one stretch of flow. */
export interface GroupDual {
  /** One value per price [-]. */
  readonly values: Float64Array;
  /** Greatest rise any of them can give [Pa]. */
  readonly most: number;
}

/** The air a group is asked to move. */
export interface SharedAsk {
  /** Mass flow that gives the pressure [kg/s]. */
  readonly from: KilogramsPerSecond;
  /** Greatest mass flow meant, as a factor of it [-]; infinite if there is none. */
  readonly reach: number;
  readonly density: KilogramsPerCubicMetre;
  /** Whether another bank is sure to run before it. */
  readonly behind: boolean;
}

/** Duals of groups of banks, whatever the elements around: worked out once for many sets of elements. */
export type SharedDuals = (code: number, ask: SharedAsk) => GroupDual;

/** Groups with more members take the coarser grid of flows [-]. */
const MANY = 20;
/** Steps of the grid of flows [natural logarithm]: a step is worth about 22 dB times itself. */
const FINE_STEP = 0.01;
const COARSE_STEP = 0.03;
/** Step of the grid of densities [kg/m³]. */
const DENSITY_STEP = 0.01;
/** Least flow of the grids [kg/s]; below it no flow is taken. */
const LEAST_FLOW = 1e-7;
/** One cell of the grids of flow and density. */
interface Cell {
  readonly step: number;
  readonly flow: number;
  readonly density: number;
  readonly reach: number;
  readonly behind: boolean;
}

function floorCell(flow: number, step: number): number {
  return flow > LEAST_FLOW ? 1 + Math.floor(Math.log(flow / LEAST_FLOW) / step) : 0;
}

function flowOf(cell: number, step: number): number {
  return cell > 0 ? LEAST_FLOW * Math.exp((cell - 1) * step) : 0;
}

/** Most densities and reaches of the grids, to number their cells. */
const DENSITIES = 512;
const REACHES = 8;
/** Reaches met so far: there are as many as stretches of flow. */
function numbered(reaches: number[], reach: number): number {
  const found = reaches.indexOf(reach);
  if (found >= 0) return found;
  if (reaches.length >= REACHES) throw new RangeError(`more than ${REACHES} stretches of flow`);
  return reaches.push(reach) - 1;
}

function lower(best: Float64Array, values: Float64Array): void {
  for (let price = 0; price < best.length; price++) {
    if ((values[price] as number) < (best[price] as number)) best[price] = values[price] as number;
  }
}

/**
 * Prepares duals of the groups of a place. Flows are rounded down and densities up for the pressure, flows up for the
 * working point, so that a value serves a whole cell of flows and is never too high for any of them. What walls and
 * elements close by cost is left out.
 *
 * @param tree groups of the place
 * @param banks its options; null for an empty place
 */
export function createSharedDuals(tree: OptionTree, banks: readonly (SharedBank | null)[]): SharedDuals {
  const known = tree.map(() => new Map<number, GroupDual>());
  const out = new Float64Array(PRICES.length);
  const room = newEffort();

  const reaches: number[] = [];
  const keyOf = ({ step, flow, density, reach, behind }: Cell): number => {
    const air = flow * DENSITIES + density;
    return (air * REACHES + numbered(reaches, reach)) * 4 + (step === FINE_STEP ? 2 : 0) + (behind ? 1 : 0);
  };

  /** Lowers the best values to those of a bank; returns the greatest rise it can give. */
  const addBank = (bank: SharedBank, cell: Cell, best: Float64Array): number => {
    const flow = flowOf(cell.flow, cell.step);
    const density = cell.density * DENSITY_STEP;
    // The true flow may be a step greater, and the true density a step lower: the working point is taken there.
    const top =
      (flowOf(cell.flow + 1, cell.step) * cell.reach * cell.density) / Math.max(1, cell.density - 1);
    const effort = effortOf(bank.placed, flow, top, density, room);
    const derating = cell.behind ? bank.derating : 1;
    dualOf(effort, derating, 0, out);
    lower(best, out);
    const full = effort.rises[effort.rises.length - 1] as number;
    return full > 0 ? derating * full : full;
  };

  const make = (code: number, cell: Cell): GroupDual => {
    const { parts, mayBeEmpty } = groupAt(tree, code);
    const values = new Float64Array(PRICES.length).fill(mayBeEmpty ? 0 : Number.POSITIVE_INFINITY);
    let most = mayBeEmpty ? 0 : Number.NEGATIVE_INFINITY;
    for (const part of parts) {
      if (part < 0) {
        const inner = inCell(part, cell);
        lower(values, inner.values);
        most = Math.max(most, inner.most);
      } else {
        const bank = banks[part];
        if (bank) most = Math.max(most, addBank(bank, cell, values));
      }
    }
    return { values, most };
  };

  const inCell = (code: number, cell: Cell): GroupDual => {
    const cells = known[-1 - code] as Map<number, GroupDual>;
    const key = keyOf(cell);
    let found = cells.get(key);
    if (!found) {
      found = make(code, cell);
      cells.set(key, found);
    }
    return found;
  };

  return (code, { from, reach, density, behind }) => {
    const step = groupAt(tree, code).options.length > MANY ? COARSE_STEP : FINE_STEP;
    const cell = {
      step,
      flow: floorCell(from, step),
      density: Math.ceil(density / DENSITY_STEP),
      reach,
      behind,
    };
    return inCell(code, cell);
  };
}
