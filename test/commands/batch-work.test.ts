import { describe, expect, it } from 'vitest';
import { batchWork } from '../../src/commands/batch-work.ts';
import { nextTurn, type Pause } from '../../src/commands/pause.ts';
import type { Waiting } from '../../src/search/hunt.ts';
import type { Finding } from '../../src/search/look-alone.ts';
import { seeded } from '../search/random.ts';

/** Sets that are told apart by their order of arrival, and what is found of each. */
function setsOf(count: number, from = 0): readonly Waiting[] {
  return Array.from({ length: count }, (_, index) => ({ arrival: from + index }) as unknown as Waiting);
}
function findingOf({ arrival }: Waiting): Finding {
  return { solved: arrival } as unknown as Finding;
}
function arrivals(findings: readonly Finding[] | null): readonly number[] | undefined {
  return findings?.map(({ solved }) => solved);
}

const PATIENT: Pause = { isDue: () => false, rest: async () => true };

/** Another thread: answers after some turns, fails now and then. */
function elsewhere(seed: number, failing: number) {
  const random = seeded(seed);
  const seen: number[] = [];
  let busy = 0;
  let mostBusy = 0;
  const send = async (set: Waiting): Promise<Finding | undefined> => {
    busy += 1;
    mostBusy = Math.max(mostBusy, busy);
    for (let turns = random.whole(0, 4); turns > 0; turns--) await nextTurn();
    busy -= 1;
    if (random.chance(failing)) throw new Error('this thread is gone');
    seen.push(set.arrival);
    return findingOf(set);
  };
  return { send, seen, mostBusy: () => mostBusy };
}

// No source: what is asked of it follows from the search, which takes findings in the order of the sets.
describe('sets shared out', () => {
  it.each([
    ['nobody fails', 0],
    ['some fail', 0.2],
    ['everybody fails', 1],
  ])('come back in their order, each looked at once, if %s', async (_, failing) => {
    for (let seed = 1; seed <= 40; seed++) {
      const { send, seen, mostBusy } = elsewhere(seed, failing);
      const work = batchWork(3, send);
      const here: number[] = [];
      const look = (set: Waiting): Finding => {
        here.push(set.arrival);
        return findingOf(set);
      };
      const first = work.add(setsOf(16), 1);
      const second = work.add(setsOf(9, 16), 1);
      expect(arrivals(await work.finish(first, look, PATIENT))).toEqual(first.sets.map((set) => set.arrival));
      expect(arrivals(await work.finish(second, look, PATIENT))).toEqual(
        second.sets.map((set) => set.arrival),
      );
      expect([...seen, ...here].sort((a, b) => a - b)).toEqual(Array.from({ length: 25 }, (__, at) => at));
      expect(mostBusy()).toBeLessThanOrEqual(3);
      if (failing === 1) expect(here).toHaveLength(25);
      if (failing === 0) expect(seen.length).toBeGreaterThan(0);
    }
  });

  it('of a later batch are begun while one waits for the last of another', async () => {
    let answer = (): void => {};
    const slow = new Promise<void>((resolve) => {
      answer = resolve;
    });
    const work = batchWork(1, async (set) => {
      await slow;
      return findingOf(set);
    });
    const first = work.add(setsOf(1), 1);
    const second = work.add(setsOf(2, 1), 1);
    const here: number[] = [];
    const look = (set: Waiting): Finding => {
      here.push(set.arrival);
      if (here.length === 2) answer();
      return findingOf(set);
    };
    expect(arrivals(await work.finish(first, look, PATIENT))).toEqual([0]);
    expect(here).toEqual([1, 2]);
    expect(arrivals(await work.finish(second, look, PATIENT))).toEqual([1, 2]);
  });

  it('are left when the work is to be stopped', async () => {
    const work = batchWork(1, async (set) => findingOf(set));
    const batch = work.add(setsOf(8), 1);
    const hurried: Pause = { isDue: () => true, rest: async () => false };
    expect(await work.finish(batch, findingOf, hurried)).toBeNull();
  });

  it('none are none', async () => {
    const work = batchWork(2, async (set) => findingOf(set));
    expect(await work.finish(work.add([], 1), findingOf, PATIENT)).toEqual([]);
  });
});
