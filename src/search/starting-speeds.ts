import { slowestAdequate } from './boundary.ts';
import { clampRatio, isAdequate, type Point, type Trial } from './trial.ts';

/** Most banks of which every subset is tried resting. */
const SUBSET_BANKS = 4;
/** Points a side of the grid by number of banks, none included. */
const GRID_SIDES = [1, 9, 12, 7, 4] as const;
const LEAST_GRID_SIDE = 2;
/** Most starts taken from the grid. */
const GRID_STARTS = 6;
/** Strides in log speed of the search for any adequate point, and the excess that makes it worth while [K]. */
const COOLING_STRIDES = [0.2, 0.1, 0.05, 0.025, 0.0125, 0.006] as const;
const WORTH_COOLING = 10;

/** Subsets of banks that rest at their floors while the others run together; all run first, never all rest. */
function restingSets(size: number): readonly (readonly boolean[])[] {
  const sets: boolean[][] = [];
  for (let code = 0; code < 2 ** Math.min(size, SUBSET_BANKS) - 1; code++) {
    sets.push(Array.from({ length: size }, (_, bank) => Math.floor(code / 2 ** bank) % 2 === 1));
  }
  return sets;
}

/** Slowest adequate speeds with some banks held at their floors: the resting ones do not move. */
function slowestFrom(trial: Trial, fastest: Float64Array, resting: readonly boolean[]): Point {
  const running = fastest.map((ratio, bank) =>
    resting[bank] ? ratio : Math.sqrt((trial.floors[bank] as number) * ratio),
  );
  const held: Trial = {
    ...trial,
    evaluate: (ratios) =>
      trial.evaluate(ratios.map((ratio, bank) => (resting[bank] ? (fastest[bank] as number) : ratio))),
  };
  return slowestAdequate(held, running);
}

/**
 * Adequate points to descend from: for each subset of banks at their floors, the slowest speeds of the others.
 *
 * @param trial build and duty
 * @param look is told of every point met
 */
export function restingStarts(trial: Trial, look: (point: Point) => Point): readonly Point[] {
  return restingSets(trial.floors.length).flatMap((resting) => {
    const fastest = trial.floors.map((floor, bank) =>
      resting[bank] ? floor : (trial.ceilings[bank] as number),
    );
    if (!isAdequate(look(trial.evaluate(fastest)))) return [];
    const start = look(slowestFrom(trial, fastest, resting));
    return isAdequate(start) ? [start] : [];
  });
}

/**
 * Adequate points to descend from: each bank in turn as fast as it may run, and the slowest speeds of the others. Where a
 * limit bends, the quietest speeds may lie across a rise from all those that begin with banks at rest.
 *
 * @param trial build and duty, of three banks or more
 * @param look is told of every point met
 */
export function racingStarts(trial: Trial, look: (point: Point) => Point): readonly Point[] {
  const fastest = Float64Array.from(trial.ceilings);
  if (fastest.length < 3 || !isAdequate(look(trial.evaluate(fastest)))) return [];
  return [...fastest.keys()].flatMap((bank) => {
    const racing = Array.from(fastest, (_, other) => other === bank);
    const start = look(slowestFrom(trial, fastest, racing));
    return isAdequate(start) ? [start] : [];
  });
}

/** Speeds at a node of the grid, even in log speed between floors and ceilings. */
function nodeSpeeds(trial: Trial, node: number, side: number): Float64Array {
  return trial.floors.map((floor, bank) => {
    const share = (Math.floor(node / side ** bank) % side) / (side - 1);
    return floor ** (1 - share) * (trial.ceilings[bank] as number) ** share;
  });
}

/** Whether no neighbour of a node that holds the limits is quieter. */
function isValley(points: readonly Point[], node: number, side: number, banks: number): boolean {
  const here = points[node] as Point;
  for (let bank = 0; bank < banks; bank++) {
    const place = Math.floor(node / side ** bank) % side;
    for (const move of [-1, 1]) {
      if (place + move < 0 || place + move >= side) continue;
      const neighbour = points[node + move * side ** bank] as Point;
      if (isAdequate(neighbour) && neighbour.energy < here.energy) return false;
    }
  }
  return true;
}

/**
 * Adequate points to descend from, off a coarse grid of speeds: its quietest valleys, brought to the limits. For
 * airways in which faster is not always cooler, and for fans whose own heat makes full speed too warm.
 *
 * @param trial build and duty
 * @param look is told of every point met
 */
export function gridStarts(trial: Trial, look: (point: Point) => Point): readonly Point[] {
  const banks = trial.floors.length;
  const side = GRID_SIDES[banks] ?? LEAST_GRID_SIDE;
  const points = Array.from({ length: side ** banks }, (_, node) =>
    look(trial.evaluate(nodeSpeeds(trial, node, side))),
  );
  return points
    .filter((point, node) => isAdequate(point) && isValley(points, node, side, banks))
    .sort((one, other) => one.energy - other.energy)
    .slice(0, GRID_STARTS)
    .flatMap((point) => [point, look(slowestAdequate(trial, point.ratios))])
    .filter(isAdequate);
}

/** The cooler of a point and its neighbours, one bank faster or slower by a stride. */
function coolestAround(trial: Trial, here: Point, stride: number, look: (point: Point) => Point): Point {
  let coolest = here;
  for (let bank = 0; bank < here.ratios.length; bank++) {
    for (const factor of [Math.exp(stride), Math.exp(-stride)]) {
      const moved = clampRatio(trial, bank, (here.ratios[bank] as number) * factor);
      const there = look(trial.evaluate(here.ratios.with(bank, moved)));
      if (there.worst < coolest.worst) coolest = there;
    }
  }
  return coolest;
}

/** Goes from a point to cooler ones until all limits hold or nothing cooler is near. */
function cooledFrom(trial: Trial, from: Point, look: (point: Point) => Point): Point {
  let here = from;
  for (const stride of COOLING_STRIDES) {
    for (let moved = true; moved && !isAdequate(here); ) {
      const there = coolestAround(trial, here, stride, look);
      moved = there !== here;
      here = there;
    }
  }
  return here;
}

/** Corners of the box of speeds and its middle: where the ways to cooler speeds begin. */
function corners(trial: Trial): readonly Float64Array[] {
  const banks = Math.min(trial.floors.length, SUBSET_BANKS);
  const middle = trial.floors.map((floor, bank) => Math.sqrt(floor * (trial.ceilings[bank] as number)));
  const ends = Array.from({ length: 2 ** banks }, (_, code) =>
    trial.floors.map((floor, bank) =>
      Math.floor(code / 2 ** bank) % 2 === 0 ? (trial.ceilings[bank] as number) : floor,
    ),
  );
  return [middle, ...ends];
}

/**
 * Where nothing adequate has been met: goes from the coolest point, and if need be from the corners and the middle
 * of the range, to cooler ones until all limits hold.
 *
 * @param trial build and duty
 * @param coolest the coolest point met
 * @param look is told of every point met
 * @returns a start on the limits, or none
 */
export function cooledStarts(trial: Trial, coolest: Point, look: (point: Point) => Point): readonly Point[] {
  if (!(coolest.worst < WORTH_COOLING)) return [];
  const beginnings = [coolest.ratios, ...corners(trial)];
  for (const ratios of beginnings) {
    const cooled = cooledFrom(trial, look(trial.evaluate(ratios)), look);
    if (isAdequate(cooled)) return [look(slowestAdequate(trial, cooled.ratios))];
  }
  return [];
}
