import type { Search } from '../search/search.ts';
import { levelOf } from '../sound/levels.ts';
import type { Console } from './console.ts';

/** How long the search runs before it looks up [ms]. */
const SLICE = 40;
/** Time after which a person at the terminal is told how it goes [ms]. */
const PATIENCE = 500;

/** How a search ended. */
export type SearchEnd = 'finished' | 'out of time' | 'interrupted';

function progressLine(search: Search): string {
  const { space, open, gap } = search.counts();
  const [quietest] = search.best();
  const level = quietest
    ? `best so far ${levelOf(quietest.energy).toFixed(1)} dB(A)`
    : 'nothing adequate so far';
  const proved = ((100 * (space - open)) / space).toFixed(1);
  const rest = Number.isFinite(gap) ? `, gap ${gap.toFixed(2)} dB` : '';
  return `${level}, ${proved} % of the space settled${rest}`;
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
  return {
    elapsed: () => performance.now() - start,
    tell: () => {
      if (!console.watched || performance.now() - start < PATIENCE) return;
      console.note(`\r\u001b[2K${progressLine(search)}`);
      told = true;
    },
    clear: () => {
      if (told) console.note('\r\u001b[2K');
    },
  };
}

/**
 * Runs a search to its end, to a time limit or until the user interrupts it, and tells a person at the terminal
 * how it goes. The clock decides only when to stop, never what is found.
 *
 * @param search begun
 * @param console where progress is told
 * @param limit most seconds; no limit if absent
 */
export async function runWatched(
  search: Search,
  console: Console,
  limit: number | undefined,
): Promise<SearchEnd> {
  let interrupted = false;
  const interrupt = (): void => {
    interrupted = true;
  };
  const progress = progressTeller(search, console);
  process.once('SIGINT', interrupt);
  try {
    while (runSlice(search)) {
      if (interrupted) return 'interrupted';
      if (limit !== undefined && progress.elapsed() > 1000 * limit) return 'out of time';
      progress.tell();
      await nextTurn();
    }
    return 'finished';
  } finally {
    process.removeListener('SIGINT', interrupt);
    progress.clear();
  }
}
