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

/** Cells in the making: lists are refined by the hundred thousand, so they share one piece of memory. */
interface Bench {
  values: Float64Array;
  /** Whether the value of a cell is the build's own bound. */
  own: Uint8Array;
  /** Numbers in use. */
  length: number;
}

const bench: Bench = { values: new Float64Array(0), own: new Uint8Array(0), length: 0 };

function makeRoom(length: number): void {
  if (length <= bench.values.length) return;
  const { values, own } = bench;
  bench.values = new Float64Array(2 * length);
  bench.values.set(values);
  bench.own = new Uint8Array(2 * length);
  bench.own.set(own);
}

function putOn(from: CellList): void {
  makeRoom(from.length);
  bench.values.set(from);
  bench.own.fill(0, 0, from.length);
  bench.length = from.length;
}

/** Halves a cell: neither half has its own bound yet. */
function halve(at: number): void {
  makeRoom(bench.length + WIDTH);
  const { values, own, length } = bench;
  const high = values[at + 1] as number;
  const middle = ((values[at] as number) + high) / 2;
  values[at + 1] = middle;
  values[length] = middle;
  values[length + 1] = high;
  values[length + 2] = values[at + 2] as number;
  own[at] = 0;
  own[length] = 0;
  bench.length = length + WIDTH;
}

/** Position of the cell that promises least. */
function leastOf({ values, length }: Bench): number {
  let best = 2;
  for (let at = 2; at < length; at += WIDTH) {
    if ((values[at] as number) < (values[best] as number)) best = at;
  }
  return best - 2;
}

/** Position of the narrowest cell with a finite value; of the first if there is none. */
function narrowestOf({ values, length }: Bench): number {
  let best = 0;
  let width = Number.POSITIVE_INFINITY;
  for (let at = 0; at < length; at += WIDTH) {
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
  putOn(from);
  for (;;) {
    const at = until.survive ? narrowestOf(bench) : leastOf(bench);
    const { values, own } = bench;
    const low = values[at] as number;
    const high = values[at + 1] as number;
    const value = values[at + 2] as number;
    if (value >= until.enough) break;
    if (own[at] === 0) {
      values[at + 2] = Math.max(value, bound(build, low, high));
      own[at] = 1;
    } else if (high - low <= until.narrowest) break;
    else halve(at);
  }
  return bench.values.slice(0, bench.length);
}
