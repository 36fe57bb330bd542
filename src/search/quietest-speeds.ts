import { slowestAdequate } from './boundary.ts';
import { localModel } from './local-model.ts';
import { separableStep } from './separable-step.ts';
import {
  clampRatio,
  fullSpeed,
  isAdequate,
  type Point,
  quieter,
  type Trial,
  withoutAvoidedSpeeds,
} from './trial.ts';

/** Least relative gain of energy that counts as progress: 0.0002 dB. */
const PROGRESS = 5e-5;
const DESCENT_STEPS = 25;
const FIRST_TRUST = 0.4;
const LEAST_TRUST = 2e-3;
/** Stride of the exchange of speed between banks, first and last, in log speed. */
const EXCHANGE_STRIDES = [0.16, 0.04, 0.01] as const;
/** A start this much louder than the best found is not descended from, 3 dB; nor polished, 1 dB. */
const HOPELESS_START = 2;
const HOPELESS_DESCENT = 1.26;
/** Points a side of the grid that looks for adequate speeds where faster is not always cooler. */
const GRID_SIDE = 6;
const GRID_BANKS = 4;

/** Outcome of the search for the quietest adequate speeds of one build in one duty. */
export interface Quietest {
  /** The quietest adequate point, or null if none was found. */
  readonly best: Point | null;
  /** The coolest point met: the nearest miss if there is no adequate one. */
  readonly coolest: Point;
}

interface Hunt {
  readonly trial: Trial;
  best: Point | null;
  coolest: Point;
}

function note(hunt: Hunt, point: Point): Point {
  hunt.best = quieter(hunt.best, point);
  if (point.worst < hunt.coolest.worst) hunt.coolest = point;
  return point;
}

function movedBy(trial: Trial, base: Float64Array, step: Float64Array, share: number): Float64Array {
  return base.map((ratio, bank) => clampRatio(trial, bank, ratio * Math.exp(share * (step[bank] as number))));
}

/** Newton-like descent along the limits, from an adequate point. */
function descend(hunt: Hunt, start: Point): Point {
  const { trial } = hunt;
  let here = start;
  let trust = FIRST_TRUST;
  for (let count = 0; count < DESCENT_STEPS && trust > LEAST_TRUST; count++) {
    const step = separableStep(localModel(trial, here, trust));
    const there = note(hunt, slowestAdequate(trial, movedBy(trial, here.ratios, step, 1)));
    const gain = isAdequate(there) ? 1 - there.energy / here.energy : -1;
    if (gain > 0) here = there;
    if (gain <= 0) trust *= 0.3;
    else if (gain < PROGRESS) break;
  }
  return here;
}

/** Gives speed to one bank, takes it from the others by way of the limits; cures kinks the descent sticks to. */
function exchange(hunt: Hunt, start: Point): Point {
  const { trial } = hunt;
  let here = start;
  for (const stride of EXCHANGE_STRIDES) {
    for (let bank = 0; bank < here.ratios.length; bank++) {
      here = exchangeOne(hunt, trial, here, bank, stride);
    }
  }
  return here;
}

function exchangeOne(hunt: Hunt, trial: Trial, start: Point, bank: number, stride: number): Point {
  let here = start;
  for (const direction of [1, -1]) {
    for (let count = 0; count < 8; count++) {
      const step = new Float64Array(here.ratios.length);
      step[bank] = direction * stride;
      const there = note(hunt, slowestAdequate(trial, movedBy(trial, here.ratios, step, 1)));
      if (!isAdequate(there) || there.energy >= here.energy * (1 - PROGRESS)) break;
      here = there;
    }
  }
  return here;
}

/** Subsets of banks to start from at their floors, the others running together; all run first. */
function startingSets(size: number): readonly (readonly boolean[])[] {
  const sets: boolean[][] = [];
  for (let code = 0; code < 2 ** Math.min(size, GRID_BANKS) - 1; code++) {
    sets.push(Array.from({ length: size }, (_, bank) => Math.floor(code / 2 ** bank) % 2 === 1));
  }
  return sets;
}

