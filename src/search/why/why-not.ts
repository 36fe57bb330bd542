import type { Enclosure, NamedBuild } from '../../enclosure/enclosure.ts';
import { withLostFans } from '../../enclosure/lost-fans.ts';
import { assemble, plantOf } from '../../enclosure/machine.ts';
import type { BuildOutcome } from '../../enclosure/outcome.ts';
import type { Decibels, KelvinDifference, Watts } from '../../quantities/dimensions.ts';
import { energy } from '../../sound/levels.ts';
import { leastPowerSpeeds } from '../asks/least-power.ts';
import { type FailedBuild, isFailed, outcomeAt } from '../build-outcome.ts';
import { fasterIsCooler } from '../monotone-airway.ts';
import type { RankedBuild } from '../ranking.ts';
import type { Search } from '../search.ts';
import { type SolvedBuild, solveBuild } from '../solve-build.ts';
import { createTrial } from '../trial.ts';
import { type BrokenAsk, brokenAsks } from './broken-asks.ts';

/** What a build has more of than the first of the list; negative where it has less. */
export interface Difference {
  readonly level: Decibels;
  /** Undefined if a price is unknown. */
  readonly price: number | undefined;
  /** Mean over time [W]. */
  readonly fanPower: Watts;
  readonly depth: number;
  /** Margin at full speed [K]. */
  readonly reserve: KelvinDifference;
}

/** Why a build is not the first of the list. */
export interface WhyNot {
  readonly name: string;
  readonly build: BuildOutcome | FailedBuild;
  /** Its row in the list; absent if it has none. */
  readonly row?: number;
  /** What is asked and not so. */
  readonly broken: readonly BrokenAsk[];
  /** Level of the kind that counts [dB]; absent if it is not adequate. */
  readonly level?: Decibels;
  /** Against the first of the list; absent if there is none or the build is not adequate. */
  readonly more?: Difference;
}

/** The speeds the ranking would give a build, by duty [-]. */
function speedsOf(search: Search, solved: SolvedBuild): readonly Float64Array[] {
  const { goal, cap } = search.ranked;
  const monotone = fasterIsCooler(solved.machine.plant);
  return solved.duties.map(({ duty, point, adequate }) => {
    if (goal !== 'power' || !adequate) return point.ratios;
    const allowed = cap === undefined ? Number.POSITIVE_INFINITY : energy(cap);
    const trial = createTrial(solved.machine, duty);
    return leastPowerSpeeds(trial, monotone, allowed)?.ratios ?? point.ratios;
  });
}

function differenceTo(
  { objective }: Search,
  outcome: BuildOutcome,
  { outcome: first }: RankedBuild,
): Difference {
  const { price, depth } = outcome.build;
  const known = price !== undefined && first.build.price !== undefined;
  return {
    level: objective.levelOf(outcome) - objective.levelOf(first),
    price: known ? price - (first.build.price as number) : undefined,
    fanPower: outcome.fanPower - first.fanPower,
    depth: depth - first.build.depth,
    reserve: outcome.reserve - first.reserve,
  };
}

/**
 * Why a build is not the first of a list: what it breaks, and what it has more of than the first. It is solved by itself,
 * whatever became of it in the search.
 *
 * @param search that was made; its scenario holds what is asked
 * @param rows of its list
 * @param named the build
 */
export function whyNot(search: Search, rows: readonly RankedBuild[], named: NamedBuild): WhyNot {
  const { id: name, options, lost = [] } = named;
  const enclosure: Enclosure = withLostFans(search.plant.enclosure, options, lost);
  const solved = solveBuild(assemble(plantOf(enclosure), options), search.monotone);
  const speeds = speedsOf(search, solved);
  const outcome = outcomeAt(solved.machine, speeds, solved.reserve);
  if (isFailed(outcome)) {
    return { name, build: outcome, broken: brokenAsks(solved.machine, speeds, undefined) };
  }
  const [first] = rows;
  const level = outcome.adequate ? search.objective.levelOf(outcome) : undefined;
  const row =
    lost.length > 0 ? undefined : rows.find(({ outcome: { build } }) => alike(build.options, options));
  return {
    name,
    build: outcome,
    ...(row ? { row: row.rank } : {}),
    broken: brokenAsks(solved.machine, speeds, level),
    ...(level === undefined ? {} : { level }),
    ...(first && level !== undefined ? { more: differenceTo(search, outcome, first) } : {}),
  };
}

function alike(one: readonly number[], other: readonly number[]): boolean {
  return one.every((option, place) => option === other[place]);
}
