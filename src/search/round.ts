import { type Bound, type Hunt, putOut, toBeat, type Waiting, wait } from './hunt.ts';
import type { Finding } from './look-alone.ts';

/** Why what promises no more than the list holds is out. */
function restReason({ wishes }: Hunt): Bound {
  return wishes.byLevel ? 'too loud for the air it must move' : 'beyond the end of the list';
}

/** Whether anything that waits can do better than the list. */
function isOpen(hunt: Hunt): boolean {
  const first = hunt.waiting.peek();
  return first !== undefined && first.value < toBeat(hunt, first);
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
 * the list little then, and others can do so while bounds of sets are looked at.
 */
const PILE = 16;
/** Piles that may be under way at once [-]: with more than one nobody waits for the last builds of another. */
const MOST_BEGUN = 2;

/** What is to be done next, by whoever does it. */
export interface Round {
  /**
   * Look at sets and have what is found taken in; or begin with builds, whose findings are not yet asked for; or finish
   * those begun first, to be taken in.
   */
  readonly task: 'look' | 'begin' | 'finish';
  readonly sets: readonly Waiting[];
  /** Energy at the listener that a further build must stay below [-]: that at the beginning. */
  readonly toBeat: number;
}

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

/** The most promising sets; once the list is full builds are put aside instead. */
function takeSets(hunt: Hunt): readonly Waiting[] {
  const sets: Waiting[] = [];
  const full = hunt.list.candidates.length >= hunt.options.top;
  for (let first = hunt.waiting.peek(); first && sets.length < ROUND; first = hunt.waiting.peek()) {
    if (first.value >= toBeat(hunt, first) || hunt.pile.length >= PILE) break;
    const set = hunt.waiting.pop() as Waiting;
    if (full && isBuild(set)) hunt.pile.push(set);
    else sets.push(set);
  }
  return sets;
}

/** Hands out sets whose findings are taken in next. */
function ask(hunt: Hunt, round: Round): Round {
  hunt.asked = round.sets;
  return round;
}

/**
 * What is to be done next; null, with all that waits put out, once nothing can do better than the list. The order of
 * rounds does not depend on who does them, nor on how many there are to do them.
 *
 * @param hunt the search
 */
export function nextRound(hunt: Hunt): Round | null {
  const sets = takeSets(hunt);
  const beat = hunt.list.toBeat();
  if (sets.length > 0) return ask(hunt, { task: 'look', sets, toBeat: beat });
  const { begun } = hunt;
  const [first] = begun;
  if (first && (begun.length >= MOST_BEGUN || hunt.pile.length === 0)) {
    begun.shift();
    return ask(hunt, { ...first, task: 'finish' });
  }
  const builds = takePile(hunt);
  if (builds.length > 0) {
    begun.push({ task: 'begin', sets: builds, toBeat: beat });
    return begun.at(-1) as Round;
  }
  // Builds put aside may have been beaten while others still wait.
  if (first || isOpen(hunt)) return nextRound(hunt);
  putOutRest(hunt);
  return null;
}

/** Takes what was found of one set into the search. */
function takeOne(hunt: Hunt, finding: Finding): void {
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

/**
 * Takes what was found of the sets of a round into the search.
 *
 * @param hunt the search
 * @param findings in the order of the sets
 */
export function take(hunt: Hunt, findings: readonly Finding[]): void {
  hunt.asked = [];
  for (const finding of findings) takeOne(hunt, finding);
}
