import { bracketedRoot } from '../numerics/roots.ts';
import type { ValueRange } from '../quantities/value-range.ts';
import type { SweepPoint } from './sweep-point.ts';

/** Where adequacy begins or ends between two values. */
export interface Crossing {
  /** Position on the axis [-]. */
  readonly position: number;
  /** True if the build is adequate above it. */
  readonly adequateAbove: boolean;
}

/** Accuracy of a crossing, as a share of the distance between two neighbouring values [-]. */
const ACCURACY = 1e-5;
/** Where the lack of kelvins is no number it is taken as this, with its sign [K]. */
const FAR = 1e3;

function signed(value: number): number {
  if (Number.isNaN(value)) return FAR;
  return Math.max(-FAR, Math.min(FAR, value));
}

/** Halves the way between two positions until it is known where adequacy changes. */
function halved(
  low: number,
  high: number,
  adequateBelow: boolean,
  adequateAt: (position: number) => boolean,
): number {
  let [from, to] = [low, high];
  while (to - from > ACCURACY * (high - low)) {
    const middle = 0.5 * (from + to);
    if (adequateAt(middle) === adequateBelow) from = middle;
    else to = middle;
  }
  return adequateBelow ? from : to;
}

/**
 * Finds where adequacy changes between neighbouring points.
 *
 * @param points along one axis, in its order
 * @param range of that axis
 * @param lackAt how far from adequate the build is at a position [K]
 * @param adequateAt whether it is adequate there, asked where the lack does not tell
 */
export function crossingsOf(
  points: readonly SweepPoint[],
  range: ValueRange,
  lackAt: (position: number) => number,
  adequateAt: (position: number) => boolean,
): readonly Crossing[] {
  if (!range.continuous) return [];
  return points.flatMap((point, index) => {
    const before = points[index - 1];
    if (!before) return [];
    const is = [before, point].map(({ state }) => (typeof state === 'string' ? undefined : state.adequate));
    if (is[0] === undefined || is[1] === undefined || is[0] === is[1]) return [];
    const from = before.positions[0] ?? 0;
    const to = point.positions[0] ?? 0;
    // A number of fans, or a word, has nothing between two of its values.
    if (Number.isNaN(lackAt(0.5 * (from + to)))) return [];
    const found = bracketedRoot((position) => signed(lackAt(position)), from, to, {
      tolerance: ACCURACY * (to - from),
    });
    if (found.ok) return [{ position: found.root, adequateAbove: is[1] }];
    return [{ position: halved(from, to, is[0], adequateAt), adequateAbove: is[1] }];
  });
}
