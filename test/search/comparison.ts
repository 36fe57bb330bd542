import type { Build, Enclosure } from '../../src/enclosure/enclosure.ts';
import { assemble } from '../../src/enclosure/machine.ts';
import { beginSearch, type Search } from '../../src/search/search.ts';
import { solveBuild } from '../../src/search/solve-build.ts';
import { levelOf } from '../../src/sound/levels.ts';
import { type Fineness, type Found, rankedByForce } from './brute-force.ts';
import { holds, probeOf } from './probe.ts';

/** The search may be this much louder than what trying everything finds [dB]. */
export const AGREED = 0.01;
const GAP = 0.001;

/** One place of the list on which search and brute force do not agree. */
export interface Disagreement {
  /** Place in the list, from 1. */
  readonly place: number;
  readonly what: 'search is louder' | 'search misses a build' | 'search is quieter than it can be';
  /** Levels at the listener [dB]. */
  readonly searched: number;
  readonly forced: number;
  /** Builds at that place. */
  readonly builds: { readonly searched: Build | null; readonly forced: Build | null };
}

/** A disagreement in one line. */
export function inWords({ place, what, searched, forced, builds }: Disagreement): string {
  const options = (build: Build | null): string => build?.join(' ') ?? 'none';
  const mine = `${searched.toFixed(3)} dB [${options(builds.searched)}]`;
  return `place ${place}, ${what}: ${mine} against ${forced.toFixed(3)} dB [${options(builds.forced)}]`;
}

/** What came of one enclosure. */
export interface Comparison {
  readonly search: Search;
  readonly forced: readonly Found[];
  readonly disagreements: readonly Disagreement[];
  /** Most by which the search is quieter at any place [dB]: what the lattices missed. */
  readonly gained: number;
}

/** A search run to its end. */
function searched(enclosure: Enclosure, top: number): Search {
  const search = beginSearch(enclosure, { top, gap: GAP });
  while (search.step());
  return search;
}

/** Level of a build at the speeds the search settles at, passed afresh; infinite if a limit is broken [dB]. */
function reachedLevel(search: Search, build: Build): number {
  const machine = assemble(search.plant, build);
  let sum = 0;
  for (const { duty, point } of solveBuild(machine, search.monotone).duties) {
    const sample = probeOf(machine, duty).at(point.ratios.map(Math.log));
    // The search holds limits to the accuracy of its own passes.
    if (!holds({ ...sample, worst: sample.worst - 3e-5 })) return Number.POSITIVE_INFINITY;
    sum += duty.share * sample.energy;
  }
  return levelOf(sum);
}

/**
 * Compares the list of the search with that of brute force, place by place.
 *
 * @param enclosure the scenario
 * @param top length of the lists
 * @param fineness of the brute force
 */
export function compare(enclosure: Enclosure, top: number, fineness: Fineness): Comparison {
  const search = searched(enclosure, top);
  const list = search.best();
  const forced = rankedByForce(enclosure, top, fineness);
  const disagreements: Disagreement[] = [];
  let gained = 0;
  for (let index = 0; index < top; index++) {
    const mine = list[index];
    const theirs = forced[index];
    const levels = {
      searched: mine ? levelOf(mine.energy) : Number.POSITIVE_INFINITY,
      forced: theirs ? levelOf(theirs.energy) : Number.POSITIVE_INFINITY,
    };
    const note = (what: Disagreement['what']): void => {
      const builds = { searched: mine?.build ?? null, forced: theirs?.build ?? null };
      disagreements.push({ place: index + 1, what, ...levels, builds });
    };
    if (theirs && !mine) note('search misses a build');
    else if (theirs && levels.searched > levels.forced + AGREED) note('search is louder');
    else if (mine && levels.searched < levels.forced) {
      gained = Math.max(gained, levels.forced - levels.searched);
      const doubted = levels.searched < levels.forced - AGREED / 2;
      if (doubted && reachedLevel(search, mine.build) > levels.searched + AGREED) {
        note('search is quieter than it can be');
      }
    }
  }
  return { search, forced, disagreements, gained };
}
