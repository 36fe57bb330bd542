import type { Fraction, KilogramsPerCubicMetre, KilogramsPerSecond } from '../quantities/dimensions.ts';
import { fullRise, newEffort, type PlacedBank } from './bank-effort.ts';
import { lowerToDual, PRICES } from './duals/effort-dual.ts';
import { NO_FLOW, stepBelow, stepsFor } from './duals/flow-grid.ts';
import { effortOnGrid, type GridAir } from './duals/grid-effort.ts';
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

/**
 * Widths of the cells of flow, in steps of the grid, by how many options a group has more than [-], largest first: what
 * is lost on large groups only has them split sooner.
 */
const SPANS = [
  { above: 200, span: 12 },
  { above: 20, span: 3 },
  { above: 0, span: 1 },
] as const;
/** Step of the grid of densities [kg/m³]. */
const DENSITY_STEP = 0.01;

/** One cell of the grids of flow and density. */
interface Cell extends GridAir {
  /** Tells it from all others. */
  readonly key: number;
  readonly behind: boolean;
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

/** Rows of numbers that are kept: many share one piece of memory. */
const ROWS = 256;
function newRows(width: number): () => Float64Array {
  let piece = new Float64Array(0);
  return () => {
    if (piece.length < width) piece = new Float64Array(ROWS * width);
    const row = piece.subarray(0, width);
    piece = piece.subarray(width);
    return row;
  };
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
  const room = newEffort();
  const newRow = newRows(PRICES.length);
  const reaches: number[] = [];

  const cellOf = (code: number, { from, reach, density, behind }: SharedAsk): Cell => {
    const { length } = groupAt(tree, code).options;
    const width = SPANS.findIndex(({ above }) => length > above);
    const { span } = SPANS[width] as (typeof SPANS)[number];
    const low = stepBelow(from / density, span);
    const next = low === NO_FLOW ? 0 : low + span;
    const air = Math.ceil(density / DENSITY_STEP);
    const place = (low === NO_FLOW ? 0 : low + 1) * DENSITIES + air;
    return {
      key: ((place * REACHES + numbered(reaches, reach)) * SPANS.length + width) * 2 + (behind ? 1 : 0),
      low,
      top: next + stepsFor(reach),
      thin: (air - 1) * DENSITY_STEP,
      dense: air * DENSITY_STEP,
      behind,
    };
  };

  /** Lowers the best values to those of a bank; returns the greatest rise it can give. */
  const addBank = (bank: SharedBank, cell: Cell, best: Float64Array): number => {
    const derating = cell.behind ? bank.derating : 1;
    const full = fullRise(effortOnGrid(bank.placed, cell, room));
    lowerToDual(room, derating, best);
    return full > 0 ? derating * full : full;
  };

  const make = (code: number, cell: Cell): GroupDual => {
    const { parts, mayBeEmpty } = groupAt(tree, code);
    const values = newRow().fill(mayBeEmpty ? 0 : Number.POSITIVE_INFINITY);
    let most = mayBeEmpty ? 0 : Number.NEGATIVE_INFINITY;
    for (const part of parts) {
      const bank = banks[part];
      if (bank) most = Math.max(most, addBank(bank, cell, values));
      else if (part < 0) {
        const inner = inCell(part, cell);
        lower(values, inner.values);
        most = Math.max(most, inner.most);
      }
    }
    return { values, most };
  };

  const inCell = (code: number, cell: Cell): GroupDual => {
    const cells = known[-1 - code] as Map<number, GroupDual>;
    let found = cells.get(cell.key);
    if (!found) {
      found = make(code, cell);
      cells.set(cell.key, found);
    }
    return found;
  };

  return (code, ask) => inCell(code, cellOf(code, ask));
}
