import type { Build } from '../enclosure/enclosure.ts';
import type { Decibels } from '../quantities/dimensions.ts';
import { energy } from '../sound/levels.ts';

/** An adequate build and its sound energy at the listener, as the objective has it [-]. */
export interface Candidate {
  readonly build: Build;
  readonly energy: number;
  /** Speeds of the banks by duty [-]; null for a duty without a share that full speed survives. */
  readonly speeds: readonly (Float64Array | null)[];
}

/** The best builds so far. */
export interface ShortList {
  readonly candidates: readonly Candidate[];
  readonly insert: (candidate: Candidate) => void;
  /** Energy a further build must stay below to matter [-]; infinite while the list is not full. */
  readonly toBeat: () => number;
}

/**
 * A list of the quietest candidates, quietest first.
 *
 * @param length most candidates kept [-], ≥ 1
 * @param gap builds quieter by no more than this do not matter [dB]
 */
export function newShortList(length: number, gap: Decibels): ShortList {
  const candidates: Candidate[] = [];
  const factor = energy(-gap);
  return {
    candidates,
    insert: (candidate) => {
      const at = candidates.findIndex((other) => candidate.energy < other.energy);
      candidates.splice(at < 0 ? candidates.length : at, 0, candidate);
      if (candidates.length > length) candidates.pop();
    },
    toBeat: () => {
      const last = candidates[length - 1];
      return last ? last.energy * factor : Number.POSITIVE_INFINITY;
    },
  };
}
