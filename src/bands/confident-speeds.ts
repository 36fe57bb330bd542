import { askedLimits } from '../enclosure/asked-limits.ts';
import type { Machine } from '../enclosure/machine.ts';
import type { Fraction } from '../quantities/dimensions.ts';
import { quietestSpeeds } from '../search/quietest-speeds.ts';
import { createTrial } from '../search/trial.ts';
import { type FoundMargins, nextAsked } from './asked-margins.ts';
import { drawsOf, marginsOf, probabilityOfHolding } from './holding.ts';
import { responseOf } from './response.ts';

/** Speeds at which a build is as sure to hold its limits as is asked. */
export interface ConfidentSpeeds {
  /** By duty [-]. */
  readonly ratios: readonly Float64Array[];
  /** Sound energy at the listener by duty [-]. */
  readonly energies: Float64Array;
  /** Probability that every limit holds in every duty [-]. */
  readonly holding: Fraction;
}

/** A probability may exceed what is asked by so much [-]: about a hundredth of a decibel. */
const SLACK: Fraction = 0.001;
const ROUNDS = 12;
/** Speeds surer than asked by no more than this [-] get quieter by less than 0.2 dB on the way: factor on energies [-]. */
const NEARLY: Fraction = 0.01;
const NEARLY_FACTOR = 0.955;

interface Attempt extends ConfidentSpeeds, FoundMargins {}

/** Speeds with what they leave to each limit; null if the build has no solution there. */
function attemptAt(
  machine: Machine,
  ratios: readonly Float64Array[],
  energies: Float64Array,
): Attempt | null {
  const response = responseOf(machine, ratios, { noise: false });
  if (typeof response === 'string') return null;
  const margins = marginsOf(response);
  const headrooms = machine.plant.enclosure.duties.flatMap((duty) =>
    askedLimits(machine, duty).map(({ limit }) => limit - duty.room),
  );
  const draws = drawsOf(margins);
  const holding = probabilityOfHolding(draws, margins.stated);
  return { ratios, energies, margins, draws, headrooms, holding };
}

/** Quietest speeds with a margin asked of each limit; null if there are none. */
function attempt(
  machine: Machine,
  monotone: boolean,
  asked: readonly Float64Array[],
  start: readonly (Float64Array | null)[],
): Attempt | null {
  const ratios: Float64Array[] = [];
  const energies: number[] = [];
  for (const [index, duty] of machine.plant.enclosure.duties.entries()) {
    const trial = createTrial(machine, duty, 1, asked[index]);
    const known = start[index];
    const point = known ? trial.evaluate(known) : quietestSpeeds(trial, monotone).best;
    if (!point) return null;
    ratios.push(point.ratios);
    energies.push(point.energy);
  }
  return attemptAt(machine, ratios, Float64Array.from(energies));
}

/** Cuts values of all limits into those of each duty. */
function byDuty(values: Float64Array, counts: readonly number[]): readonly Float64Array[] {
  let at = 0;
  return counts.map((count) => {
    at += count;
    return values.subarray(at - count, at);
  });
}

/** What is asked of the speeds. */
export interface ConfidentOptions {
  /** Whether faster is known never to warm a limited part in this airway. */
  readonly monotone: boolean;
  /** Probability asked for [-], above 0, below 1. */
  readonly confidence: Fraction;
  /** Speeds by duty to begin with, at which less is certain; the quietest adequate ones if absent. */
  readonly start?: readonly (Float64Array | null)[];
  /** Whether a build with such energies by duty is of no interest; none is if absent. */
  readonly isTooLoud?: (energies: Float64Array) => boolean;
}

/**
 * The quietest speeds at which every limit has the same number of its standard deviations in hand, and no less than
 * the asked margin, so that all of them hold together with a given probability.
 *
 * How far limits may be off depends on the speeds, so speeds and margins are found by turns.
 *
 * @param machine the build
 * @param options what is asked
 * @returns null if no speeds were found at which it is as sure, or none that are quiet enough
 */
export function confidentSpeeds(machine: Machine, options: ConfidentOptions): ConfidentSpeeds | null {
  const { monotone, confidence, isTooLoud = () => false } = options;
  const { duties, margin } = machine.plant.enclosure;
  const counts = duties.map((duty) => askedLimits(machine, duty).length);
  let asked: Float64Array | null = new Float64Array(counts.reduce((sum, count) => sum + count, 0)).fill(
    margin,
  );
  let best: Attempt | null = null;
  let start = options.start ?? [];
  let reached: Float64Array | null = null;
  for (let round = 0; round < ROUNDS && asked; round++) {
    const now: Attempt | null = attempt(machine, monotone, byDuty(asked, counts), start);
    if (!now) {
      // More was asked than can be had, but perhaps also more than is needed.
      asked = reached && between(reached, asked);
      continue;
    }
    reached = asked;
    if (isHopeless(now, confidence, isTooLoud)) return null;
    best = surer(best, now, confidence);
    // The quietest adequate speeds may be sure enough as they are.
    const lowest = start.length === 0 && asked.every((value) => value <= margin);
    if (best === now && (lowest || now.holding <= confidence + SLACK)) return now;
    start = [];
    asked = nextAsked(now, asked, margin, confidence);
  }
  return best;
}

/** Whether it will be too loud: what is not sure enough yet only gets louder, what nearly is gets little quieter. */
function isHopeless(
  { holding, energies }: Attempt,
  confidence: Fraction,
  isTooLoud: (energies: Float64Array) => boolean,
): boolean {
  if (holding < confidence) return isTooLoud(energies);
  return holding < confidence + NEARLY && isTooLoud(energies.map((value) => value * NEARLY_FACTOR));
}

/** Margins half-way. */
function between(one: Float64Array, other: Float64Array): Float64Array {
  return one.map((value, index) => (value + (other[index] as number)) / 2);
}

/** Of what is sure enough, that which is no surer than it must be. */
function surer(best: Attempt | null, now: Attempt, confidence: Fraction): Attempt | null {
  if (now.holding < confidence) return best;
  return best && best.holding <= now.holding ? best : now;
}
