import { inBox, speedBoxes } from './asks/speed-boxes.ts';
import { boundaryFrom } from './boundary.ts';
import { localModel } from './local-model.ts';
import { separableStep } from './separable-step.ts';
import { cooledStarts, gridStarts, racingStarts, restingStarts } from './starting-speeds.ts';
import { clampRatio, fullSpeed, isAdequate, type Point, quieter, type Trial } from './trial.ts';

/** Least relative gain of energy that counts as progress: 0.0002 dB. */
const PROGRESS = 5e-5;
const DESCENT_STEPS = 25;
const FIRST_TRUST = 0.4;
const LEAST_TRUST = 2e-3;
/** Stride of the exchange of speed between banks, first and last, in log speed. */
const EXCHANGE_STRIDES = [0.16, 0.08, 0.04, 0.015, 0.004] as const;
/** A start this much louder than the best found is not descended from, 3 dB; nor polished, 1 dB. */
const HOPELESS_START = 2;
const HOPELESS_DESCENT = 1.26;

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

/**
 * The better of a point, if it holds the limits, and the slowest speeds in its proportions that do: a point in
 * the slack may be the quietest where slower fans would work at a louder point of their curves.
 */
function tryAround(hunt: Hunt, ratios: Float64Array): Point {
  const { base, slowest } = boundaryFrom(hunt.trial, ratios);
  return quieter(quieter(null, note(hunt, slowest)), note(hunt, base)) ?? slowest;
}

/** Newton-like descent along the limits, from an adequate point. */
function descend(hunt: Hunt, start: Point): Point {
  const { trial } = hunt;
  let here = start;
  let trust = FIRST_TRUST;
  for (let count = 0; count < DESCENT_STEPS && trust > LEAST_TRUST; count++) {
    const step = separableStep(localModel(trial, here, trust));
    const there = tryAround(hunt, movedBy(trial, here.ratios, step, 1));
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
      const there = tryAround(hunt, movedBy(trial, here.ratios, step, 1));
      if (!isAdequate(there) || there.energy >= here.energy * (1 - PROGRESS)) break;
      here = there;
    }
  }
  return here;
}

/** Descends from the starts, then polishes the best point met, wherever it was met. */
function refine(hunt: Hunt, starts: readonly Point[], toBeat: number): void {
  let low: Point | null = null;
  for (const start of starts) {
    if (start.energy <= HOPELESS_START * (low?.energy ?? Number.POSITIVE_INFINITY)) {
      low = quieter(low, descend(hunt, start));
    }
  }
  const best = quieter(low, hunt.best);
  if (best && best.energy <= HOPELESS_DESCENT * toBeat) exchange(hunt, best);
}

/** Whether the slowest speeds hold the limits and no fan could make less noise at any higher ones. */
function isUnbeatable(trial: Trial, slowest: Point): boolean {
  const least = trial.leastEnergy(trial.floors);
  return isAdequate(slowest) && slowest.energy <= least * (1 + PROGRESS);
}

/** The hunt in one box of speeds. */
function huntWithin(trial: Trial, monotone: boolean, toBeat: number, known: readonly Float64Array[]): Hunt {
  const slowest = trial.evaluate(trial.floors);
  const hunt: Hunt = { trial, best: quieter(null, slowest), coolest: slowest };
  if (trial.floors.length === 0 || isUnbeatable(trial, slowest)) return hunt;
  const look = (point: Point): Point => note(hunt, point);
  const given = known.flatMap((ratios) => inBox(trial, ratios) ?? []).map((values) => trial.evaluate(values));
  const starts = [slowest, ...given.map(look)].filter(isAdequate);
  starts.push(...restingStarts(trial, look), ...racingStarts(trial, look));
  if (!monotone || trial.besides > 0 || starts.length === 0) starts.push(...gridStarts(trial, look));
  if (starts.length === 0) starts.push(...cooledStarts(trial, hunt.coolest, look));
  starts.sort((one, other) => one.energy - other.energy);
  if (trial.floors.length > 1) refine(hunt, starts, toBeat);
  return hunt;
}

/**
 * Quietest speeds of the banks of a build at which every limit of a duty holds.
 *
 * Speeds are continuous between each fan's hold floor and full speed, without the bands to avoid; banks on one header
 * have one. From several starts (all banks together; some at their floors) the search descends along the limits with a
 * local model of noise and cooling, then exchanges speed between banks until nothing is gained.
 *
 * @param trial build and duty
 * @param monotone whether faster is known never to warm any limited part in this airway
 * @param toBeat sound energy at the listener of interest [-]: results far above it are left unpolished
 * @param known speeds to start from beside the usual ones
 */
export function quietestSpeeds(
  trial: Trial,
  monotone: boolean,
  toBeat: number = Number.POSITIVE_INFINITY,
  known: readonly Float64Array[] = [],
): Quietest {
  const [first, ...others] = speedBoxes(trial);
  // A bank that must avoid every speed cannot run: what it would do at full speed is the nearest miss.
  if (!first) return { best: null, coolest: trial.evaluate(fullSpeed(trial)) };
  const found = huntWithin(first, monotone, toBeat, known);
  for (const box of others) {
    const enough = Math.min(toBeat, found.best?.energy ?? toBeat);
    const { best, coolest } = huntWithin(box, monotone, enough, known);
    found.best = quieter(found.best, best);
    if (coolest.worst < found.coolest.worst) found.coolest = coolest;
  }
  const inFull = (point: Point): Point => ({ ...point, ratios: first.allSpeeds(point.ratios) });
  return { best: found.best && inFull(found.best), coolest: inFull(found.coolest) };
}
