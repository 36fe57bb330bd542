import { availableParallelism } from 'node:os';
import { holdingAtFullSpeed, rankingBands } from '../bands/outcome-bands.ts';
import type { Build, Enclosure } from '../enclosure/enclosure.ts';
import type { FanModel } from '../fan/fan-model.ts';
import { askWords } from '../presentation/asks/ask-words.ts';
import { whyView } from '../presentation/asks/why-view.ts';
import { rankDocument } from '../presentation/json.ts';
import { type RankBands, rankView } from '../presentation/rank-view.ts';
import { type WouldDo, wouldDo } from '../questions/would-do.ts';
import { isByLevel } from '../search/asks/goal.ts';
import type { FrontAxis } from '../search/front/front-axis.ts';
import { rankingOf } from '../search/rank.ts';
import type { Ranking } from '../search/ranking.ts';
import type { Search } from '../search/search.ts';
import { type WhyNot, whyNot } from '../search/why/why-not.ts';
import { type AskedSearch, askedOf, type SearchWords, searchFor } from './asked-search.ts';
import { dutyRefusal, hintOf, refuseCall } from './chosen-build.ts';
import { type ScenarioOptions, sourceOf, type Work, withScenario } from './command.ts';
import { EXIT, type ExitCode } from './console.ts';
import { inventedNote, withInvented } from './invented.ts';
import { runFront } from './rank-front.ts';
import type { Crew } from './search-crew.ts';
import { runWatched, type SearchEnd } from './watched-search.ts';

/** Threads that work at most if nobody says how many. */
const MOST_JOBS = 8;

/** Steps of the margin in a front if nobody says [K]. Common practice, no source. */
const FRONT_STEP = 2;

/** Options of `rank`. */
export interface RankOptions extends ScenarioOptions, SearchWords {
  /** Most time for the search [s]. */
  readonly timeLimit: number | undefined;
  /** Threads that work on it; as many as there are processors if absent. */
  readonly jobs: number | undefined;
  /** What noise is weighed against; a list is made if absent. */
  readonly front: FrontAxis | undefined;
  /** Steps of the margin in a front [K]. */
  readonly frontStep: number | undefined;
  /** Name of a build of which to tell why it is not the first; none if absent. */
  readonly why: string | undefined;
}

/** Builds a ranking shows, the nearest miss included. */
function shownBuilds({ rows, nearestMiss }: Ranking): readonly Build[] {
  const outcomes = [...rows.map(({ outcome }) => outcome), ...(nearestMiss ? [nearestMiss.outcome] : [])];
  return outcomes.map(({ build }) => build.options);
}

/** The cheapest single change that would make the nearest miss adequate; undefined if there is none to look for. */
function changeFor({ nearestMiss }: Ranking, enclosure: Enclosure, fans: readonly FanModel[]) {
  // With all limits held as stated it only lacks certainty, which no change is looked for.
  if (!nearestMiss || nearestMiss.outcome.adequate) return undefined;
  const { outcome } = nearestMiss;
  return wouldDo({ enclosure, build: outcome.build.options, outcome, fans });
}

function exitCode(ranking: Ranking, end: SearchEnd): ExitCode {
  if (end === 'interrupted') return EXIT.interrupted;
  // Where the search was stopped nobody knows that there is none.
  return ranking.rows.length > 0 || end !== 'finished' ? EXIT.answered : EXIT.noneAdequate;
}

function textOf(
  ranking: Ranking,
  enclosure: Enclosure,
  change: WouldDo | undefined,
  bands: RankBands,
  why: WhyNot | undefined,
  view: { width: number | undefined; paint: Parameters<typeof rankView>[1]['paint'] },
): string {
  const text = rankView(ranking, {
    paint: view.paint,
    tie: enclosure.assumptions.sound.tie,
    wouldDo: change,
    bands,
    asked: askWords(enclosure),
    ...(view.width === undefined ? {} : { width: view.width }),
  });
  const { width } = view;
  const told = why ? whyView(why, enclosure.margin, width === undefined ? {} : { width }) : '';
  return `${text}${told}${inventedNote(enclosure, shownBuilds(ranking))}`;
}

/** Other threads, if more than one may work. */
function handsFor(work: Work, options: RankOptions, asked: AskedSearch): (() => Promise<Crew>) | undefined {
  const hands = (options.jobs ?? Math.min(MOST_JOBS, availableParallelism())) - 1;
  if (hands < 1) return undefined;
  const assignment = { source: sourceOf(work, options), asked };
  return async () => (await import('./search-crew.ts')).hireCrew(hands, assignment);
}

function bandsFor(
  enclosure: Enclosure,
  ranking: Ranking,
  { by, byDuty, confidence }: RankOptions,
): RankBands {
  const miss = ranking.nearestMiss;
  const rows = rankingBands(enclosure, ranking, by === 'loudest' ? by : 'mean');
  return {
    // Rows that are not in the order of their mean or loudest level are not compared by it.
    rows: isByLevel(by) && byDuty === undefined ? rows : rows.map((row) => row && { bands: row.bands }),
    probable: enclosure.assumptions.sound.verdict.probable,
    confidence: confidence === undefined ? undefined : confidence / 100,
    missHolding: miss ? (holdingAtFullSpeed(enclosure, miss.outcome.build.options) ?? undefined) : undefined,
  };
}

/** Why the call does not fit the scenario; null if it does. */
function refusalOf(work: Work, { byDuty, why }: RankOptions): string | null {
  const { builds } = work.enclosure;
  const unknown = why !== undefined && !builds.some(({ id }) => id === why);
  if (unknown) return `the scenario has no build "${why}"${hintOf(why, builds)}`;
  return dutyRefusal(work, byDuty);
}

function whyFor(
  search: Search,
  { rows }: Ranking,
  { builds }: Enclosure,
  { why }: RankOptions,
): WhyNot | undefined {
  const named = builds.find(({ id }) => id === why);
  return named && whyNot(search, rows, named);
}

function frontFor(work: Work, options: RankOptions, against: FrontAxis): Promise<ExitCode> {
  return runFront(work, {
    asked: askedOf(options),
    against,
    step: options.frontStep ?? FRONT_STEP,
    limit: options.timeLimit,
    handsFor: (asked) => handsFor(work, options, asked),
  });
}

/** Ranks the builds of a scenario, quietest adequate first. */
export function run(options: RankOptions): Promise<ExitCode> {
  return withScenario('rank', options, async (work) => {
    const { enclosure, catalog, console, meta, answer } = work;
    const refusal = refusalOf(work, options);
    if (refusal !== null) return refuseCall(work, options, refusal);
    const asked = askedOf(options);
    if (options.front) return frontFor(work, options, options.front);
    const search = searchFor(enclosure, asked);
    const end = await runWatched(search, {
      console,
      limit: options.timeLimit,
      hire: handsFor(work, options, asked),
    });
    if (end !== 'finished') search.findAny();
    const ranking = rankingOf(search);
    const builds = shownBuilds(ranking);
    const change = changeFor(ranking, enclosure, catalog.fans);
    const bands = bandsFor(enclosure, ranking, options);
    const why = whyFor(search, ranking, enclosure, options);
    answer(
      () => rankDocument(ranking, withInvented(meta, enclosure, builds), change, bands, why),
      () => textOf(ranking, search.plant.enclosure, change, bands, why, console),
    );
    return exitCode(ranking, end);
  });
}
