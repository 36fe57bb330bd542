import type { LimitKind } from '../enclosure/enclosure.ts';
import type { BuildOutcome } from '../enclosure/outcome.ts';
import type { Decibels, KelvinDifference } from '../quantities/dimensions.ts';
import type { Goal } from './asks/goal.ts';

/** How the builds of a space fared. */
export interface SearchCount {
  /** Builds in the space. */
  readonly space: number;
  /** Builds whose quietest speeds were worked out. */
  readonly solved: number;
  /** Builds put out, by the reason: without that, but for those that are refused at the speeds found for them. */
  readonly ruledOut: readonly { readonly bound: string; readonly builds: number }[];
  /** Builds not looked at because the search was stopped. */
  readonly open: number;
  /** Nothing left out is quieter than the list by more than this [dB]. */
  readonly gap: Decibels;
  /** Passes of air and heat made. */
  readonly passes: number;
}

/** One row of a ranking. */
export interface RankedBuild {
  /** Place in the list, from 1. */
  readonly rank: number;
  /** Number of the group of ties the row belongs to, from 1: within a group levels differ by less than a tie. */
  readonly tie: number;
  readonly outcome: BuildOutcome;
}

/** The build that comes closest where none is adequate. */
export interface NearestMiss {
  readonly outcome: BuildOutcome;
  readonly duty: string;
  readonly part: string;
  readonly of: LimitKind;
  /** Kelvin over the limit, asked margin included. */
  readonly over: KelvinDifference;
  /** Why the part is refused whatever its limits; absent if a limit is all it breaks. */
  readonly reason?: string;
}

/** What a ranking goes by. */
export interface RankedBy {
  readonly goal: Goal;
  /** The only duty whose level counts; all that last if absent. */
  readonly duty?: string;
  /** Highest level that was asked for [dB]; any if absent. */
  readonly cap?: Decibels;
}

/** Answer of a search. */
export interface Ranking {
  readonly title: string;
  readonly rows: readonly RankedBuild[];
  /** What it goes by; the mean level over time if absent. */
  readonly by?: RankedBy;
  /** Length of the list that was asked for [-]. */
  readonly asked: number;
  readonly count: SearchCount;
  /** Only if no row is adequate. */
  readonly nearestMiss?: NearestMiss;
  /** False if the search was stopped before the end. */
  readonly complete: boolean;
}
