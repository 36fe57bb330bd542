import { Tinypool } from 'tinypool';
import type { Waiting } from '../search/hunt.ts';
import type { Finding } from '../search/look-alone.ts';
import { isBuild } from '../search/round.ts';
import type { Search } from '../search/search.ts';
import type { Assignment, Share } from './search-worker.ts';

/** Threads that help a search. */
export interface Crew {
  /** Settles once all of them have read what they need; fails if one cannot start. */
  readonly ready: Promise<void>;
  /** Looks at the sets of a round, this thread and its hands each at their share. */
  readonly look: (search: Search, sets: readonly Waiting[]) => Promise<readonly Finding[]>;
  readonly dismiss: () => Promise<void>;
}

/** What working out the speeds of a build costs, in looks at a set [-]: about so much on the spaces of the benchmark. */
const BUILD = 8;

/**
 * Who takes each set of a round. Bounds stay on this thread, which has their tables; builds to be worked out, which
 * need none, go to whoever has least to do.
 */
function ownersOf(sets: readonly Waiting[], jobs: number): readonly number[] {
  const load = new Array<number>(jobs).fill(0);
  load[0] = sets.filter((set) => !isBuild(set)).length;
  return sets.map((set) => {
    if (!isBuild(set)) return 0;
    const owner = load.indexOf(Math.min(...load));
    load[owner] = (load[owner] as number) + BUILD;
    return owner;
  });
}

/**
 * Calls in threads that help a search. What is found of a set does not depend on who looks at it, so neither does the
 * answer.
 *
 * @param hands threads beside this one, ≥ 1
 * @param assignment what they read and look for
 */
export function hireCrew(hands: number, assignment: Assignment): Crew {
  const pool = new Tinypool({
    filename: new URL('./search-worker.js', import.meta.url).href,
    minThreads: hands,
    maxThreads: hands,
    workerData: assignment,
  });
  const jobs = hands + 1;
  // A thread that does not start is told of by an event that would end the program if nobody listened.
  const broken = new Promise<never>((_, reject) => {
    pool.on('error', reject);
  });
  const idle: Share = { sets: [], toBeat: Number.POSITIVE_INFINITY };
  const begun = Promise.all(Array.from({ length: hands }, () => pool.run(idle, { name: 'lookAt' })));
  const ready = Promise.race([begun.then(() => {}), broken]);
  return {
    ready,
    look: async (search, sets) => {
      const toBeat = search.toBeat();
      const lookHere = (share: readonly Waiting[]): readonly Finding[] =>
        share.map((set) => search.look(set, toBeat));
      const owners = ownersOf(sets, jobs);
      const shares = Array.from({ length: jobs }, (_, job) =>
        sets.filter((__, index) => owners[index] === job),
      );
      const away = shares.slice(1).map(async (share): Promise<readonly Finding[]> => {
        if (share.length === 0) return [];
        // What a thread could not do is done here.
        return pool.run({ sets: share, toBeat }, { name: 'lookAt' }).catch(() => lookHere(share));
      });
      const found = [lookHere(shares[0] ?? []), ...(await Promise.all(away))].map((list) => [...list]);
      return owners.map((owner) => found[owner]?.shift() as Finding);
    },
    dismiss: async () => {
      // Whatever has not started by now fails, and nobody is left to hear of it.
      begun.catch(() => {});
      ready.catch(() => {});
      await pool.destroy().catch(() => {});
    },
  };
}