/** Adequate points to descend from, quietest first. */
function startingPoints(hunt: Hunt): readonly Point[] {
  const { trial } = hunt;
  const size = trial.floors.length;
  const found: Point[] = [];
  for (const resting of startingSets(size)) {
    const fastest = trial.floors.map((floor, bank) =>
      resting[bank] ? floor : (trial.ceilings[bank] as number),
    );
    const full = note(hunt, trial.evaluate(fastest));
    if (isAdequate(full)) found.push(note(hunt, slowestFrom(trial, fastest, resting)));
  }
  return found.sort((a, b) => a.energy - b.energy);
}

/** Slowest adequate speeds with some banks held at their floors: the resting ones cannot move down. */
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

/** Speeds on a coarse grid; only used where full speed does not cool enough and is not known to cool best. */
function searchGrid(hunt: Hunt): void {
  const { trial } = hunt;
  const size = trial.floors.length;
  const side = size <= GRID_BANKS ? GRID_SIDE : 2;
  for (let code = 0; code < side ** size; code++) {
    const ratios = trial.floors.map((floor, bank) => {
      const share = (Math.floor(code / side ** bank) % side) / (side - 1);
      return floor ** (1 - share) * (trial.ceilings[bank] as number) ** share;
    });
    note(hunt, trial.evaluate(ratios));
  }
}

/** Descends from the starts and polishes the best of what comes of it. */
function refine(hunt: Hunt, starts: readonly Point[], toBeat: number): void {
  let low: Point | null = null;
  for (const start of starts) {
    if (start.energy <= HOPELESS_START * (low?.energy ?? Number.POSITIVE_INFINITY)) {
      low = quieter(low, descend(hunt, start));
    }
  }
  if (low && low.energy <= HOPELESS_DESCENT * toBeat) exchange(hunt, low);
}

/** The hunt in one box of speeds. */
function huntWithin(trial: Trial, monotone: boolean, toBeat: number): Hunt {
  const slowest = trial.evaluate(trial.floors);
  const hunt: Hunt = { trial, best: quieter(null, slowest), coolest: slowest };
  if (trial.floors.length === 0) return hunt;
  const fastest = note(hunt, trial.evaluate(fullSpeed(trial)));
  if (!isAdequate(fastest) && monotone) return hunt;
  let starts = startingPoints(hunt);
  if (starts.length === 0 && !monotone) {
    searchGrid(hunt);
    if (hunt.best) starts = [note(hunt, slowestAdequate(trial, hunt.best.ratios))];
  }
  if (trial.floors.length > 1) refine(hunt, starts, toBeat);
  return hunt;
}

/**
 * Quietest speeds of the banks of a build at which every limit of a duty holds.
 *
 * Speeds are continuous between each fan's hold floor and full speed, without the bands to avoid. From several
 * starts (all banks together; some at their floors) the search descends along the limits with a local model of
 * noise and cooling, then exchanges speed between banks until nothing is gained.
 *
 * @param trial build and duty
 * @param monotone whether faster is known never to warm any limited part in this airway
 * @param toBeat sound energy at the listener of interest [-]: results far above it are left unpolished
 */
export function quietestSpeeds(
  trial: Trial,
  monotone: boolean,
  toBeat: number = Number.POSITIVE_INFINITY,
): Quietest {
  const [first, ...others] = withoutAvoidedSpeeds(trial);
  // A bank that must avoid every speed cannot run: what it would do at full speed is the nearest miss.
  if (!first) return { best: null, coolest: trial.evaluate(fullSpeed(trial)) };
  const found = huntWithin(first, monotone, toBeat);
  for (const box of others) {
    const { best, coolest } = huntWithin(box, monotone, Math.min(toBeat, found.best?.energy ?? toBeat));
    found.best = quieter(found.best, best);
    if (coolest.worst < found.coolest.worst) found.coolest = coolest;
  }
  return { best: found.best, coolest: found.coolest };
}
