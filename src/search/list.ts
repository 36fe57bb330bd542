import type { Build } from '../enclosure/enclosure.ts';
import type { Decibels } from '../quantities/dimensions.ts';
import { energy } from '../sound/levels.ts';

/** An adequate build and its sound energy at the listener, as the objective has it [-]. */
export interface Candidate {
  readonly build: Build;
  readonly energy: number;
  /** What the build costs, where the ranking goes by that; 0 where it goes by the level. */
  readonly cost: number;
  /** Speeds of the banks by duty [-]; null for a duty without a share that full speed survives. */
  readonly speeds: readonly (Float64Array | null)[];
}

/** The best builds so far. */
export interface ShortList {
  readonly candidates: readonly Candidate[];
  readonly insert: (candidate: Candidate) => void;
  /**
   * Energy a further build must stay below to matter [-]; infinite while the list is not full. Of a list by cost, the
   * cost it must not exceed.
   */
  readonly toBeat: () => number;
}

/**
 * A list of the best candidates, best first: by cost, then by level.
 *
 * @param length most candidates kept [-], ≥ 1
 * @param gap builds quieter by no more than this do not matter [dB]
 * @param byLevel whether all costs are nothing
 */
export function newShortList(length: number, gap: Decibels, byLevel: boolean): ShortList {
  const candidates: Candidate[] = [];
  const before = (one: Candidate, other: Candidate): boolean =>
    one.cost < other.cost || (one.cost === other.cost && one.energy < other.energy);
  const factor = energy(-gap);
  return {
    candidates,
    insert: (candidate) => {
      const at = candidates.findIndex((other) => before(candidate, other));
      candidates.splice(at < 0 ? candidates.length : at, 0, candidate);
      if (candidates.length > length) candidates.pop();
    },
    toBeat: () => {
      const last = candidates[length - 1];
      if (!last) return Number.POSITIVE_INFINITY;
      return byLevel ? last.energy * factor : last.cost;
    },
  };
}
