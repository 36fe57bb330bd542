import type { SpeedLattice } from './speed-lattice.ts';
import type { SpeedNode } from './speed-node.ts';
import { turnsBetween } from './turning-legs.ts';

/**
 * Share of all that a logarithm of the energy changes by across a cell, by which it may be lower than it looks [-]: what a
 * kink may do, what a bend adds for each unit of log speed, and the most.
 */
const ENERGY_DOUBT = { kink: 0.04, bend: 0.6, most: 0.35 } as const;
/** The same of an excess temperature [-]. */
const EXCESS_DOUBT = { kink: 0.08, bend: 0.8, most: 0.5 } as const;
/** What an excess may be lower by besides, where the air of a leg with heat turns round [K]. */
const TURNING_DOUBT = 1;
/** Cells along each axis at which one without a solution at any corner is given up. */
const MUTE_SIDES = 8;

/** A box of speeds between nodes of a lattice. */
export interface SpeedCell {
  /** The node at its slowest corner. */
  readonly low: readonly number[];
  /** Nodes to its other side along each axis. */
  readonly sizes: readonly number[];
}

/** What the corners of a cell let one expect inside. */
export interface Prospect {
  /** Logarithm of the least energy to expect where all limits hold; infinite where they hold nowhere. */
  readonly least: number;
  /** Where in the cell that is, as shares of its sides from the slowest corner. */
  readonly place: readonly number[];
}

const NONE: Prospect = { least: Number.POSITIVE_INFINITY, place: [] };

/** A quantity over a cell as a plane through its corners as nearly as may be, and how far off that may be. */
interface Plane {
  /** At the slowest corner. */
  readonly base: number;
  /** Change along each side. */
  readonly slopes: readonly number[];
  /** All that the plane changes by, and the farthest a corner lies from it. */
  readonly range: number;
  readonly misfit: number;
}

/** Least squares over the corners of a box: slopes are means of the differences along each side. */
function planeThrough(values: readonly number[], banks: number): Plane {
  const half = values.length / 2;
  const slopes = new Array<number>(banks).fill(0);
  let base = 0;
  for (let corner = 0; corner < values.length; corner++) {
    const value = values[corner] as number;
    base += value / values.length;
    for (let bank = 0; bank < banks; bank++) {
      slopes[bank] = (slopes[bank] as number) + (corner & (1 << bank) ? value : -value) / half;
    }
  }
  let range = 0;
  for (const slope of slopes) {
    base -= 0.5 * slope;
    range += Math.abs(slope);
  }
  let misfit = 0;
  for (let corner = 0; corner < values.length; corner++) {
    let there = base;
    for (let bank = 0; bank < banks; bank++) if (corner & (1 << bank)) there += slopes[bank] as number;
    misfit = Math.max(misfit, Math.abs((values[corner] as number) - there));
  }
  return { base, slopes, range, misfit };
}

/**
 * Least of one plane where another is not above zero, over the unit box: banks are moved in the order of what cooling
 * costs.
 */
function leastUnder(energy: Plane, excess: Plane): Prospect {
  const place: number[] = energy.slopes.map((slope) => (slope < 0 ? 1 : 0));
  const at = (plane: Plane): number =>
    plane.slopes.reduce((sum, slope, bank) => sum + slope * (place[bank] as number), plane.base);
  let over = at(excess);
  const moves = energy.slopes
    .map((cost, bank) => {
      const gain = (excess.slopes[bank] as number) * (place[bank] === 0 ? -1 : 1);
      return { bank, gain, price: Math.abs(cost) / gain };
    })
    .filter(({ gain }) => gain > 0)
    .sort((one, other) => one.price - other.price || one.bank - other.bank);
  for (const { bank, gain } of moves) {
    if (over <= 0) break;
    const share = Math.min(1, over / gain);
    place[bank] = place[bank] === 0 ? share : 1 - share;
    over -= share * gain;
  }
  return over > 1e-9 ? NONE : { least: at(energy), place };
}

/**
 * Nodes at the corners of a cell; a bit of the index tells which end of a side.
 *
 * @param cell between nodes of the lattice
 * @param lattice of speeds
 */
export function cornersOf({ low, sizes }: SpeedCell, lattice: SpeedLattice): readonly SpeedNode[] {
  return Array.from({ length: 2 ** low.length }, (_, corner) =>
    lattice.at(low.map((step, bank) => (corner & (1 << bank) ? step + (sizes[bank] as number) : step))),
  );
}

function doubtOf({ kink, bend, most }: typeof ENERGY_DOUBT | typeof EXCESS_DOUBT, width: number): number {
  return Math.min(most, kink + bend * width);
}

/** Whether there may be solutions in a cell though there is none at any of its corners. */
function isLarge({ sizes }: SpeedCell, { side }: SpeedLattice): boolean {
  return Math.max(...sizes) > side / MUTE_SIDES;
}

/** Puts the mean of those that are known in the place of those that are not; null if none is. */
function filled(values: readonly (number | undefined)[]): readonly number[] | null {
  const known = values.filter((value) => value !== undefined);
  const mean = known.reduce((sum, value) => sum + value, 0) / known.length;
  return known.length > 0 ? values.map((value) => value ?? mean) : null;
}

/** The least energy on the feasible side of the worst limit, by planes. */
function leastOn(
  corners: readonly SpeedNode[],
  energy: Plane,
  width: number,
  heated: readonly number[],
): Prospect {
  const share = doubtOf(EXCESS_DOUBT, width);
  const turning = turnsBetween(corners, heated) ? TURNING_DOUBT : 0;
  let worst = leastUnder(energy, { base: -1, slopes: energy.slopes.map(() => 0), range: 0, misfit: 0 });
  const limits = corners.find(({ excess }) => excess)?.excess?.length ?? 0;
  for (let limit = 0; limit < limits; limit++) {
    // A limit that holds at all corners moves nothing.
    if (corners.every(({ excess }) => (excess?.[limit] ?? 0) <= 0)) continue;
    const values = filled(corners.map(({ excess }) => excess?.[limit])) ?? [];
    const plane = planeThrough(values, energy.slopes.length);
    const spare = share * plane.range + plane.misfit + turning;
    const found = leastUnder(energy, { ...plane, base: plane.base - spare });
    if (found.least > worst.least) worst = found;
  }
  return worst;
}

/**
 * What to expect of a cell, from what its corners show. A judgement, not a bound: excess and energy are taken for
 * planes, with doubts that grow with all that they change by across the cell.
 *
 * @param lattice of the speeds of a build in a duty
 * @param cell between nodes of the lattice
 */
export function prospectOf(lattice: SpeedLattice, cell: SpeedCell): Prospect {
  const corners = cornersOf(cell, lattice);
  const floor = (corners[0] as SpeedNode).least;
  // Where there is no solution the energy is not known, but likely as far above the least as beside it.
  const above = filled(corners.map((node) => node.above));
  if (!above) return isLarge(cell, lattice) ? { least: floor, place: cell.sizes.map(() => 0.5) } : NONE;
  const energies = corners.map(({ least }, corner) => least + (above[corner] as number));
  const energy = planeThrough(energies, cell.low.length);
  const width = Math.max(
    ...cell.sizes.map((size, bank) => (size / lattice.side) * (lattice.spans[bank] as number)),
  );
  const { least, place } = leastOn(corners, energy, width, lattice.heated.ofParts);
  const doubt = doubtOf(ENERGY_DOUBT, width) * energy.range + energy.misfit;
  return { least: Math.max(floor, least - doubt), place };
}
