import type TinyQueue from 'tinyqueue';
import type { Build, Duty, Enclosure } from '../enclosure/enclosure.ts';
import { assemble, type Plant } from '../enclosure/machine.ts';
import type { Decibels } from '../quantities/dimensions.ts';
import { coolTrials, DENSITY_ALLOWANCE } from './cooling-bound.ts';
import type { DemandOnBuilds, Met } from './demand-on-builds.ts';
import type { ShortList } from './list.ts';
import type { Objective, ObjectiveName } from './objective.ts';
import { groupAt, type OptionForest, type OptionTree } from './option-tree.ts';
import type { Promised, Promises } from './promise.ts';
import { quietestSpeeds } from './quietest-speeds.ts';
import { buildsIn } from './space.ts';
import { createTrial, fullSpeed, isAdequate, type Trial } from './trial.ts';

/** What is asked of a search. */
export interface SearchOptions {
  /** Length of the list [-], ≥ 1. */
  readonly top: number;
  /** Builds quieter by no more than this may be left out [dB]. */
  readonly gap: Decibels;
  /** What the ranking goes by; the mean over time if absent. */
  readonly by?: ObjectiveName;
  /** What builds must meet beyond their limits; nothing if absent. */
  readonly demand?: DemandOnBuilds;
}

/** Why builds were put out without working out their speeds. */
export const BOUNDS = [
  'too weak at full speed',
  'too loud for the air it must move',
  'too warm at full speed',
  'too warm at speeds quiet enough',
] as const;
export type Bound = (typeof BOUNDS)[number];

/** A build, or a set of builds with places still open, that waits for its turn. */
export interface Waiting {
  readonly build: Build;
  /** Lower bound of its energy as the objective has it, at 1 m [-]. */
  readonly value: number;
  readonly promised: Promised;
  /** Whether it has been looked at closely. */
  readonly tight: boolean;
  /** Order of arrival: breaks ties. */
  readonly arrival: number;
}

/** All that a search remembers. */
export interface Hunt {
  readonly enclosure: Enclosure;
  readonly plant: Plant;
  readonly coolPlant: Plant;
  readonly monotone: boolean;
  readonly objective: Objective;
  readonly promises: Promises;
  readonly forest: OptionForest;
  readonly options: SearchOptions;
  readonly list: ShortList;
  readonly waiting: TinyQueue<Waiting>;
  readonly ruledOut: Map<Bound, number>;
  /** Bank places in the order in which they are decided. */
  readonly banks: readonly number[];
  /** Duties in the order in which they are looked at. */
  readonly duties: readonly number[];
  /** Square of the listener's distance: turns energies at the listener into energies at 1 m. */
  readonly spreading: number;
  arrivals: number;
  open: number;
  solved: number;
  passes: number;
}

/** Energy at 1 m, as the objective has it, that a further build must stay below [-]. */
export function toBeat(hunt: Hunt): number {
  return hunt.list.toBeat() * hunt.spreading;
}

/** Puts a build, or all of a set, out by a bound. */
export function putOut(hunt: Hunt, bound: Bound, build: Build): void {
  const builds = buildsIn(hunt.forest, build);
  hunt.open -= builds;
  hunt.ruledOut.set(bound, (hunt.ruledOut.get(bound) ?? 0) + builds);
}

/** Lets a build wait for its turn unless its bound already puts it out; `atLeast` is what its set promised. */
export function wait(hunt: Hunt, build: Build, promised: Promised, tight: boolean, atLeast: number): void {
  const value = Math.max(atLeast, hunt.objective.energyOf(hunt.enclosure, promised.energies));
  if (value === Number.POSITIVE_INFINITY) putOut(hunt, 'too weak at full speed', build);
  else if (value >= toBeat(hunt)) putOut(hunt, 'too loud for the air it must move', build);
  else {
    hunt.waiting.push({ build, value, promised, tight, arrival: hunt.arrivals });
    hunt.arrivals += 1;
  }
}

/** Splits a set by the groups of one of its bank places. */
function split(hunt: Hunt, { build, value, promised }: Waiting, place: number): void {
  const { parts } = groupAt(hunt.forest[place] as OptionTree, build[place] as number);
  for (const part of parts) {
    const child = build.with(place, part);
    wait(hunt, child, hunt.promises.coarse(child, promised, toBeat(hunt)), false, value);
  }
}

