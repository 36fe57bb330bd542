import { confidenceDemand } from '../bands/confidence.ts';
import type { Enclosure } from '../enclosure/enclosure.ts';
import type { Goal } from '../search/asks/goal.ts';
import type { WishOptions } from '../search/asks/wishes.ts';
import { beginSearch, type Search } from '../search/search.ts';

/** What a user asks of a search: plain data, so that it can be handed to another thread. */
export interface AskedSearch extends WishOptions {
  /** Length of the list [-]. */
  readonly top: number;
  /** Builds quieter by no more than this may be left out [dB]. */
  readonly gap: number;
  /** Least probability of holding all limits [%]; speeds just hold them if absent. */
  readonly confidence?: number | undefined;
}

/** What `rank` is told of the search on the command line. */
export interface SearchWords {
  readonly top: number;
  readonly gap: number;
  readonly by: Goal;
  /** Name of the only duty whose level counts. */
  readonly byDuty: string | undefined;
  /** Highest level [dB]. */
  readonly levelCap: number | undefined;
  readonly confidence: number | undefined;
}

/** The same as plain data. */
export function askedOf({ top, gap, by, byDuty, levelCap, confidence }: SearchWords): AskedSearch {
  return {
    top,
    gap,
    by,
    ...(byDuty === undefined ? {} : { duty: byDuty }),
    ...(levelCap === undefined ? {} : { asks: { level: levelCap } }),
    confidence,
  };
}

/** Begins the search that was asked for. */
export function searchFor(enclosure: Enclosure, { confidence, ...options }: AskedSearch): Search {
  if (confidence === undefined) return beginSearch(enclosure, options);
  return beginSearch(enclosure, { ...options, demand: confidenceDemand(enclosure, confidence / 100) });
}
