import type { Search } from '../search/search.ts';
import { levelOf } from '../sound/levels.ts';
import type { Console } from './console.ts';
import type { Crew } from './search-crew.ts';

/** How long the search runs before it looks up [ms]. */
const SLICE = 40;
/**
 * Work after which other threads are called in [ms]. They take about half a second of a processor to read what they
 * need: on two processors a shorter search took longer with them than without.
 */
const ALONE = 2000;
/** Time after which a person at the terminal is told how it goes [ms]. */
const PATIENCE = 500;

/** How a search ended. */
export type SearchEnd = 'finished' | 'out of time' | 'interrupted';

/** How the gap closes: at the pace since the list was full, how long it would take to close [s]; null if unknown. */
function timeLeft(gap: number, since: Pace | null, now: number): number | null {
  if (!since || !(gap < since.gap)) return null;
  const pace = (since.gap - gap) / (now - since.at);
  return gap / pace / 1000;
}

/** When the gap was first known, and what it was. */
interface Pace {
  readonly at: number;
  readonly gap: number;
}

function inWords(seconds: number | null): string {
  if (seconds === null) return '';
  return seconds < 90
    ? `, about ${Math.ceil(seconds)} s left`
    : `, about ${Math.ceil(seconds / 60)} min left`;
}

function progressLine(search: Search, since: Pace | null): string {
  const { space, open, gap } = search.counts();
  const [quietest] = search.best();
  const level = quietest
    ? `best so far ${levelOf(quietest.energy).toFixed(1)} dB(A)`
    : 'nothing adequate so far';
  const proved = ((100 * (space - open)) / space).toFixed(1);
  const rest = Number.isFinite(gap) ? `, gap ${gap.toFixed(2)} dB` : '';
  const left = Number.isFinite(gap) ? inWords(timeLeft(gap, since, performance.now())) : '';
  return `${level}, ${proved} % of the space settled${rest}${left}`;
}

function nextTurn(): Promise<void> {
  return new Promise((resolve) => {
    setImmediate(resolve);
  });
}

/** Steps of a search for one slice of time; false once it is finished. */
function runSlice(search: Search): boolean {
  const start = performance.now();
  while (performance.now() - start < SLICE) if (!search.step()) return false;
  return true;
}

/** Tells a person at the terminal how it goes, on one line that is written over. */
function progressTeller(search: Search, console: Console) {
  const start = performance.now();
  let told = false;
  let since: Pace | null = null;
  return {
    elapsed: () => performance.now() - start,
    tell: () => {
      if (!console.watched || performance.now() - start < PATIENCE) return;
      const { gap } = search.counts();
      if (Number.isFinite(gap)) since ??= { at: performance.now(), gap };
      console.note(`\r\u001b[2K${progressLine(search, since)}`);
      told = true;
    },
    clear: () => {
      if (told) console.note('\r\u001b[2K');
    },
  };
}

/** Rounds of a search with the help of other threads for one slice of time; false once it is finished. */
async function runTogether(search: Search, crew: Crew): Promise<boolean> {
  const start = performance.now();
  while (performance.now() - start < SLICE) {
    const sets = search.round();
    if (sets.length === 0) return false;
    search.take(await crew.look(search, sets));
  }
  return true;
}

/** Threads that do not start are no reason to stop: the search only takes longer. */
function goOnAlone(): void {}

/** How a search is run. */
export interface Watch {
  readonly console: Console;
  /** Most seconds; no limit if absent. */
  readonly limit?: number | undefined;
  /** Calls in other threads; absent if there are none to call. */
  readonly hire?: (() => Promise<Crew>) | undefined;
}

/**
 * Runs a search to its end, to a time limit or until the user interrupts it, and tells a person at the terminal
 * how it goes. The clock decides only when to stop, never what is found.
 *
 * @param search begun
 * @param watch where progress is told, how long it may take and who may help
 */
export async function runWatched(search: Search, { console, limit, hire }: Watch): Promise<SearchEnd> {
  let interrupted = false;
  const interrupt = (): void => {
    interrupted = true;
  };
  const progress = progressTeller(search, console);
  let crew: Crew | undefined;
  let called: Crew | undefined;
  process.once('SIGINT', interrupt);
  try {
    while (crew ? await runTogether(search, crew) : runSlice(search)) {
      if (interrupted) return 'interrupted';
      if (limit !== undefined && progress.elapsed() > 1000 * limit) return 'out of time';
      progress.tell();
      if (hire && !called && progress.elapsed() > ALONE) {
        called = await hire();
        // Until all have read what they need, this thread goes on by itself.
        called.ready.then(() => {
          crew = called;
        }, goOnAlone);
      }
      await nextTurn();
    }
    return 'finished';
  } finally {
    process.removeListener('SIGINT', interrupt);
    progress.clear();
    await called?.dismiss();
  }
}
