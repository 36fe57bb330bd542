import type { Duty, Enclosure } from '../enclosure/enclosure.ts';
import { assemble } from '../enclosure/machine.ts';
import type { BuildOutcome } from '../enclosure/outcome.ts';
import { isByLevel } from './asks/goal.ts';
import { ASK_REASONS } from './asks/reasons.ts';
import { isFailed, outcomeAt } from './build-outcome.ts';
import type { SearchOptions } from './hunt.ts';
import type { Candidate } from './list.ts';
import { nearestMiss } from './nearest-miss.ts';
import type { Objective } from './objective.ts';
import { quietestSpeeds } from './quietest-speeds.ts';
import type { NearestMiss, RankedBuild, Ranking } from './ranking.ts';
import { beginSearch, SEARCH_OPTIONS, type Search, type SearchCounts } from './search.ts';
import { createTrial, fullSpeed } from './trial.ts';

/** Works out what a row shows beyond its level: duties without a share, and the reserve at full speed. */
function outcomeOf(search: Search, candidate: Candidate): BuildOutcome | null {
  const { plant, monotone } = search;
  const machine = assemble(plant, candidate.build);
  let reserve = Number.POSITIVE_INFINITY;
  const ratios = plant.enclosure.duties.map((duty: Duty, index) => {
    const trial = createTrial(machine, duty);
    reserve = Math.min(reserve, -trial.evaluate(fullSpeed(trial)).warmest);
    const known = candidate.speeds[index];
    if (known) return known;
    const { best, coolest } = quietestSpeeds(trial, monotone);
    return (best ?? coolest).ratios;
  });
  const outcome = outcomeAt(machine, ratios, reserve);
  return isFailed(outcome) ? null : outcome;
}

/** Order inside a tie: more reserve, then fewer fans, then the lower price, then the lower level. */
function compareTied(first: BuildOutcome, second: BuildOutcome): number {
  return (
    Math.round(second.reserve) - Math.round(first.reserve) ||
    first.build.fanCount - second.build.fanCount ||
    (first.build.price ?? Number.MAX_VALUE) - (second.build.price ?? Number.MAX_VALUE) ||
    first.level - second.level
  );
}

/** Rows in groups of ties: a group holds what is less than a tie above its quietest. */
function rowsOf(
  outcomes: readonly BuildOutcome[],
  tie: number,
  levelOf: Objective['levelOf'],
): readonly RankedBuild[] {
  const groups: BuildOutcome[][] = [];
  for (const outcome of [...outcomes].sort((a, b) => levelOf(a) - levelOf(b))) {
    const group = groups.at(-1);
    const [quietest] = group ?? [];
    if (group && quietest && levelOf(outcome) - levelOf(quietest) < tie) group.push(outcome);
    else groups.push([outcome]);
  }
  return groups
    .flatMap((group, index) =>
      group.sort(compareTied).map((outcome) => ({ rank: 0, tie: index + 1, outcome })),
    )
    .map((row, index) => ({ ...row, rank: index + 1 }));
}

/** Rows by cost as the search has them. */
function rowsByCost(outcomes: readonly BuildOutcome[]): readonly RankedBuild[] {
  return outcomes.map((outcome, index) => ({ rank: index + 1, tie: index + 1, outcome }));
}

/** The nearest miss of a search that found nothing; null if the limits are not what is missed. */
function missOf({ plant, monotone }: Search, { ruledOut }: SearchCounts): NearestMiss | null {
  const miss = nearestMiss(plant, monotone);
  const asked = ASK_REASONS.some((reason) => (ruledOut.get(reason) ?? 0) > 0);
  return miss?.outcome.adequate && asked ? null : miss;
}

/**
 * The answer of a search as it stands: finished or stopped early.
 *
 * @param search a search begun with `beginSearch`
 */
export function rankingOf(search: Search): Ranking {
  const { plant, objective, ranked } = search;
  const { enclosure } = plant;
  const counts = search.counts();
  const outcomes = search.best().flatMap((candidate) => outcomeOf(search, candidate) ?? []);
  const complete = counts.open === 0;
  const miss = outcomes.length === 0 && complete ? missOf(search, counts) : null;
  return {
    title: enclosure.title,
    rows: isByLevel(ranked.goal)
      ? rowsOf(outcomes, enclosure.assumptions.sound.tie, objective.levelOf)
      : rowsByCost(outcomes),
    by: ranked,
    asked: search.asked,
    count: {
      space: counts.space,
      solved: counts.solved,
      ruledOut: [...counts.ruledOut].map(([bound, builds]) => ({ bound, builds })),
      open: counts.open,
      gap: counts.gap,
      passes: counts.passes,
    },
    complete,
    ...(miss ? { nearestMiss: miss } : {}),
  };
}

/**
 * The quietest adequate builds of an enclosure, quietest first, proved against its whole space.
 *
 * @param enclosure the scenario
 * @param options length of the list [-] and gap of the proof [dB]
 */
export function rank(enclosure: Enclosure, options: SearchOptions = SEARCH_OPTIONS): Ranking {
  const search = beginSearch(enclosure, options);
  while (search.step());
  return rankingOf(search);
}
