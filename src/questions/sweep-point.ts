import type { BuildState } from './build-state.ts';
import type { PointSureness } from './sweep-sure.ts';

/** What is found at one point of a sweep; a reason where there is nothing to find. */
export interface SweepPoint {
  /** Position on each axis [-]. */
  readonly positions: readonly number[];
  readonly state: BuildState | string;
  /** Null without a solution, or if nobody asked. */
  readonly sure: PointSureness | null;
  /** Option indices of the build that was found anew. */
  readonly build?: readonly number[];
}
