import { type BoundaryAim, EXCESS_TOLERANCE, slowestAdequate } from './boundary.ts';
import { clampRatio, isAdequate, type Point, type Trial } from './trial.ts';

/** Most banks of which every subset is tried resting. */
const SUBSET_BANKS = 4;
/** Slack of starts that are descended from anyway [K]: worth about 0.02 dB. */
const START_SLACK = 0.02;
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
function slowestFrom(
  trial: Trial,
  fastest: Float64Array,
  resting: readonly boolean[],
  aim: BoundaryAim,
): Point {
  const running = fastest.map((ratio, bank) =>
    resting[bank] ? ratio : Math.sqrt((trial.floors[bank] as number) * ratio),
  );
  const held: Trial = {
    ...trial,
    evaluate: (ratios) =>
      trial.evaluate(ratios.map((ratio, bank) => (resting[bank] ? (fastest[bank] as number) : ratio))),
  };
  return slowestAdequate(held, running, aim);
}

/**
 * Adequate points to descend from: for each subset of banks at their floors, the slowest speeds of the others, unless
 * another subset has quieter ones.
 *
 * @param trial build and duty
 * @param look is told of every point met
 */
export function restingStarts(trial: Trial, look: (point: Point) => Point): readonly Point[] {
  const slack = trial.floors.length > 1 ? START_SLACK : EXCESS_TOLERANCE;
  let enough = Number.POSITIVE_INFINITY;
  return restingSets(trial.floors.length).flatMap((resting) => {
    const fastest = trial.floors.map((floor, bank) =>
      resting[bank] ? floor : (trial.ceilings[bank] as number),
    );
    if (!isAdequate(look(trial.evaluate(fastest)))) return [];
    const start = look(slowestFrom(trial, fastest, resting, { slack, enough }));
    if (!isAdequate(start)) return [];
    enough = Math.min(enough, start.energy);
    return [start];
  });
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
 * @param monotone whether faster is known never to warm any limited part: there is one coolest place then
 * @param coolest the coolest point met
 * @param look is told of every point met
 * @returns a start on the limits, or none
 */
export function cooledStarts(
  trial: Trial,
  monotone: boolean,
  coolest: Point,
  look: (point: Point) => Point,
): readonly Point[] {
  if (!(coolest.worst < WORTH_COOLING)) return [];
  const beginnings = [coolest.ratios, ...(monotone ? [] : corners(trial))];
  for (const ratios of beginnings) {
    const cooled = cooledFrom(trial, look(trial.evaluate(ratios)), look);
    if (isAdequate(cooled)) return [look(slowestAdequate(trial, cooled.ratios))];
  }
  return [];
}
