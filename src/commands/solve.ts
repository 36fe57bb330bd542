import type { Build, Enclosure, LostThere } from '../enclosure/enclosure.ts';
import { withLostFans } from '../enclosure/lost-fans.ts';
import { assemble, plantOf } from '../enclosure/machine.ts';
import type { BuildOutcome } from '../enclosure/outcome.ts';
import { solveDocument } from '../presentation/json.ts';
import { solveView } from '../presentation/solve-view.ts';
import { nearestName } from '../quantities/nearest.ts';
import { buildOutcome, isFailed, outcomeAt } from '../search/build-outcome.ts';
import { fasterIsCooler } from '../search/monotone-airway.ts';
import { rankingOf } from '../search/rank.ts';
import { beginSearch, SEARCH_OPTIONS } from '../search/search.ts';
import { solveBuild } from '../search/solve-build.ts';
import { refuse, type ScenarioOptions, type Work, withScenario } from './command.ts';
import { EXIT, type ExitCode } from './console.ts';
import { inventedNote, withInvented } from './invented.ts';
import { runWatched } from './watched-search.ts';

/** Options of `solve`. */
export interface SolveOptions extends ScenarioOptions {
  /** Name of a build of the scenario. */
  readonly build: string | undefined;
  /** Place in the ranking, from 1; used if no build is named. */
  readonly rank: number;
  /** One speed for all banks [%]; the quietest adequate speeds if absent. */
  readonly speed: number | undefined;
  /** Duty to show in full; all if absent. */
  readonly duty: string | undefined;
}

/** A build to show, or why there is none. */
type Chosen =
  | { readonly build: Build; readonly lost?: readonly LostThere[] | undefined }
  | { readonly refusal: string };

function namedBuild(enclosure: Enclosure, name: string): Chosen {
  const found = enclosure.builds.find(({ id }) => id === name);
  if (found) return { build: found.options, lost: found.lost };
  const names = enclosure.builds.map(({ id }) => id);
  const close = nearestName(name, names);
  const hint = close
    ? `; did you mean "${close}"?`
    : names.length > 0
      ? `; there are: ${names.join(', ')}`
      : '';
  return { refusal: `the scenario has no build "${name}"${hint}` };
}

/** The build at a place of the ranking, or the nearest miss if nothing is adequate. */
async function rankedBuild({ enclosure, console }: Work, rank: number): Promise<Chosen> {
  // Rows are ordered inside ties, so the row is that of a list as long as `rank` shows by itself.
  const search = beginSearch(enclosure, { ...SEARCH_OPTIONS, top: Math.max(rank, SEARCH_OPTIONS.top) });
  await runWatched(search, console, undefined);
  const { rows, nearestMiss } = rankingOf(search);
  const found = rows[rank - 1] ?? (rows.length === 0 ? nearestMiss : undefined);
  if (found) return { build: found.outcome.build.options };
  const few = `only ${rows.length} builds are adequate`;
  return { refusal: rows.length > 0 ? few : 'no build of the scenario has a solution' };
}

function outcomeFor(enclosure: Enclosure, build: Build, speed: number | undefined) {
  const plant = plantOf(enclosure);
  const machine = assemble(plant, build);
  const solved = solveBuild(machine, fasterIsCooler(plant));
  if (speed === undefined) return buildOutcome(solved);
  const ratios = Float64Array.from(machine.banks, () => speed / 100);
  return outcomeAt(
    machine,
    enclosure.duties.map(() => ratios),
    solved.reserve,
  );
}

function refusalOf({ enclosure }: Work, options: SolveOptions): string | null {
  const { duty } = options;
  if (duty === undefined || enclosure.duties.some(({ id }) => id === duty)) return null;
  const names = enclosure.duties.map(({ id }) => id);
  const close = nearestName(duty, names);
  return `the scenario has no duty "${duty}"; ${close ? `did you mean "${close}"?` : `there are: ${names.join(', ')}`}`;
}

function show(work: Work, options: SolveOptions, outcome: BuildOutcome): void {
  const { enclosure, console, meta, answer } = work;
  const builds = [outcome.build.options];
  answer(
    () => solveDocument(outcome, withInvented(meta, enclosure, builds)),
    () =>
      `${solveView(outcome, {
        title: enclosure.title,
        duty: options.duty,
        margin: enclosure.margin,
        paint: console.paint,
        ...(console.width === undefined ? {} : { width: console.width }),
      })}${inventedNote(enclosure, builds)}`,
  );
}

/** Refuses a name the scenario does not hold. */
function refuseCall({ console, meta }: Work, options: SolveOptions, message: string): ExitCode {
  if (!options.json) {
    console.fault(`hushwright: ${message}\n`);
    return EXIT.badInput;
  }
  const problem = {
    code: 'unknown-name',
    file: options.scenario,
    line: 1,
    column: 1,
    path: [],
    message,
  } as const;
  return refuse([problem], options, console, meta);
}

/** Shows one build in full: speeds, flows, pressures, temperatures and levels as budgets. */
export function run(options: SolveOptions): Promise<ExitCode> {
  return withScenario('solve', options, async (work) => {
    const { enclosure } = work;
    const refusal = refusalOf(work, options);
    const chosen =
      refusal !== null
        ? { refusal }
        : options.build === undefined
          ? await rankedBuild(work, options.rank)
          : namedBuild(enclosure, options.build);
    if ('refusal' in chosen) {
      return refuseCall(work, options, chosen.refusal);
    }
    const { build, lost = [] } = chosen;
    const outcome = outcomeFor(withLostFans(enclosure, build, lost), build, options.speed);
    if (isFailed(outcome)) {
      work.console.fault(`hushwright: no solution in duty "${outcome.duty}": ${outcome.reason}\n`);
      return EXIT.noneAdequate;
    }
    show(work, options, outcome);
    return outcome.adequate ? EXIT.answered : EXIT.noneAdequate;
  });
}
