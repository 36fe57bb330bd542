import TinyQueue from 'tinyqueue';
import { type Enclosure, OUTSIDE } from '../enclosure/enclosure.ts';
import { type Plant, plantOf } from '../enclosure/machine.ts';
import type { Decibels } from '../quantities/dimensions.ts';
import { levelOf } from '../sound/levels.ts';
import { findAny } from './any-build.ts';
import { levelFor, rankedBy } from './asks/goal.ts';
import { createWishes, withCostPromises, withWishes } from './asks/wishes.ts';
import { coolPlantOf } from './cooling-bound.ts';
import { BOUNDS, type Bound, type Hunt, type SearchOptions, type Waiting, wait } from './hunt.ts';
import { bankPlaces } from './leg-banks.ts';
import { type Candidate, newShortList } from './list.ts';
import { type Finding, lookAlone } from './look-alone.ts';
import { fasterIsCooler } from './monotone-airway.ts';
import type { Objective } from './objective.ts';
import { optionForest } from './option-tree.ts';
import { createPromises } from './promise.ts';
import type { RankedBy } from './ranking.ts';
import { nextRound, type Round, take } from './round.ts';
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
  /** Does one more round; false once nothing is left to look at. */
  readonly step: () => boolean;
  /** One more round, to be done by anybody; null once nothing is left. */
  readonly round: () => Round | null;
  /** Looks at one set of a round. */
  readonly look: (set: Waiting, toBeat: number) => Finding;
  /** Takes in what was found of a whole round, in its order, before the next one is asked for; nothing of one begun. */
  readonly take: (findings: readonly Finding[]) => void;
  /** Best builds so far, quietest first. */
  readonly best: () => readonly Candidate[];
  /** Works out a build to show, if a search that was stopped has found none; nothing is proved by it. */
  readonly findAny: () => void;
  readonly counts: () => SearchCounts;
  readonly plant: Plant;
  readonly monotone: boolean;
  readonly objective: Objective;
  readonly ranked: RankedBy;
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

function step(hunt: Hunt): boolean {
  const round = nextRound(hunt);
  if (!round) return false;
  if (round.task === 'begin') return true;
  take(
    hunt,
    round.sets.map((first) => lookAlone(hunt, first, round.toBeat)),
  );
  return true;
}

/** What a build not yet worked out might still gain on the last of the list [dB]. */
function gapNow({ waiting, asked, pile, begun, options, list, spreading, wishes }: Hunt): Decibels {
  const first = waiting.peek();
  const waits = [...asked, ...pile, ...begun.flatMap(({ sets }) => sets), ...(first ? [first] : [])];
  if (waits.length === 0) return options.gap;
  const promised = Math.min(...waits.map(({ value }) => value));
  const last = list.candidates[options.top - 1];
  if (!last || !wishes.byLevel) return Number.POSITIVE_INFINITY;
  return Math.max(options.gap, levelOf(last.energy * spreading) - levelOf(promised));
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
  const enclosure = withWishes(options.demand?.atLeast ?? scenario, options);
  const space = spaceSize(enclosure);
  const plant = plantOf(enclosure);
  const { by = 'mean', duty } = options;
  const objective = levelFor(enclosure, by, duty);
  const forest = optionForest(enclosure);
  const wishes = createWishes(enclosure, forest, by);
  const promises = createPromises(enclosure, plant, objective, forest);
  const hunt: Hunt = {
    enclosure,
    plant,
    coolPlant: coolPlantOf(enclosure),
    monotone: fasterIsCooler(plant),
    objective,
    wishes,
    promises: withCostPromises(promises, enclosure, forest, by),
    forest,
    options,
    list: newShortList(options.top, options.gap, wishes.byLevel),
    pile: [],
    begun: [],
    asked: [],
    waiting: new TinyQueue<Waiting>(
      [],
      (a, b) => a.cost - b.cost || a.value - b.value || a.arrival - b.arrival,
    ),
    ruledOut: new Map(BOUNDS.map((name) => [name, 0])),
    banks: bankOrder(enclosure),
    duties: dutyOrder(enclosure),
    spreading: enclosure.listener.distance ** 2,
    arrivals: 0,
    open: space,
    solved: 0,
    passes: 0,
  };
  for (const set of elementSets(enclosure)) wait(hunt, set, hunt.promises.none, 'not yet', 0);
  return {
    step: () => step(hunt),
    round: () => nextRound(hunt),
    look: (set, beat) => lookAlone(hunt, set, beat),
    take: (findings) => take(hunt, findings),
    best: () => hunt.list.candidates,
    findAny: () => findAny(hunt),
    counts: () => ({
      space,
      solved: hunt.solved,
      ruledOut: hunt.ruledOut,
      open: hunt.open,
      passes: hunt.passes,
      gap: gapNow(hunt),
    }),
    plant: options.demand ? plantOf(withWishes(scenario, options)) : plant,
    monotone: hunt.monotone,
    objective,
    ranked: rankedBy(enclosure, options),
    asked: options.top,
  };
}
