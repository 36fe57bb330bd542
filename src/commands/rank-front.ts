import { frontDocument } from '../presentation/asks/front-data.ts';
import { frontView } from '../presentation/asks/front-view.ts';
import { beginFront, type FrontWork } from '../search/front/front.ts';
import type { FrontAxis } from '../search/front/front-axis.ts';
import { type AskedSearch, searchFor } from './asked-search.ts';
import type { Work } from './command.ts';
import { EXIT, type ExitCode } from './console.ts';
import { inventedNote, withInvented } from './invented.ts';
import { runWatched, type SearchEnd, type Watch } from './watched-search.ts';

/** What a front is asked, and how its searches are run. */
export interface FrontCall {
  readonly asked: AskedSearch;
  readonly against: FrontAxis;
  /** Steps of the margin [K]. */
  readonly step: number;
  /** Most seconds for all searches; no limit if absent. */
  readonly limit: number | undefined;
  /** Calls in other threads for a search; absent if there are none to call. */
  readonly handsFor: (asked: AskedSearch) => Watch['hire'];
}

/** Makes the searches of a front, one after the other. */
async function runSearches(work: Work, call: FrontCall, front: FrontWork): Promise<SearchEnd> {
  const { enclosure, console } = work;
  const start = performance.now();
  for (let asked = front.next(); asked; asked = front.next()) {
    const search = searchFor(enclosure, asked);
    const spent = (performance.now() - start) / 1000;
    const limit = call.limit === undefined ? undefined : Math.max(0, call.limit - spent);
    const end = await runWatched(search, { console, limit, hire: call.handsFor(asked) });
    front.take(search, end === 'finished');
    if (end !== 'finished') return end;
  }
  return 'finished';
}

/**
 * Shows how noise trades against something else.
 *
 * @param work scenario and console
 * @param call what is asked, and how it is run
 */
export async function runFront(work: Work, call: FrontCall): Promise<ExitCode> {
  const { enclosure, console, meta, answer } = work;
  const { top, ...asked } = call.asked;
  const front = beginFront(enclosure, { ...asked, against: call.against, step: call.step, most: top });
  const end = await runSearches(work, call, front);
  const found = front.front();
  const builds = found.rows.map(({ outcome }) => outcome.build.options);
  answer(
    () => frontDocument(found, withInvented(meta, enclosure, builds)),
    () => {
      const { paint, width } = console;
      const text = frontView(found, { paint, ...(width === undefined ? {} : { width }) });
      return `${text}${inventedNote(enclosure, builds)}`;
    },
  );
  if (end === 'interrupted') return EXIT.interrupted;
  return found.rows.length > 0 || end !== 'finished' ? EXIT.answered : EXIT.noneAdequate;
}
