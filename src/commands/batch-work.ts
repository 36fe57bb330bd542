import type { Waiting } from '../search/hunt.ts';
import type { Finding } from '../search/look-alone.ts';
import type { Search } from '../search/search.ts';
import { nextTurn, type Pause } from './pause.ts';

/** Sets that are looked at by whoever has time. */
export interface Batch {
  readonly sets: readonly Waiting[];
  readonly toBeat: number;
  readonly found: (Finding | undefined)[];
  /** Sets of which nothing is known yet. */
  missing: number;
}

/** One set of a batch. */
interface Item {
  readonly batch: Batch;
  readonly index: number;
}

/** Has a set looked at somewhere else; fails if that could not be done. */
type Send = (set: Waiting, toBeat: number) => Promise<Finding | undefined>;

/** Batches that are worked at elsewhere, first come first served. */
export interface BatchWork {
  readonly add: (sets: readonly Waiting[], toBeat: number) => Batch;
  /**
   * Does what nobody has begun with, of a later batch if need be, until all of a batch is known; what was found, in the
   * order of its sets, or null if the work is to be stopped.
   */
  readonly finish: (batch: Batch, look: Search['look'], pause: Pause) => Promise<readonly Finding[] | null>;
}

/**
 * Shares sets out: as many as there are places are looked at elsewhere at any time, and this thread takes from the same
 * line while it has nothing else to do.
 *
 * @param places sets that may be elsewhere at a time, ≥ 1
 * @param send has a set looked at elsewhere; if it fails its place is given up, and the set is done here
 */
export function batchWork(places: number, send: Send): BatchWork {
  const line: Item[] = [];
  let free = places;
  let wake = (): void => {};

  const settle = ({ batch, index }: Item, finding: Finding): void => {
    batch.found[index] = finding;
    batch.missing -= 1;
  };

  const sendOne = async (item: Item): Promise<void> => {
    const { sets, toBeat } = item.batch;
    const finding = await send(sets[item.index] as Waiting, toBeat).catch(() => undefined);
    if (finding) {
      free += 1;
      settle(item, finding);
      fill();
    } else line.unshift(item);
    wake();
  };

  const fill = (): void => {
    while (free > 0) {
      const item = line.shift();
      if (!item) return;
      free -= 1;
      void sendOne(item);
    }
  };

  const news = (): Promise<void> =>
    new Promise((resolve) => {
      wake = resolve;
    });

  return {
    add: (sets, toBeat) => {
      const batch: Batch = { sets, toBeat, found: sets.map(() => undefined), missing: sets.length };
      line.push(...sets.map((_, index) => ({ batch, index })));
      fill();
      return batch;
    },
    finish: async (batch, look, pause) => {
      while (batch.missing > 0) {
        const item = line.shift();
        if (item) {
          const { sets, toBeat } = item.batch;
          settle(item, look(sets[item.index] as Waiting, toBeat));
          await nextTurn();
        } else await news();
        if (pause.isDue() && !(await pause.rest())) return null;
      }
      return batch.found as readonly Finding[];
    },
  };
}
