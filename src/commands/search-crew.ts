import { Tinypool } from 'tinypool';
import type { Waiting } from '../search/hunt.ts';
import type { Finding } from '../search/look-alone.ts';
import type { Search } from '../search/search.ts';
import type { Assignment, Share } from './search-worker.ts';

/** Threads that help a search. */
export interface Crew {
  /** Looks at the sets of a round, this thread and its hands each at their share. */
  readonly look: (search: Search, sets: readonly Waiting[]) => Promise<readonly Finding[]>;
  readonly dismiss: () => Promise<void>;
}

/** Every so many-th set, from one on. */
function shareOf(sets: readonly Waiting[], from: number, stride: number): readonly Waiting[] {
  return sets.filter((_, index) => index % stride === from);
}

/**
 * Starts threads that help a search, and waits until they can. What is found of a set does not depend on who looks at it, so neither does the
 * answer.
 *
 * @param hands threads beside this one, ≥ 1
 * @param assignment what they read and look for
 */
export async function hireCrew(hands: number, assignment: Assignment): Promise<Crew> {
  const pool = new Tinypool({
    filename: new URL('./search-worker.js', import.meta.url).href,
    minThreads: hands,
    maxThreads: hands,
    workerData: assignment,
  });
  const jobs = hands + 1;
  // Each hand reads what it needs before it counts.
  const ready: Share = { sets: [], toBeat: Number.POSITIVE_INFINITY };
  await Promise.all(Array.from({ length: hands }, () => pool.run(ready, { name: 'lookAt' })));
  return {
    look: async (search, sets) => {
      const toBeat = search.toBeat();
      const away = Array.from({ length: hands }, (_, index): Promise<readonly Finding[]> => {
        const share: Share = { sets: shareOf(sets, index + 1, jobs), toBeat };
        return share.sets.length > 0 ? pool.run(share, { name: 'lookAt' }) : Promise.resolve([]);
      });
      const own = shareOf(sets, 0, jobs).map((set) => search.look(set, toBeat));
      const shares = [own, ...(await Promise.all(away))];
      return sets.map((_, index) => shares[index % jobs]?.[Math.floor(index / jobs)] as Finding);
    },
    dismiss: () => pool.destroy(),
  };
}
