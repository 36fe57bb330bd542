import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { upperBound } from '../../src/numerics/polynomial-bound.ts';

/** Value of a quadratic in Bernstein form. */
function quadratic(values: readonly [number, number, number], t: number): number {
  return values[0] * (1 - t) ** 2 + 2 * values[1] * t * (1 - t) + values[2] * t ** 2;
}

describe('the upper bound of a piecewise polynomial', () => {
  it('is the maximum, rounded up by the tolerance', () => {
    // Derived: 4·t·(1 − t) is at most 1, and t³ on 0 … 1 followed by 2 − t at most 1, then 2.
    expect(upperBound([[0, 2, 0]], 1e-9)).toBeCloseTo(1 + 1e-9, 12);
    expect(upperBound([[0, 0, 0, 1]], 0.01)).toBeCloseTo(1.01, 12);
    expect(
      upperBound(
        [
          [0, 0, 0, 1],
          [2, 1],
        ],
        1e-9,
      ),
    ).toBeCloseTo(2 + 2e-9, 12);
  });

  it('is never below and never more than the tolerance above, for 1000 random quadratics', () => {
    // Derived: a quadratic's maximum lies at an end or where its derivative is zero.
    const control = fc.double({ min: 0.1, max: 10, noNaN: true });
    fc.assert(
      fc.property(control, control, control, (first, middle, last) => {
        const values = [first, middle, last] as const;
        const turn = (first - middle) / (first - 2 * middle + last);
        const inside = turn > 0 && turn < 1 ? quadratic(values, turn) : 0;
        const greatest = Math.max(first, last, inside);
        const bound = upperBound([values], 1e-6);
        expect(bound).toBeGreaterThanOrEqual(greatest);
        expect(bound).toBeLessThanOrEqual(greatest * (1 + 1.0001e-6));
      }),
      { seed: 1959, numRuns: 1000 },
    );
  });
});