/** The bank place with the most options still open; the first of them if several have as many. */
function widestPlace(hunt: Hunt, build: Build): number | undefined {
  let most = 0;
  let widest: number | undefined;
  for (const place of hunt.banks) {
    const code = build[place] as number;
    const size = code < 0 ? groupAt(hunt.forest[place] as OptionTree, code).options.length : 0;
    if (size > most) {
      most = size;
      widest = place;
    }
  }
  return widest;
}

/** Which cooling bound puts a build out, if one does. */
function tooWarm(hunt: Hunt, build: Build, energies: Float64Array): Bound | null {
  const trials = coolTrials(hunt.coolPlant, build);
  let bound: Bound | null = null;
  for (const duty of hunt.duties) {
    const allowed = hunt.objective.budgetOf(hunt.enclosure, energies, duty, toBeat(hunt));
    const point = trials.coolestWithin(duty, allowed);
    // A pass without a solution proves nothing: such a build is worked out instead.
    if (!point || (!point.failure && point.worst > DENSITY_ALLOWANCE)) {
      const unlimited = allowed === Number.POSITIVE_INFINITY;
      bound = unlimited ? 'too warm at full speed' : 'too warm at speeds quiet enough';
      break;
    }
  }
  hunt.passes += trials.passes();
  return bound;
}

/** Quietest speeds in one duty; null where full speed is enough to survive it, `false` if it cannot be met. */
function solveDuty(
  hunt: Hunt,
  trial: Trial,
  duty: number,
  energies: Float64Array,
): Float64Array | null | false {
  if (trial.duty.share === 0 && isAdequate(trial.evaluate(fullSpeed(trial)))) return null;
  const allowed = hunt.objective.budgetOf(hunt.enclosure, energies, duty, toBeat(hunt)) / hunt.spreading;
  const { best } = quietestSpeeds(trial, hunt.monotone, allowed);
  energies[duty] = best ? best.energy * hunt.spreading : Number.POSITIVE_INFINITY;
  return best ? best.ratios : false;
}

/** Works out the quietest speeds of a build, duty by duty, as long as it can still make the list. */
function solve(hunt: Hunt, build: Build, energies: Float64Array): void {
  const machine = assemble(hunt.plant, build);
  const speeds = hunt.enclosure.duties.map((): Float64Array | null => null);
  hunt.solved += 1;
  hunt.open -= 1;
  for (const duty of hunt.duties) {
    const trial = createTrial(machine, hunt.enclosure.duties[duty] as Duty);
    const found = solveDuty(hunt, trial, duty, energies);
    hunt.passes += trial.passes();
    if (found === false || hunt.objective.energyOf(hunt.enclosure, energies) >= toBeat(hunt)) return;
    speeds[duty] = found;
  }
  const met = hunt.options.demand ? meet(hunt, build, speeds) : { speeds, energies };
  if (!met) return;
  hunt.list.insert({
    build,
    energy: hunt.objective.energyOf(hunt.enclosure, met.energies) / hunt.spreading,
    speeds: met.speeds,
  });
}

/** Speeds that meet the demand on builds, with their energies at 1 m by duty [-]; null if none are quiet enough. */
function meet(hunt: Hunt, build: Build, start: readonly (Float64Array | null)[]): Met | null {
  const atOneMetre = (energies: Float64Array): Float64Array =>
    energies.map((value) => value * hunt.spreading);
  const isTooLoud = (energies: Float64Array): boolean =>
    hunt.objective.energyOf(hunt.enclosure, atOneMetre(energies)) >= toBeat(hunt);
  const met = hunt.options.demand?.meet(build, start, isTooLoud);
  return met ? { speeds: met.speeds, energies: atOneMetre(met.energies) } : null;
}

/** Sets with more options than this in one place are split before their bound is made tight [-]. */
const WIDE = 8;

function isWide(hunt: Hunt, build: Build, place: number | undefined): boolean {
  if (place === undefined) return false;
  return groupAt(hunt.forest[place] as OptionTree, build[place] as number).options.length > WIDE;
}

/** Tightens the bound of what has come to its turn; then splits it, or works it out if it is a single build. */
export function look(hunt: Hunt, first: Waiting): void {
  const { build, value, promised, tight } = first;
  const widest = widestPlace(hunt, build);
  if (!tight && !isWide(hunt, build, widest)) {
    wait(hunt, build, hunt.promises.fine(build, promised, toBeat(hunt)), true, value);
    return;
  }
  if (widest !== undefined) {
    split(hunt, first, widest);
    return;
  }
  const { energies } = promised;
  const bound = hunt.monotone ? tooWarm(hunt, build, energies) : null;
  if (bound) putOut(hunt, bound, build);
  else solve(hunt, build, Float64Array.from(energies));
}
