/** Node of the table: factor k and its slope against the Reynolds number. */
interface Node {
  readonly reynolds: number;
  readonly factor: number;
  readonly slope: number;
}

/** Above it the creeping part 22/Re no longer holds and the table begins. */
export const CREEPING_END = 50;
/** k = 1 + 22/Re at low Reynolds numbers. Source: Idelchik, 3rd ed., diagram 8-6 (from memory). */
export const CREEPING = 22;

/**
 * Factor on a wire screen's loss. The first slope is that of 1 + 22/Re, the last is nothing, and those between are
 * the shape-preserving ones of Fritsch & Butland (1984), so that the loss has no kink.
 *
 * Source: Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagram 8-6 (from memory).
 */
const table: readonly [Node, ...Node[]] = [
  { reynolds: CREEPING_END, factor: 1 + CREEPING / CREEPING_END, slope: -CREEPING / CREEPING_END ** 2 },
  { reynolds: 100, factor: 1.24, slope: -44 / 15_500 },
  { reynolds: 150, factor: 1.13, slope: -11 / 8000 },
  { reynolds: 200, factor: 1.08, slope: -9 / 13_000 },
  { reynolds: 300, factor: 1.03, slope: -3 / 8000 },
  { reynolds: 400, factor: 1, slope: 0 },
];

/** A factor and its derivative. */
export interface Factor {
  readonly factor: number;
  /** Against the Reynolds number. */
  readonly slope: number;
}

/**
 * Factor k on the turbulent loss of a wire screen at low Reynolds numbers, smooth and falling to 1 at Re 400.
 *
 * Source: Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagram 8-6 (from memory).
 *
 * @param reynolds velocity before the screen times wire diameter over kinematic viscosity [-], > 0
 */
export function wireFactor(reynolds: number): Factor {
  if (reynolds <= CREEPING_END) {
    return { factor: 1 + CREEPING / reynolds, slope: -CREEPING / (reynolds * reynolds) };
  }
  let left = table[0];
  for (const right of table) {
    if (reynolds < right.reynolds) return between(left, right, reynolds);
    left = right;
  }
  return { factor: 1, slope: 0 };
}

/** Cubic through two nodes with their slopes. */
function between(left: Node, right: Node, reynolds: number): Factor {
  const width = right.reynolds - left.reynolds;
  const t = (reynolds - left.reynolds) / width;
  const secant = (right.factor - left.factor) / width;
  const bend = 3 * secant - 2 * left.slope - right.slope;
  const twist = left.slope + right.slope - 2 * secant;
  return {
    factor: left.factor + width * t * (left.slope + t * (bend + t * twist)),
    slope: left.slope + t * (2 * bend + 3 * t * twist),
  };
}
