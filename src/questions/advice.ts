import type { Situation } from './levers/lever.ts';
import { type WhatNext, whatNext } from './what-next.ts';
import { type WouldDo, wouldDo } from './would-do.ts';

/** What to say to who looks at a build. */
export interface Advice {
  readonly next: WhatNext;
  /** Only of a build that does not hold its limits. */
  readonly wouldDo?: WouldDo;
}

/**
 * What to change next in a build, and what would make it adequate if it is not.
 *
 * @param situation the build at its quietest speeds, or at its coolest if no speeds hold the limits
 */
export function adviceOn(situation: Situation): Advice {
  const next = whatNext(situation);
  return situation.outcome.adequate ? { next } : { next, wouldDo: wouldDo(situation, next) };
}
