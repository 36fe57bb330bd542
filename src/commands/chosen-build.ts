import type { Build, Enclosure, LostThere } from '../enclosure/enclosure.ts';
import { isMoreAsked } from '../presentation/search-sentences.ts';
import { nearestName } from '../quantities/nearest.ts';
import { rankingOf } from '../search/rank.ts';
import { beginSearch, SEARCH_OPTIONS } from '../search/search.ts';
import { refuse, type Work } from './command.ts';
import { type CommonOptions, EXIT, type ExitCode } from './console.ts';
import { runWatched } from './watched-search.ts';

/** A build to work with, or why there is none. */
export type Chosen =
  | { readonly build: Build; readonly lost?: readonly LostThere[] | undefined }
  | { readonly refusal: string };

/** A build of the scenario by its name. */
export function namedBuild(enclosure: Enclosure, name: string): Chosen {
  const found = enclosure.builds.find(({ id }) => id === name);
  if (found) return { build: found.options, lost: found.lost };
  return { refusal: `the scenario has no build "${name}"${hintOf(name, enclosure.builds)}` };
}

/** What was probably meant, or what there is. */
export function hintOf(name: string, known: readonly { readonly id: string }[]): string {
  const names = known.map(({ id }) => id);
  const close = nearestName(name, names);
  if (close) return `; did you mean "${close}"?`;
  return names.length > 0 ? `; there are: ${names.join(', ')}` : '';
}

/** The build at a place of the ranking, or the nearest miss if nothing is adequate. */
export async function rankedBuild({ enclosure, console }: Work, rank: number): Promise<Chosen> {
  // Rows are ordered inside ties, so the row is that of a list as long as `rank` shows by itself.
  const search = beginSearch(enclosure, { ...SEARCH_OPTIONS, top: Math.max(rank, SEARCH_OPTIONS.top) });
  await runWatched(search, { console });
  const { rows, nearestMiss, count } = rankingOf(search);
  const found = rows[rank - 1] ?? (rows.length === 0 ? nearestMiss : undefined);
  if (found) return { build: found.outcome.build.options };
  const few = `only ${rows.length} builds are adequate`;
  const none = isMoreAsked(count)
    ? 'no build of the scenario is adequate and does what is asked of it'
    : 'no build of the scenario has a solution';
  return { refusal: rows.length > 0 ? few : none };
}

/** The named build, or the quietest adequate one. */
export async function chosenBuild(work: Work, name: string | undefined): Promise<Chosen> {
  return name === undefined ? rankedBuild(work, 1) : namedBuild(work.enclosure, name);
}

/** Why a duty cannot be looked at alone; null if it can. */
export function dutyRefusal({ enclosure }: Work, duty: string | undefined): string | null {
  if (duty === undefined || enclosure.duties.some(({ id }) => id === duty)) return null;
  return `the scenario has no duty "${duty}"${hintOf(duty, enclosure.duties)}`;
}

/** Stands for the file of what is wrong in a call that reads none. */
const COMMAND_LINE = '<command line>';

/** Refuses a name that the scenario does not hold, or another wish that does not fit it. */
export function refuseCall(
  { console, meta }: Pick<Work, 'console' | 'meta'>,
  options: CommonOptions & { readonly scenario?: string | undefined },
  message: string,
): ExitCode {
  if (!options.json) {
    console.fault(`hushwright: ${message}\n`);
    return EXIT.badInput;
  }
  const problem = {
    code: 'unknown-name',
    file: options.scenario ?? COMMAND_LINE,
    line: 1,
    column: 1,
    path: [],
    message,
  } as const;
  return refuse([problem], options, console, meta);
}
