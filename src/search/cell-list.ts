import type { Build } from '../enclosure/enclosure.ts';

/**
 * Ranges of the chamber's pressure with a lower bound of the energy in each, in no order: low node, high node and
 * value in turn. Together they cover the grid.
 */
export type CellList = Float64Array;

/** Bound of a build between two nodes of the grid of pressures [-]. */
export type CellBound = (build: Build, low: number, high: number) => number;

/** When cells are good enough. */
export interface Until {
  /** Energy from which nobody asks any more [-]. */
  readonly enough: number;
  /** Width of the least cell that is split no further [nodes]. */
  readonly narrowest: number;
  /** Whether it is enough to know if any cell has a finite value. */
  readonly survive: boolean;
}

/** Numbers a cell takes. */
const WIDTH = 3;
/** How many cells of the grid are taken together at first. */
const FIRST_STRIDE = 32;

/**
 * Cells of which nothing is known.
 *
 * @param cells of the grid
 */
export function firstCells(cells: number): CellList {
  const list = new Float64Array((cells / FIRST_STRIDE) * WIDTH);
  for (let at = 0; at * FIRST_STRIDE < cells; at++) {
    list.set([at * FIRST_STRIDE, (at + 1) * FIRST_STRIDE, 0], at * WIDTH);
  }
  return list;
}

/** Position of the cell that promises least. */
function leastOf(values: readonly number[]): number {
  let best = 2;
  for (let at = 2; at < values.length; at += WIDTH) {
    if ((values[at] as number) < (values[best] as number)) best = at;
  }
  return best - 2;
}

/** Position of the narrowest cell with a finite value; of the first if there is none. */
function narrowestOf(values: readonly number[]): number {
  let best = 0;
  let width = Number.POSITIVE_INFINITY;
  for (let at = 0; at < values.length; at += WIDTH) {
    const own = (values[at + 1] as number) - (values[at] as number);
    if (own < width && (values[at + 2] as number) < Number.POSITIVE_INFINITY) {
      best = at;
      width = own;
    }
  }
  return best;
}

/**
 * Least value of all cells [-]: the bound they come to.
 *
 * @param cells any
 */
export function leastValue(cells: CellList): number {
  let least = Number.POSITIVE_INFINITY;
  for (let at = 2; at < cells.length; at += WIDTH) least = Math.min(least, cells[at] as number);
  return least;
}

/**
 * Makes the bound of a build tighter where it is least: what was found of a set that holds the build stands until the
 * cell is the most promising, then the build's own bound takes its place, then the cell is halved.
 *
 * @param bound of builds, by cell
 * @param build or set of builds
 * @param from cells of a set that holds it
 * @param until when to stop
 */
export function refineCells(bound: CellBound, build: Build, from: CellList, until: Until): CellList {
  const cells = [...from];
  const own = new Set<number>();
  for (;;) {
    const at = until.survive ? narrowestOf(cells) : leastOf(cells);
    const low = cells[at] as number;
    const high = cells[at + 1] as number;
    const value = cells[at + 2] as number;
    if (value >= until.enough) break;
    if (!own.has(at)) {
      cells[at + 2] = Math.max(value, bound(build, low, high));
      own.add(at);
      continue;
    }
    if (high - low <= until.narrowest) break;
    const middle = (low + high) / 2;
    cells[at + 1] = middle;
    own.delete(at);
    cells.push(middle, high, value);
  }
  return Float64Array.from(cells);
}
