import { inBox, speedBoxes } from './asks/speed-boxes.ts';
import { boundaryFrom, EXCESS_TOLERANCE } from './boundary.ts';
import { bundleDescent } from './speeds/bundle-descent.ts';
import { exchangeSpeeds } from './speeds/exchange.ts';
import { restored } from './speeds/restoration.ts';
import { surveySpeeds } from './speeds/speed-survey.ts';
import { cooledStarts, restingStarts } from './starting-speeds.ts';
import { fullSpeed, isAdequate, type Point, quieter, type Trial } from './trial.ts';

/** Least relative gain of energy that counts as progress: 0.0002 dB. */
const PROGRESS = 5e-5;
/** Lengths of the first step of a descent from somewhere in particular, of each log speed [-]. */
const SURVEY_TRUST = 0.1;
const SHORT_TRUST = 0.03;

/** Banks from which on all results are polished. */
const POLISHED_BANKS = 3;
/** Results this much louder than what is of interest are left unpolished, 1 dB. */
const HOPELESS = 1.26;

/** Outcome of the search for the quietest adequate speeds of one build in one duty. */
export interface Quietest {
  /** The quietest adequate point, or null if none was found. */
  readonly best: Point | null;
  /** The coolest point met: the nearest miss if there is no adequate one. */
  readonly coolest: Point;
}

interface Hunt {
  readonly trial: Trial;
  /** Whether a descent met jumps, or edges beyond which nothing can be told. */
  isRough: boolean;
  best: Point | null;
  coolest: Point;
}

function note(hunt: Hunt, point: Point): Point {
  hunt.best = quieter(hunt.best, point);
  if (point.worst < hunt.coolest.worst) hunt.coolest = point;
  return point;
}

/**
 * The better of a point, if it holds the limits, and the slowest speeds in its proportions that do: a point in
 * the slack may be the quietest where slower fans would work at a louder point of their curves.
 */
function tryAround(hunt: Hunt, ratios: Float64Array, enough = Number.POSITIVE_INFINITY): Point {
  const { base, slowest } = boundaryFrom(hunt.trial, ratios, { slack: EXCESS_TOLERANCE, enough });
  return quieter(quieter(null, note(hunt, slowest)), note(hunt, base)) ?? slowest;
}

/** Descends along the limits, from an adequate point. */
function descend(hunt: Hunt, start: Point, trust?: number): Point {
  const look = (point: Point): Point => note(hunt, point);
  const { end, isRough } = bundleDescent({ trial: hunt.trial, look, progress: PROGRESS }, start, trust);
  if (isRough) hunt.isRough = true;
  return end;
}

/** Exchanges speed between banks from the best point met, and descends from where that leads. */
function polish(hunt: Hunt, toBeat: number): void {
  const { trial, isRough, best } = hunt;
  if (!best || best.energy > HOPELESS * toBeat) return;
  if (!isRough && trial.floors.length < POLISHED_BANKS) return;
  const look = (point: Point): Point => note(hunt, point);
  const toLimits = (ratios: Float64Array, enough: number): Point => tryAround(hunt, ratios, enough);
  exchangeSpeeds({ trial, look, toLimits, progress: PROGRESS, isRough }, best);
  if (hunt.best && hunt.best !== best) descend(hunt, hunt.best, SHORT_TRUST);
}

/** Descends from the quietest start, then polishes the best point met, wherever it was met. */
function refine(hunt: Hunt, starts: readonly Point[], toBeat: number): void {
  const [first] = starts;
  if (first) descend(hunt, first);
  polish(hunt, toBeat);
}

/** Looks for valleys that no start led into, and descends into them. */
function survey(hunt: Hunt, monotone: boolean, toBeat: number): void {
  const { trial } = hunt;
  const before = hunt.best;
  surveySpeeds(trial, monotone, {
    look: (point) => note(hunt, point),
    toBeat: () => Math.min(toBeat, hunt.best?.energy ?? toBeat) * (1 - PROGRESS),
    descend: (ratios) => {
      const there = note(hunt, trial.evaluate(ratios));
      const start = restored(trial, there, (point) => note(hunt, point)) ?? tryAround(hunt, ratios);
      if (isAdequate(start) && trial.floors.length > 1) descend(hunt, start, SURVEY_TRUST);
      return isAdequate(start);
    },
  });
  if (!hunt.best || hunt.best === before) return;
  // Nodes that hold the limits may have been the best met.
  if (trial.floors.length > 1) descend(hunt, hunt.best, SURVEY_TRUST);
  polish(hunt, toBeat);
}

/** Whether the slowest speeds hold the limits and no fan could make less noise at any higher ones. */
function isUnbeatable(trial: Trial, slowest: Point): boolean {
  const least = trial.leastEnergy(trial.floors);
  return isAdequate(slowest) && slowest.energy <= least * (1 + PROGRESS);
}

/** The hunt in one box of speeds. */
function huntWithin(trial: Trial, monotone: boolean, toBeat: number, known: readonly Float64Array[]): Hunt {
  const slowest = trial.evaluate(trial.floors);
  const hunt: Hunt = { trial, isRough: false, best: quieter(null, slowest), coolest: slowest };
  if (trial.floors.length === 0 || isUnbeatable(trial, slowest)) return hunt;
  const look = (point: Point): Point => note(hunt, point);
  const given = known.flatMap((ratios) => inBox(trial, ratios) ?? []).map((values) => trial.evaluate(values));
  const starts = [slowest, ...given.map(look)].filter(isAdequate);
  starts.push(...restingStarts(trial, look));
  if (starts.length === 0) starts.push(...cooledStarts(trial, monotone, hunt.coolest, look));
  starts.sort((one, other) => one.energy - other.energy);
  if (trial.floors.length > 1) refine(hunt, starts, toBeat);
  survey(hunt, monotone, toBeat);
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
