/** Control values of a polynomial over a piece of its range (Bernstein form): the polynomial lies below the greatest. */
export type ControlValues = readonly number[];

/** Halves a piece: control values of the polynomial over the left and over the right half. */
function halves(values: ControlValues): { left: number[]; right: number[] } {
  const left: number[] = [];
  const right: number[] = [];
  let level = values;
  while (level.length > 0) {
    left.push(...level.slice(0, 1));
    right.unshift(...level.slice(-1));
    level = level.slice(1).map((value, i) => (value + (level[i] ?? value)) / 2);
  }
  return { left, right };
}

function greatestEnd(values: ControlValues): number {
  return Math.max(...values.slice(0, 1), ...values.slice(-1));
}

/**
 * Upper bound of the maximum of a piecewise polynomial: never below it, and above it by no more than the tolerance.
 *
 * @param pieces control values of each piece [any unit]; the maximum must be above zero
 * @param tolerance greatest relative excess of the bound [-], > 0
 * @returns the bound [unit of the control values]
 *
 * Source: convex-hull property and de Casteljau subdivision of the Bernstein form, Farin, Curves and Surfaces for
 * CAGD (from memory).
 */
export function upperBound(pieces: readonly ControlValues[], tolerance: number): number {
  let reached = Math.max(...pieces.map(greatestEnd));
  const open = [...pieces];
  for (let piece = open.pop(); piece !== undefined; piece = open.pop()) {
    if (Math.max(...piece) <= reached * (1 + tolerance)) continue;
    const { left, right } = halves(piece);
    reached = Math.max(reached, greatestEnd(left));
    open.push(left, right);
  }
  return reached * (1 + tolerance);
}
