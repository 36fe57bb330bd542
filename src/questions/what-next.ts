import { describeBuild } from '../enclosure/describe.ts';
import type { Decibels, Fraction, KelvinDifference, Metres, Watts } from '../quantities/dimensions.ts';
import { flowShareOf } from './flow-share.ts';
import type { Change, Easing, Effort, Lever, Situation } from './levers/lever.ts';
import { levers } from './levers/levers.ts';
import { isAdequateBuild, marginAtLevels, meanLevel, meanPower, solveAnew } from './solved-change.ts';

/** Below this share of the rise that depends on flow more fan is not offered first [-] (assumption). */
const LITTLE_FLOW: Fraction = 1 / 3;
/** Gains below these are none [dB], [K]. */
const LEAST_QUIETER: Decibels = 0.05;
const LEAST_COOLER: KelvinDifference = 0.05;
/** A gain beyond this is no number of kelvins: before it something ran away, or no air moved [K]. */
const MOST_COOLER: KelvinDifference = 700;

/** A change that was solved, and what comes of it. */
export interface NextChange {
  readonly lever: string;
  readonly eases: Easing;
  readonly isFan: boolean;
  readonly effort: Effort;
  readonly at: string;
  readonly what: string;
  readonly notes: readonly string[];
  /** Whether every limit holds in every duty once it is made. */
  readonly adequate: boolean;
  /** Mean level over time once it is made, at the quietest speeds that hold the limits [dB]. */
  readonly level: Decibels;
  /** By how much that is less than now, the limits held alike [dB]; absent unless they hold before and after. */
  readonly quieter?: Decibels;
  /** Growth of the least margin at no more noise than now in every duty [K]; absent if it cannot be that quiet. */
  readonly cooler?: KelvinDifference;
  /** What the fans cost more [-]; absent if a price is unknown. */
  readonly price?: number;
  /** What the fans draw more, mean over time [W]. */
  readonly power: Watts;
  /** Depth needed beyond what there is [m]. */
  readonly depth: Metres;
}

/** What to change next, best first. */
export interface WhatNext {
  readonly changes: readonly NextChange[];
  /** Changes that were tried. */
  readonly tried: number;
  /** Share of the tightest part's rise that falls with more flow [-]; absent if nothing has a limit. */
  readonly flowShare?: Fraction;
  /** Whether fans were put behind other levers because little depends on flow. */
  readonly fansHeldBack: boolean;
}

/** The build as it stands, in the figures that changes are held against. */
interface Baseline {
  readonly situation: Situation;
  readonly levels: readonly Decibels[];
  readonly margin: KelvinDifference;
  readonly power: Watts;
  readonly price: number | undefined;
}

/**
 * The figures of a build that changes are held against.
 *
 * @param situation the build
 */
export function baselineOf(situation: Situation): Baseline {
  const { duties, fanPower, build } = situation.outcome;
  const margins = duties.flatMap(({ tightest }) => (tightest ? [tightest.margin] : []));
  return {
    situation,
    levels: duties.map(({ level }) => level),
    margin: Math.min(...margins) - situation.enclosure.margin,
    power: fanPower,
    price: build.price,
  };
}

function isTellable(cooler: KelvinDifference): boolean {
  return Math.abs(cooler) < MOST_COOLER;
}

/**
 * Solves a build anew with a change.
 *
 * @param lever whose change it is
 * @param change what is done
 * @param base the build as it stands
 */
export function solvedChange(lever: Lever, change: Change, base: Baseline): NextChange {
  const { enclosure, build, at, what, notes, depth = 0 } = change;
  const solved = solveAnew(enclosure, build);
  const adequate = isAdequateBuild(solved);
  const level = meanLevel(solved);
  const margin = marginAtLevels(solved, base.levels);
  const cooler = (margin ?? Number.NaN) - base.margin;
  const { price } = describeBuild(enclosure, build);
  return {
    lever: lever.name,
    eases: lever.eases,
    isFan: lever.isFan,
    effort: lever.effort,
    at,
    what,
    notes,
    adequate,
    level,
    ...(adequate && base.situation.outcome.adequate ? { quieter: base.situation.outcome.level - level } : {}),
    ...(isTellable(cooler) ? { cooler } : {}),
    ...(price === undefined || base.price === undefined ? {} : { price: price - base.price }),
    power: meanPower(solved) - base.power,
    depth,
  };
}

/** Worth of a change [dB] or [K]: what is sorted by, first things first. */
function worth({ quieter = 0, cooler = 0 }: NextChange, wasAdequate: boolean): readonly [number, number] {
  return wasAdequate ? [quieter, cooler] : [cooler, quieter];
}

function compare(one: NextChange, other: NextChange, wasAdequate: boolean): number {
  const [first, second] = worth(one, wasAdequate);
  const [otherFirst, otherSecond] = worth(other, wasAdequate);
  const closes = wasAdequate ? 0 : Number(other.adequate) - Number(one.adequate);
  return closes || otherFirst - first || otherSecond - second;
}

/** Whether a change is worth telling: it makes the box hold its limits, quieter, or cooler without making it louder. */
function helps({ quieter = 0, cooler = 0, adequate }: NextChange, wasAdequate: boolean): boolean {
  if (!wasAdequate) return adequate || cooler >= LEAST_COOLER;
  return quieter >= LEAST_QUIETER || (quieter > -LEAST_QUIETER && cooler >= LEAST_COOLER);
}

/** The best of what one lever can do at one place. */
function bestOfEach(sorted: readonly NextChange[]): readonly NextChange[] {
  const seen = new Set<string>();
  return sorted.filter(({ lever, at }) => {
    const key = JSON.stringify([lever, at]);
    const isNew = !seen.has(key);
    seen.add(key);
    return isNew;
  });
}

/** Puts the best change that is no fan before all fans. */
function fansLater(sorted: readonly NextChange[]): readonly NextChange[] {
  const first = sorted.find(({ isFan }) => !isFan);
  return first ? [first, ...sorted.filter((change) => change !== first)] : sorted;
}

/**
 * What to change next: every lever is tried by solving the build anew with it, and what helps is sorted by the decibels
 * it gains at the same limits, or by the kelvins it gains at the same level where the limits do not hold.
 *
 * @param situation the build at its quietest speeds, or at its coolest if no speeds hold the limits
 */
export function whatNext(situation: Situation): WhatNext {
  const base = baselineOf(situation);
  const { adequate } = situation.outcome;
  const tried = levers.flatMap((lever) =>
    lever.changes(situation, 1).map((change) => solvedChange(lever, change, base)),
  );
  const helping = tried.filter((change) => helps(change, adequate));
  const sorted = bestOfEach([...helping].sort((one, other) => compare(one, other, adequate)));
  const flowShare = flowShareOf(situation.outcome);
  const little = flowShare !== undefined && flowShare < LITTLE_FLOW;
  const changes = little ? fansLater(sorted) : sorted;
  return {
    changes,
    tried: tried.length,
    ...(flowShare === undefined ? {} : { flowShare }),
    fansHeldBack: changes[0] !== sorted[0],
  };
}
