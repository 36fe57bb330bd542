import TinyQueue from 'tinyqueue';
import type { Point, Trial } from '../trial.ts';
import { cornersOf, type Prospect, prospectOf, type SpeedCell } from './speed-cell.ts';
import { type SpeedLattice, speedLattice } from './speed-lattice.ts';
import { turningPlaces } from './turning-legs.ts';

/** Cells along each axis in the end, by number of banks, none included. */
const SIDES = [1, 64, 64, 32, 16] as const;
const LEAST_SIDE = 4;
/** Cells along each axis to begin with where faster is not always cooler. */
const FIRST_SIDES = [1, 8, 8, 4, 2] as const;
/** Nodes looked at, at most [-]. */
const MOST_NODES = 1500;
/** Banks of which every corner of a cell can be looked at. */
const MOST_BANKS = 7;
/** Cells this near to one already descended from belong to the same valley [cells]. */
const VALLEY = 3;
/** Valleys descended into, and cells tried that led into none, at most [-]. */
const MOST_VALLEYS = 16;
const MOST_TRIES = 40;
/** Cells still promising when the nodes are used up that are descended from, at most [-]. */
const MOST_LEFT = 4;

interface Waiting extends SpeedCell {
  readonly prospect: Prospect;
  readonly arrival: number;
}

/** What the survey needs of the search it serves. */
export interface Surveyor {
  /** Is told of every point met. */
  readonly look: (point: Point) => Point;
  /** Descends from speeds near the limits; whether there are adequate ones. */
  readonly descend: (ratios: Float64Array) => boolean;
  /** Energy from which on nothing is of interest [-]. */
  readonly toBeat: () => number;
}

/** The halves of a cell across its widest side; none if it is as small as they get. */
function halves({ low, sizes }: SpeedCell, { spans }: SpeedLattice): readonly SpeedCell[] {
  let widest = -1;
  let width = 0;
  sizes.forEach((size, bank) => {
    const here = size > 1 ? size * (spans[bank] as number) : 0;
    if (here > width) [widest, width] = [bank, here];
  });
  if (widest < 0) return [];
  const half = (sizes[widest] as number) / 2;
  const narrower = sizes.with(widest, half);
  return [
    { low, sizes: narrower },
    { low: low.with(widest, (low[widest] as number) + half), sizes: narrower },
  ];
}

/** Cells that fill the whole range. */
function firstCells(banks: number, side: number, along: number): readonly SpeedCell[] {
  const size = side / along;
  return Array.from({ length: along ** banks }, (_, cell) => ({
    low: Array.from({ length: banks }, (_, bank) => (Math.floor(cell / along ** bank) % along) * size),
    sizes: Array.from({ length: banks }, () => size),
  }));
}

/** Cells in the order of what they promise. */
interface Outlook {
  /** The most promising cell, or none if nothing promises less than what is to beat. */
  readonly next: () => Waiting | undefined;
  readonly add: (cell: SpeedCell) => void;
}

function outlook(lattice: SpeedLattice, toBeat: () => number): Outlook {
  const queue = new TinyQueue<Waiting>(
    [],
    (a, b) => a.prospect.least - b.prospect.least || a.arrival - b.arrival,
  );
  let arrivals = 0;
  const interests = ({ least }: Prospect): boolean => least < Math.log(toBeat());
  return {
    next: () => {
      const first = queue.pop();
      return first && interests(first.prospect) ? first : undefined;
    },
    add: (cell) => {
      const prospect = prospectOf(lattice, cell);
      if (interests(prospect)) queue.push({ ...cell, prospect, arrival: arrivals });
      arrivals += 1;
    },
  };
}

/** Speeds at a place of a cell, in shares of its sides. */
function speedsIn(lattice: SpeedLattice, { low, sizes }: SpeedCell, place: readonly number[]): Float64Array {
  return lattice.speedsAt(low.map((step, bank) => step + (place[bank] as number) * (sizes[bank] as number)));
}

/** The coolest speeds on the edges of a cell at which the air of a leg stands still. */
function coolestTurning(
  trial: Trial,
  lattice: SpeedLattice,
  cell: Waiting,
  legs: readonly number[],
  look: (point: Point) => Point,
): Float64Array | undefined {
  let coolest: Point | null = null;
  for (const place of turningPlaces(cornersOf(cell, lattice), cell.low.length, legs)) {
    const there = look(trial.evaluate(speedsIn(lattice, cell, place)));
    if (!coolest || there.worst < coolest.worst) coolest = there;
  }
  return coolest?.ratios;
}

/**
 * Speeds of a cell to descend from: where the air of a leg with a part turns round; else where the cell promises most, and
 * where the air of a fan does.
 */
function startsIn(
  trial: Trial,
  lattice: SpeedLattice,
  cell: Waiting,
  look: (point: Point) => Point,
): readonly Float64Array[] {
  const { ofParts, ofFans } = lattice.heated;
  const turning = coolestTurning(trial, lattice, cell, ofParts, look);
  if (turning) return [turning];
  const fans = coolestTurning(trial, lattice, cell, ofFans, look);
  const promising = speedsIn(lattice, cell, cell.prospect.place);
  return fans ? [promising, fans] : [promising];
}

/** Cells descended from so far. */
interface Tries {
  /** Whether a cell is beside one of them. */
  readonly covers: (cell: SpeedCell) => boolean;
  readonly note: (cell: SpeedCell, isValley: boolean) => void;
  readonly areEnough: () => boolean;
}

function triesOf(lattice: SpeedLattice): Tries {
  const tried: (readonly number[])[] = [];
  let valleys = 0;
  let left = 0;
  return {
    covers: ({ low }) =>
      tried.some((other) => other.every((step, bank) => Math.abs(step - (low[bank] as number)) <= VALLEY)),
    note: ({ low }, isValley) => {
      tried.push(low);
      if (isValley) valleys += 1;
      if (lattice.tried() >= MOST_NODES) left += 1;
    },
    areEnough: () => valleys >= MOST_VALLEYS || tried.length >= MOST_TRIES || left >= MOST_LEFT,
  };
}

/**
 * Surveys the whole range of speeds of a build for valleys of quiet adequate speeds, and has them descended into: the
 * most promising cells are halved first, until nothing promises less energy than what is to beat.
 *
 * @param trial build and duty
 * @param monotone whether faster is known never to warm any limited part
 * @param surveyor what to do with what is found
 */
export function surveySpeeds(trial: Trial, monotone: boolean, { look, descend, toBeat }: Surveyor): void {
  const banks = trial.floors.length;
  if (banks > MOST_BANKS) return;
  const side = SIDES[banks] ?? LEAST_SIDE;
  const lattice = speedLattice(trial, side, look);
  const { next, add } = outlook(lattice, toBeat);
  for (const cell of firstCells(banks, side, monotone ? 1 : (FIRST_SIDES[banks] ?? 1))) add(cell);
  const tries = triesOf(lattice);
  for (let first = next(); first && !tries.areEnough(); first = next()) {
    const parts = lattice.tried() < MOST_NODES ? halves(first, lattice) : [];
    for (const part of parts) add(part);
    if (parts.length > 0 || tries.covers(first)) continue;
    const led = startsIn(trial, lattice, first, look).map((start) => descend(start));
    tries.note(first, led.includes(true));
  }
}
