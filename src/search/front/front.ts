import type { Asks } from '../../enclosure/asks.ts';
import { depthOf, priceOf } from '../../enclosure/build-costs.ts';
import type { Enclosure } from '../../enclosure/enclosure.ts';
import type { BuildOutcome } from '../../enclosure/outcome.ts';
import type { Decibels, KelvinDifference } from '../../quantities/dimensions.ts';
import type { WishOptions } from '../asks/wishes.ts';
import type { SearchOptions } from '../hunt.ts';
import type { Objective } from '../objective.ts';
import { rankingOf } from '../rank.ts';
import type { RankedBy } from '../ranking.ts';
import { beginSearch, type Search } from '../search.ts';
import type { FrontAxis } from './front-axis.ts';

/** What is asked of a front. */
export interface FrontOptions extends WishOptions {
  readonly against: FrontAxis;
  /** Steps of the margin [K], > 0. */
  readonly step: KelvinDifference;
  /** Most rows [-], ≥ 1. */
  readonly most: number;
  /** Gap of the proof [dB]. */
  readonly gap: Decibels;
}

/** A build that no other beats in both respects. */
export interface FrontRow {
  readonly outcome: BuildOutcome;
  /** Level of the kind that counts [dB]. */
  readonly level: Decibels;
  /** Its price, its depth [m] or its least margin [K]; infinite without limits. */
  readonly value: number;
}

/** How noise trades against something else. */
export interface Front {
  readonly title: string;
  readonly against: FrontAxis;
  /** Quietest first. */
  readonly rows: readonly FrontRow[];
  /** Whether it goes on to the end: false if it was cut at the most rows, or stopped. */
  readonly complete: boolean;
  /** Whether a search was stopped before its end: what comes after the last row is not known. */
  readonly stopped: boolean;
  readonly by: RankedBy | undefined;
  readonly gap: Decibels;
  readonly step: KelvinDifference;
  /** Builds in the space. */
  readonly space: number;
  /** Searches made. */
  readonly searches: number;
}

/** A front under way. */
export interface FrontWork {
  /** What the next search is asked; null once there is none to make. */
  readonly next: () => (WishOptions & Pick<SearchOptions, 'top' | 'gap'>) | null;
  /** Takes the answer of the search that was asked for; `finished` unless it was stopped. */
  readonly take: (search: Search, finished: boolean) => void;
  readonly front: () => Front;
}

/** A price no fan has; builds with fans of unknown price are dearer. */
const ANY_PRICE = 1e15;
/** Room below a value to get to the next smaller one [-]. */
const BELOW = 1e-6;

/** Least margin over all duties [K]. */
function marginOf({ duties }: BuildOutcome): KelvinDifference {
  return duties.reduce((least, { tightest }) => Math.min(least, tightest?.margin ?? least), Infinity);
}

function valueFor(enclosure: Enclosure, against: FrontAxis, outcome: BuildOutcome): number {
  const { options } = outcome.build;
  if (against === 'price') return priceOf(enclosure, options);
  return against === 'depth' ? depthOf(enclosure, options) : marginOf(outcome);
}

/** The asks with all fans no deeper in any leg. */
function noDeeper(enclosure: Enclosure, asks: Asks, most: number): Asks {
  const own = new Map(asks.depths?.map((each) => [each.leg, each.most]));
  const depths = enclosure.legs.map((_, leg) => ({ leg, most: Math.min(most, own.get(leg) ?? most) }));
  return { ...asks, depths };
}

/** What is asked next to get beyond a row; of the first search, nothing new. */
function tightened(
  enclosure: Enclosure,
  { against, step, asks, margin }: FrontOptions,
  last: FrontRow | undefined,
): Pick<WishOptions, 'asks' | 'margin'> | null {
  const asked = { ...enclosure.asks, ...asks };
  // Nothing is cheaper than what is free, nor less deep than no fans.
  if (last && against !== 'margin' && last.value <= 0) return null;
  const most = last && last.value * (1 - BELOW);
  if (against === 'price') return { asks: { ...asked, price: most ?? asked.price ?? ANY_PRICE } };
  if (against === 'depth') return { asks: most === undefined ? asked : noDeeper(enclosure, asked, most) };
  const least = margin ?? enclosure.margin;
  if (last?.value === Number.POSITIVE_INFINITY) return null;
  return { asks: asked, margin: last ? Math.max(least, last.value) + step : least };
}

/**
 * Begins a front: searches for the quietest build one after the other, each with the other respect asked to be better
 * than that of the last build found, until there is none. Every row is proved like the first row of a ranking: nothing
 * that is as good in the other respect is quieter.
 *
 * @param enclosure the scenario
 * @param options what is weighed, and what is asked beside it
 */
export function beginFront(enclosure: Enclosure, options: FrontOptions): FrontWork {
  const { against, step, most, gap } = options;
  const found: FrontRow[] = [];
  let state: 'going' | 'complete' | 'stopped' = 'going';
  let searches = 0;
  let space = 0;
  let by: RankedBy | undefined;

  const take = (search: Search, finished: boolean): void => {
    searches += 1;
    space = search.counts().space;
    by = search.ranked;
    if (!finished) state = 'stopped';
    else if (search.best().length === 0) state = 'complete';
    if (state !== 'going') return;
    const [row] = rankingOf(search).rows;
    if (row) found.push(rowOf(enclosure, against, search.objective, row.outcome));
    else state = 'stopped';
  };

  return {
    next: () => {
      if (state !== 'going' || rowsOf(found).length > most) return null;
      const asked = tightened(enclosure, options, found.at(-1));
      if (!asked) state = 'complete';
      const { by: goal, duty } = options;
      const ranked = { ...(goal ? { by: goal } : {}), ...(duty === undefined ? {} : { duty }) };
      return asked && { top: 1, gap, ...ranked, ...asked };
    },
    take,
    front: () => {
      const rows = rowsOf(found);
      return {
        title: enclosure.title,
        against,
        rows: rows.slice(0, most),
        complete: state === 'complete' && rows.length <= most,
        stopped: state === 'stopped',
        by,
        gap,
        step,
        space,
        searches,
      };
    },
  };
}

function rowOf(
  enclosure: Enclosure,
  against: FrontAxis,
  objective: Objective,
  outcome: BuildOutcome,
): FrontRow {
  return { outcome, level: objective.levelOf(outcome), value: valueFor(enclosure, against, outcome) };
}

/** Rows that no later one beats: each later one is better in the other respect. */
function rowsOf(found: readonly FrontRow[]): readonly FrontRow[] {
  return found.filter((row, index) => found.slice(index + 1).every((later) => later.level > row.level));
}

/**
 * How noise trades against price, depth or margin.
 *
 * @param enclosure the scenario
 * @param options what is weighed, and what is asked beside it
 */
export function front(enclosure: Enclosure, options: FrontOptions): Front {
  const work = beginFront(enclosure, options);
  for (let asked = work.next(); asked; asked = work.next()) {
    const search = beginSearch(enclosure, asked);
    while (search.step());
    work.take(search, true);
  }
  return work.front();
}
