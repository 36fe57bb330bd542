import TinyQueue from 'tinyqueue';
import { BOUNDS, type Bound, type Hunt, look, type Waiting } from './hunt.ts';
import type { Candidate } from './list.ts';

/** What came of looking at one set of builds by itself. Plain data: it may come from another thread. */
export interface Finding {
  /** Sets and builds that still wait, in the order in which they were found. */
  readonly waiting: readonly Waiting[];
  readonly candidates: readonly Candidate[];
  readonly ruledOut: readonly (readonly [Bound, number])[];
  /** Builds that are settled now. */
  readonly settled: number;
  readonly solved: number;
  readonly passes: number;
}

/**
 * Looks at one set of builds without touching the search it belongs to. What is found depends on the set and on the
 * energy to beat alone, never on what was looked at before or by whom.
 *
 * @param hunt the search, for what it knows of the enclosure
 * @param first the set
 * @param toBeat energy at the listener, as the objective has it, that a further build must stay below [-]
 */
export function lookAlone(hunt: Hunt, first: Waiting, toBeat: number): Finding {
  const candidates: Candidate[] = [];
  const ruledOut = new Map<Bound, number>(BOUNDS.map((name) => [name, 0]));
  const alone: Hunt = {
    ...hunt,
    list: { candidates, insert: (candidate) => void candidates.push(candidate), toBeat: () => toBeat },
    waiting: new TinyQueue<Waiting>([], (a, b) => a.arrival - b.arrival),
    ruledOut,
    arrivals: 0,
    open: 0,
    solved: 0,
    passes: 0,
  };
  look(alone, first);
  const waiting: Waiting[] = [];
  for (let next = alone.waiting.pop(); next; next = alone.waiting.pop()) waiting.push(next);
  return {
    waiting,
    candidates,
    ruledOut: [...ruledOut].filter(([, builds]) => builds > 0),
    settled: -alone.open,
    solved: alone.solved,
    passes: alone.passes,
  };
}
