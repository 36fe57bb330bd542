import { type Hunt, putOut, toBeat, type Waiting, wait } from './hunt.ts';
import type { Finding } from './look-alone.ts';

/** Nothing that waits can do better than the list. */
function putOutRest(hunt: Hunt): void {
  const reason = hunt.wishes.byLevel ? 'too loud for the air it must move' : 'beyond the end of the list';
  for (const { build } of hunt.waiting.data) putOut(hunt, reason, build);
  hunt.waiting.data.length = 0;
  hunt.waiting.length = 0;
}

/** Sets looked at in one round: they all see the list as it stands at its beginning [-]. */
const ROUND = 16;

/**
 * The most promising sets; empty, with all that waits put out, once none can do better than the list.
 *
 * @param hunt the search
 */
export function nextRound(hunt: Hunt): readonly Waiting[] {
  const sets: Waiting[] = [];
  for (let first = hunt.waiting.peek(); first && sets.length < ROUND; first = hunt.waiting.peek()) {
    if (first.value >= toBeat(hunt, first.build)) break;
    sets.push(hunt.waiting.pop() as Waiting);
  }
  if (sets.length === 0) putOutRest(hunt);
  return sets;
}

/**
 * Takes what was found of one set into the search.
 *
 * @param hunt the search
 * @param finding of a set of the round
 */
export function take(hunt: Hunt, finding: Finding): void {
  hunt.open -= finding.settled;
  hunt.solved += finding.solved;
  hunt.passes += finding.passes;
  for (const [bound, builds] of finding.ruledOut) {
    hunt.ruledOut.set(bound, (hunt.ruledOut.get(bound) ?? 0) + builds);
  }
  for (const candidate of finding.candidates) hunt.list.insert(candidate);
  for (const { build, value, promised, seen } of finding.waiting) {
    wait(hunt, build, promised, seen, value);
  }
}
