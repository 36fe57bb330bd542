import type { Build, Enclosure } from '../enclosure/enclosure.ts';
import { rankDocument } from '../presentation/json.ts';
import { rankView } from '../presentation/rank-view.ts';
import type { ObjectiveName } from '../search/objective.ts';
import { rankingOf } from '../search/rank.ts';
import type { Ranking } from '../search/ranking.ts';
import { beginSearch } from '../search/search.ts';
import { type ScenarioOptions, withScenario } from './command.ts';
import { EXIT, type ExitCode } from './console.ts';
import { inventedNote, withInvented } from './invented.ts';
import { runWatched, type SearchEnd } from './watched-search.ts';

/** Options of `rank`. */
export interface RankOptions extends ScenarioOptions {
  /** Length of the list [-]. */
  readonly top: number;
  /** Builds quieter by no more than this may be left out [dB]. */
  readonly gap: number;
  /** What the ranking goes by. */
  readonly by: ObjectiveName;
  /** Most time for the search [s]. */
  readonly timeLimit: number | undefined;
}

/** Builds a ranking shows, the nearest miss included. */
function shownBuilds({ rows, nearestMiss }: Ranking): readonly Build[] {
  const outcomes = [...rows.map(({ outcome }) => outcome), ...(nearestMiss ? [nearestMiss.outcome] : [])];
  return outcomes.map(({ build }) => build.options);
}

function exitCode(ranking: Ranking, end: SearchEnd): ExitCode {
  if (end === 'interrupted') return EXIT.interrupted;
  return ranking.rows.length > 0 ? EXIT.answered : EXIT.noneAdequate;
}

function textOf(
  ranking: Ranking,
  enclosure: Enclosure,
  view: { width: number | undefined; paint: Parameters<typeof rankView>[1]['paint'] },
): string {
  const text = rankView(ranking, {
    paint: view.paint,
    tie: enclosure.assumptions.sound.tie,
    ...(view.width === undefined ? {} : { width: view.width }),
  });
  return `${text}${inventedNote(enclosure, shownBuilds(ranking))}`;
}

/** Ranks the builds of a scenario, quietest adequate first. */
export function run(options: RankOptions): Promise<ExitCode> {
  return withScenario('rank', options, async ({ enclosure, console, meta, answer }) => {
    const search = beginSearch(enclosure, { top: options.top, gap: options.gap, by: options.by });
    const end = await runWatched(search, console, options.timeLimit);
    const ranking = rankingOf(search);
    const builds = shownBuilds(ranking);
    answer(
      () => rankDocument(ranking, withInvented(meta, enclosure, builds)),
      () => textOf(ranking, enclosure, console),
    );
    return exitCode(ranking, end);
  });
}
