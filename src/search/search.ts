import TinyQueue from 'tinyqueue';
import { type Enclosure, OUTSIDE } from '../enclosure/enclosure.ts';
import { type Plant, plantOf } from '../enclosure/machine.ts';
import type { Decibels } from '../quantities/dimensions.ts';
import { levelOf } from '../sound/levels.ts';
import { coolPlantOf } from './cooling-bound.ts';
import {
  BOUNDS,
  type Bound,
  type Hunt,
  look,
  putOut,
  type SearchOptions,
  toBeat,
  type Waiting,
  wait,
} from './hunt.ts';
import { bankPlaces } from './leg-banks.ts';
import { type Candidate, newShortList } from './list.ts';
import { fasterIsCooler } from './monotone-airway.ts';
import { OBJECTIVES, type Objective } from './objective.ts';
import { optionForest } from './option-tree.ts';
import { createPromises } from './promise.ts';
import { elementSets, spaceSize } from './space.ts';

export const SEARCH_OPTIONS: SearchOptions = { top: 10, gap: 0.01 };

/** How a search stands. */
export interface SearchCounts {
  readonly space: number;
  readonly solved: number;
  readonly ruledOut: ReadonlyMap<Bound, number>;
  readonly open: number;
  readonly passes: number;
  /** Nothing left out is quieter than the last of the list by more than this [dB]. */
  readonly gap: Decibels;
}

/** A search under way. */
export interface Search {
  /** Looks at one more set of builds; false once nothing is left to look at. */
  readonly step: () => boolean;
  /** Best builds so far, quietest first. */
  readonly best: () => readonly Candidate[];
  readonly counts: () => SearchCounts;
  readonly plant: Plant;
  readonly monotone: boolean;
  readonly objective: Objective;
  /** Length of the list that was asked for [-]. */
  readonly asked: number;
}

/** Bank places, legs that blow out first: they have the fewest. */
function bankOrder(enclosure: Enclosure): readonly number[] {
  const legs = [...enclosure.legs].sort((a, b) => Number(a.to !== OUTSIDE) - Number(b.to !== OUTSIDE));
  return legs.flatMap((leg) => bankPlaces(enclosure, leg));
}

/** Duties without a share first: they only have to be survived, which is soon told. */
function dutyOrder(enclosure: Enclosure): readonly number[] {
  return enclosure.duties
    .map((duty, index) => ({ share: duty.share, index }))
    .sort((a, b) => a.share - b.share || a.index - b.index)
    .map(({ index }) => index);
}

/** Nothing that waits can do better than the list. */
function putOutRest(hunt: Hunt): void {
  for (const { build } of hunt.waiting.data) putOut(hunt, 'too loud for the air it must move', build);
  hunt.waiting.data.length = 0;
  hunt.waiting.length = 0;
}

function step(hunt: Hunt): boolean {
  const first = hunt.waiting.peek();
  if (!first) return false;
  if (first.value >= toBeat(hunt)) {
    putOutRest(hunt);
    return false;
  }
  hunt.waiting.pop();
  look(hunt, first);
  return true;
}

/** What a build not yet worked out might still gain on the last of the list [dB]. */
function gapNow({ waiting, options, list, spreading }: Hunt): Decibels {
  const promised = waiting.peek();
  if (!promised) return options.gap;
  const last = list.candidates[options.top - 1];
  if (!last) return Number.POSITIVE_INFINITY;
  return Math.max(options.gap, levelOf(last.energy * spreading) - levelOf(promised.value));
}

/**
 * Begins the search for the quietest adequate builds of an enclosure.
 *
 * Best first branch and bound: sets of builds wait in the order of a lower bound of their noise. When their turn
 * comes the bound is made tight, then the set is split by the next bank place; the speeds of a single build are
 * worked out only when nothing else promises less noise. The search ends when the least promise is no better
 * than the last of the full list. Where faster is always cooler, a build is also put out if it is too warm with
 * every bank as loud as the list allows.
 *
 * @param scenario the scenario
 * @param options length of the list [-], gap [dB], what the ranking goes by and what is demanded
 */
export function beginSearch(scenario: Enclosure, options: SearchOptions = SEARCH_OPTIONS): Search {
  // What meets a demand holds the limits of its own enclosure, so whatever these rule out is out.
  const enclosure = options.demand?.atLeast ?? scenario;
  const space = spaceSize(enclosure);
  const plant = plantOf(enclosure);
  const objective = OBJECTIVES[options.by ?? 'mean'];
  const forest = optionForest(enclosure);
  const hunt: Hunt = {
    enclosure,
    plant,
    coolPlant: coolPlantOf(enclosure),
    monotone: fasterIsCooler(plant),
    objective,
    promises: createPromises(enclosure, plant, objective, forest),
    forest,
    options,
    list: newShortList(options.top, options.gap),
    waiting: new TinyQueue<Waiting>([], (a, b) => a.value - b.value || a.arrival - b.arrival),
    ruledOut: new Map(BOUNDS.map((name) => [name, 0])),
    banks: bankOrder(enclosure),
    duties: dutyOrder(enclosure),
    spreading: enclosure.listener.distance ** 2,
    arrivals: 0,
    open: space,
    solved: 0,
    passes: 0,
  };
  for (const set of elementSets(enclosure)) {
    wait(hunt, set, hunt.promises.coarse(set, hunt.promises.none, Number.POSITIVE_INFINITY), false, 0);
  }
  return {
    step: () => step(hunt),
    best: () => hunt.list.candidates,
    counts: () => ({
      space,
      solved: hunt.solved,
      ruledOut: hunt.ruledOut,
      open: hunt.open,
      passes: hunt.passes,
      gap: gapNow(hunt),
    }),
    plant: options.demand ? plantOf(scenario) : plant,
    monotone: hunt.monotone,
    objective,
    asked: options.top,
  };
}
