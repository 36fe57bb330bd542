import { Tinypool } from 'tinypool';
import type { Waiting } from '../search/hunt.ts';
import type { Finding } from '../search/look-alone.ts';
import { isBuild, type Round } from '../search/round.ts';
import type { Search } from '../search/search.ts';
import { type Batch, batchWork } from './batch-work.ts';
import type { Pause } from './pause.ts';
import type { Assignment, Share } from './search-worker.ts';

/** Threads that help a search. */
export interface Crew {
  /** Settles once all of them have read what they need; fails if one cannot start. */
  readonly ready: Promise<void>;
  /**
   * Does a round, this thread and its hands together; what is begun is worked at until it is asked for. False if the
   * search is to be stopped.
   */
  readonly perform: (search: Search, round: Round, pause: Pause) => Promise<boolean>;
  readonly dismiss: () => Promise<void>;
}

/** Builds a thread is given at a time: one to work at, one to go on with. */
const AT_HAND = 2;

/**
 * Calls in threads that help a search. What is found of a set does not depend on who looks at it, so neither does the
 * answer. Bounds stay on this thread, which has their tables; builds to be worked out, which need none, go to whoever
 * has time.
 *
 * @param hands threads beside this one, ≥ 1
 * @param assignment what they read and look for
 */
export function hireCrew(hands: number, assignment: Assignment): Crew {
  const pool = new Tinypool({
    filename: new URL('./search-worker.js', import.meta.url).href,
    minThreads: hands,
    maxThreads: hands,
    concurrentTasksPerWorker: AT_HAND,
    workerData: assignment,
  });
  // A thread that does not start is told of by an event that would end the program if nobody listened.
  const broken = new Promise<never>((_, reject) => {
    pool.on('error', reject);
  });
  const send = (share: Share): Promise<readonly Finding[]> => pool.run(share, { name: 'lookAt' });
  const idle: Share = { sets: [], toBeat: Number.POSITIVE_INFINITY };
  const started = Promise.all(Array.from({ length: AT_HAND * hands }, () => send(idle)));
  const ready = Promise.race([started.then(() => {}), broken]);
  const work = batchWork(AT_HAND * hands, async (set: Waiting, toBeat: number) => {
    const [finding] = await send({ sets: [set], toBeat });
    return finding;
  });
  /** What is worked at meanwhile, by its sets. */
  const begun = new Map<readonly Waiting[], Batch>();

  /** Looks at sets here, between pauses; null if the search is to be stopped. */
  const lookHere = async (search: Search, round: Round, pause: Pause): Promise<readonly Finding[] | null> => {
    const batch = work.add(round.sets.filter(isBuild), round.toBeat);
    const bounds: (Finding | undefined)[] = [];
    for (const set of round.sets) {
      bounds.push(isBuild(set) ? undefined : search.look(set, round.toBeat));
      if (pause.isDue() && !(await pause.rest())) return null;
    }
    const builds = await work.finish(batch, search.look, pause);
    if (!builds) return null;
    const rest = [...builds];
    return bounds.map((finding) => finding ?? (rest.shift() as Finding));
  };

  const findingsOf = (search: Search, round: Round, pause: Pause): Promise<readonly Finding[] | null> => {
    if (round.task === 'look') return lookHere(search, round, pause);
    // What was begun before there was a crew is shared out now.
    const batch = begun.get(round.sets) ?? work.add(round.sets, round.toBeat);
    begun.delete(round.sets);
    return work.finish(batch, search.look, pause);
  };

  return {
    ready,
    perform: async (search, round, pause) => {
      if (round.task === 'begin') {
        begun.set(round.sets, work.add(round.sets, round.toBeat));
        return true;
      }
      const findings = await findingsOf(search, round, pause);
      if (findings) search.take(findings);
      return findings !== null;
    },
    dismiss: async () => {
      // Whatever has not started by now fails, and nobody is left to hear of it.
      started.catch(() => {});
      ready.catch(() => {});
      await pool.destroy().catch(() => {});
    },
  };
}
