import type TinyQueue from 'tinyqueue';
import type { Build, Duty, Enclosure } from '../enclosure/enclosure.ts';
import type { Plant } from '../enclosure/machine.ts';
import type { Decibels } from '../quantities/dimensions.ts';
import type { DemandOnBuilds } from './asks/demand-on-builds.ts';
import { ASK_REASONS } from './asks/reasons.ts';
import type { Wishes, WishOptions } from './asks/wishes.ts';
import { workOut } from './asks/work-out.ts';
import { coolingAllowance, coolTrials } from './cooling-bound.ts';
import type { ShortList } from './list.ts';
import type { Objective } from './objective.ts';
import { groupAt, type OptionForest, type OptionTree } from './option-tree.ts';
import type { Promised, Promises } from './promise.ts';
import type { Round } from './round.ts';
import { buildsIn, isWide, widestPlace } from './space.ts';

/** What is asked of a search. */
export interface SearchOptions extends WishOptions {
  /** Length of the list [-], ≥ 1. */
  readonly top: number;
  /** Builds quieter by no more than this may be left out [dB]. */
  readonly gap: Decibels;
  /** What builds must meet beyond their limits; nothing if absent. */
  readonly demand?: DemandOnBuilds;
}

/** Why builds were put out: by a bound, or because something else is asked. */
export const BOUNDS = [
  'too weak at full speed',
  'too loud for the air it must move',
  'too warm at full speed',
  'too warm at speeds quiet enough',
  ...ASK_REASONS,
] as const;
export type Bound = (typeof BOUNDS)[number];

/** How closely a set has been looked at. */
export type Seen = 'not yet' | 'at first' | 'closely';

/** A build, or a set of builds with places still open, that waits for its turn. */
export interface Waiting {
  readonly build: Build;
  /** Lower bound of its energy as the objective has it, at 1 m [-]. */
  readonly value: number;
  /** What it costs at least; 0 where the ranking goes by the level. */
  readonly cost: number;
  readonly promised: Promised;
  readonly seen: Seen;
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
  readonly wishes: Wishes;
  readonly promises: Promises;
  readonly forest: OptionForest;
  readonly options: SearchOptions;
  readonly list: ShortList;
  readonly waiting: TinyQueue<Waiting>;
  /** Builds put aside to be worked out together. */
  readonly pile: Waiting[];
  /** Builds that are being worked out, first begun first. */
  readonly begun: Round[];
  /** Sets of the round under way. */
  asked: readonly Waiting[];
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

/** A build or a set with what is known of it, or of a set that holds it. */
type Named = Pick<Waiting, 'build' | 'promised'>;

/** Energy at 1 m, as the objective has it, that a build, or all of a set, must stay below [-]. */
export function toBeat({ list, spreading, wishes }: Hunt, { build, promised }: Named): number {
  const { byLevel, cap } = wishes;
  if (byLevel) return Math.min(cap, list.toBeat()) * spreading;
  return wishes.costOf(build, promised) > list.toBeat() ? 0 : cap * spreading;
}

/** Why a set that promises so much energy at 1 m is out, if it is [-]. */
function beatenBy(hunt: Hunt, set: Named, value: number): Bound | null {
  if (value === Number.POSITIVE_INFINITY) return 'too weak at full speed';
  if (value < toBeat(hunt, set)) return null;
  if (value >= hunt.wishes.cap * hunt.spreading) return 'louder than asked';
  return hunt.wishes.byLevel ? 'too loud for the air it must move' : 'beyond the end of the list';
}

/** Puts a build, or all of a set, out by a bound. */
export function putOut(hunt: Hunt, bound: Bound, build: Build): void {
  const builds = buildsIn(hunt.forest, build);
  hunt.open -= builds;
  hunt.ruledOut.set(bound, (hunt.ruledOut.get(bound) ?? 0) + builds);
}

/** Lets a build wait for its turn unless its bound already puts it out; `atLeast` is what its set promised. */
export function wait(hunt: Hunt, build: Build, promised: Promised, seen: Seen, atLeast: number): void {
  const value = Math.max(atLeast, hunt.objective.energyOf(hunt.enclosure, promised.energies));
  const bound =
    (seen === 'not yet' && hunt.wishes.broken(build)) || beatenBy(hunt, { build, promised }, value);
  if (bound) putOut(hunt, bound, build);
  else {
    const cost = hunt.wishes.costOf(build, promised);
    hunt.waiting.push({ build, value, cost, promised, seen, arrival: hunt.arrivals });
    hunt.arrivals += 1;
  }
}

/** Splits a set by the groups of one of its bank places. */
function split(hunt: Hunt, { build, value, promised }: Waiting, place: number): void {
  const { parts } = groupAt(hunt.forest[place] as OptionTree, build[place] as number);
  for (const part of parts) {
    const child = build.with(place, part);
    const broken = hunt.wishes.broken(child);
    if (broken) putOut(hunt, broken, child);
    else {
      const enough = toBeat(hunt, { build: child, promised });
      wait(hunt, child, hunt.promises.coarse(child, promised, enough), 'at first', value);
    }
  }
}

/** Which cooling bound puts a build out, if one does. */
function tooWarm(hunt: Hunt, set: Named): Bound | null {
  const { build } = set;
  const { energies } = set.promised;
  const trials = coolTrials(hunt.coolPlant, build);
  let bound: Bound | null = null;
  for (const duty of hunt.duties) {
    const allowed = hunt.objective.budgetOf(hunt.enclosure, energies, duty, toBeat(hunt, set));
    const point = trials.coolestWithin(duty, allowed);
    // A pass without a solution proves nothing: such a build is worked out instead.
    const allowance = coolingAllowance(hunt.plant, hunt.enclosure.duties[duty] as Duty);
    if (!point || (!point.failure && point.worst > allowance)) {
      const unlimited = allowed === Number.POSITIVE_INFINITY;
      bound = unlimited ? 'too warm at full speed' : 'too warm at speeds quiet enough';
      break;
    }
  }
  hunt.passes += trials.passes();
  return bound;
}

/** Works a single build out. */
function solve(hunt: Hunt, set: Named): void {
  const { build, promised } = set;
  const found = workOut(hunt, build, Float64Array.from(promised.energies), toBeat(hunt, set));
  if (typeof found === 'string') {
    putOut(hunt, found, build);
    return;
  }
  hunt.solved += 1;
  hunt.open -= 1;
  if (found) hunt.list.insert(found);
}

/** Tightens the bound of what has come to its turn; then splits it, or works it out if it is a single build. */
export function look(hunt: Hunt, first: Waiting): void {
  const { build, value, promised, seen } = first;
  const widest = widestPlace(hunt.forest, hunt.banks, build);
  if (seen === 'not yet') {
    wait(hunt, build, hunt.promises.coarse(build, promised, toBeat(hunt, first)), 'at first', value);
    return;
  }
  if (seen === 'at first' && !isWide(hunt.forest, build, widest)) {
    wait(hunt, build, hunt.promises.fine(build, promised, toBeat(hunt, first)), 'closely', value);
    return;
  }
  if (widest !== undefined) {
    split(hunt, first, widest);
    return;
  }
  const bound = (hunt.monotone && tooWarm(hunt, first)) || hunt.wishes.fallen(build);
  if (bound) putOut(hunt, bound, build);
  else solve(hunt, first);
}
