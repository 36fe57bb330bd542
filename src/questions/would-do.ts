import { assemble, plantOf } from '../enclosure/machine.ts';
import { EFFORTS, type Situation } from './levers/lever.ts';
import { levers } from './levers/levers.ts';
import { canHold } from './solved-change.ts';
import { baselineOf, type NextChange, solvedChange, type WhatNext, whatNext } from './what-next.ts';

/** Largest steps that are tried: beyond them it is another box [-] (assumption). */
const MOST_STRENGTH = 6;

/** Order of what changes cost: what they take, then money, then depth, then noise. A price that is unknown comes last. */
function cheaper(one: NextChange, other: NextChange): number {
  const price = ({ price: asked, isFan }: NextChange): number => asked ?? (isFan ? Number.MAX_VALUE : 0);
  return (
    EFFORTS.indexOf(one.effort) - EFFORTS.indexOf(other.effort) ||
    price(one) - price(other) ||
    one.depth - other.depth ||
    one.level - other.level
  );
}

/** The cheapest single change that makes a build hold its limits, and how many were tried. */
export interface WouldDo {
  /** Absent if none of those tried would do. */
  readonly change?: NextChange;
  readonly tried: number;
}

/** Larger steps of all levers, as far as they can do at all. */
function largerSteps(
  situation: Situation,
  strength: number,
): { readonly tried: number; readonly doing: readonly NextChange[] } {
  const base = baselineOf(situation);
  const all = levers.flatMap((lever) =>
    lever.changes(situation, strength).map((change) => ({ lever, change })),
  );
  const able = all.filter(({ change }) => canHold(assemble(plantOf(change.enclosure), change.build)));
  return { tried: all.length, doing: able.map(({ lever, change }) => solvedChange(lever, change, base)) };
}

/**
 * The cheapest single change after which a build holds every limit in every duty: usual steps first, then larger ones.
 *
 * @param situation a build that does not
 * @param first what was found with usual steps
 */
export function wouldDo(situation: Situation, first: WhatNext = whatNext(situation)): WouldDo {
  let { tried } = first;
  let doing = first.changes;
  for (let strength = 1; strength <= MOST_STRENGTH; strength++) {
    if (strength > 1) {
      const larger = largerSteps(situation, strength);
      tried += larger.tried;
      doing = larger.doing;
    }
    const [change] = doing.filter(({ adequate }) => adequate).sort(cheaper);
    if (change) return { change, tried };
  }
  return { tried };
}
