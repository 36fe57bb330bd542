import { availableParallelism } from 'node:os';
import type { Finding } from '../search/look-alone.ts';
import type { Round } from '../search/round.ts';
import type { Search } from '../search/search.ts';
import { levelOf } from '../sound/levels.ts';
import type { Console } from './console.ts';
import { nextTurn, type Pause } from './pause.ts';
import type { Crew } from './search-crew.ts';

/** How long the search runs before it looks up [ms]: others wait for their work no longer than that. */
const SLICE = 5;
/** Time from one line about how it goes to the next [ms]. */
const LINES = 40;
/**
 * Work after which other threads are called in [ms]: they take about as long themselves to read what they need. Of two
 * processors this thread keeps the second one half busy already, with compiling and collecting: a search of a second or
 * two took longer with help than without.
 */
const ALONE = 300;
const ALONE_ON_TWO = 2000;
/** Processors from which on help has one of its own [-]. */
const ROOMY = 3;
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

/** Tells a person at the terminal how it goes, on one line that is written over. */
function progressTeller(search: Search, console: Console) {
  const start = performance.now();
  let told = Number.NEGATIVE_INFINITY;
  let since: Pace | null = null;
  return {
    elapsed: () => performance.now() - start,
    tell: () => {
      const now = performance.now();
      if (!console.watched || now - start < PATIENCE || now - told < LINES) return;
      const { gap } = search.counts();
      if (Number.isFinite(gap)) since ??= { at: now, gap };
      console.note(`\r\u001b[2K${progressLine(search, since)}`);
      told = now;
    },
    clear: () => {
      if (Number.isFinite(told)) console.note('\r\u001b[2K');
    },
  };
}

/** Does a round alone; false if the search is to be stopped. */
async function performAlone(search: Search, { task, sets, toBeat }: Round, pause: Pause): Promise<boolean> {
  if (task === 'begin') return true;
  const findings: Finding[] = [];
  for (const set of sets) {
    findings.push(search.look(set, toBeat));
    if (pause.isDue() && !(await pause.rest())) return false;
  }
  search.take(findings);
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
  const alone = availableParallelism() < ROOMY ? ALONE_ON_TWO : ALONE;
  let lookedUp = progress.elapsed();
  const stopped = (): SearchEnd | null => {
    if (interrupted) return 'interrupted';
    return limit !== undefined && progress.elapsed() > 1000 * limit ? 'out of time' : null;
  };
  const callIn = async (hireNow: () => Promise<Crew>): Promise<void> => {
    called = await hireNow();
    // Until all have read what they need, this thread goes on by itself.
    called.ready.then(() => {
      crew = called;
    }, goOnAlone);
  };
  const pause: Pause = {
    isDue: () => progress.elapsed() - lookedUp > SLICE,
    rest: async () => {
      progress.tell();
      if (hire && !called && progress.elapsed() > alone) await callIn(hire);
      await nextTurn();
      lookedUp = progress.elapsed();
      return stopped() === null;
    },
  };
  process.once('SIGINT', interrupt);
  try {
    for (let round = search.round(); round; round = search.round()) {
      const goesOn = await (crew ? crew.perform(search, round, pause) : performAlone(search, round, pause));
      if (!goesOn) return stopped() ?? 'finished';
    }
    return 'finished';
  } finally {
    process.removeListener('SIGINT', interrupt);
    progress.clear();
    await called?.dismiss();
  }
}
