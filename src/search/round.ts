import { type Bound, type Hunt, putOut, toBeat, type Waiting, wait } from './hunt.ts';
import type { Finding } from './look-alone.ts';

/** Why what promises no more than the list holds is out. */
function restReason({ wishes }: Hunt): Bound {
  return wishes.byLevel ? 'too loud for the air it must move' : 'beyond the end of the list';
}

/** Nothing that waits can do better than the list. */
function putOutRest(hunt: Hunt): void {
  for (const { build } of hunt.waiting.data) putOut(hunt, restReason(hunt), build);
  hunt.waiting.data.length = 0;
  hunt.waiting.length = 0;
}

/** Sets looked at in one round: they all see the list as it stands at its beginning [-]. */
const ROUND = 16;
/**
 * Builds that are put aside until so many can be worked out at once, once the list is full [-]: working one out changes
 * the list little then, and many at once can be shared.
 */
const PILE = 16;

/**
 * Whether the speeds of a build are all that is left to find.
 *
 * @param set that waits
 */
export function isBuild({ build, seen }: Waiting): boolean {
  return seen === 'closely' && build.every((option) => option >= 0);
}

/** The builds put aside that may still make the list; none are left there. */
function takePile(hunt: Hunt): readonly Waiting[] {
  const builds = hunt.pile.splice(0);
  return builds.filter((set) => {
    const beaten = set.value >= toBeat(hunt, set);
    if (beaten) putOut(hunt, restReason(hunt), set.build);
    return !beaten;
  });
}

/**
 * The most promising sets; empty, with all that waits put out, once none can do better than the list.
 *
 * @param hunt the search
 */
export function nextRound(hunt: Hunt): readonly Waiting[] {
  const sets: Waiting[] = [];
  const full = hunt.list.candidates.length >= hunt.options.top;
  for (let first = hunt.waiting.peek(); first && sets.length < ROUND; first = hunt.waiting.peek()) {
    if (first.value >= toBeat(hunt, first)) break;
    const set = hunt.waiting.pop() as Waiting;
    if (full && isBuild(set)) hunt.pile.push(set);
    else sets.push(set);
    if (hunt.pile.length >= PILE) break;
  }
  if (sets.length === 0 || hunt.pile.length >= PILE) sets.push(...takePile(hunt));
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
