import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  evaluate,
  hermiteCurve,
  inverseAt,
  monotoneCurve,
  pchipSlopes,
  slopeAt,
  valueAt,
} from '../../src/numerics/monotone-curve.ts';

const FLOWS = [0, 5, 10, 15, 20, 25];
const PRESSURES = [40, 34, 27, 22, 12, 0];

function expectClose(actual: ArrayLike<number>, expected: readonly number[], tolerance: number): void {
  expect(actual.length).toBe(expected.length);
  expected.forEach((value, i) => {
    expect(Math.abs((actual[i] ?? Number.NaN) - value)).toBeLessThanOrEqual(
      tolerance * Math.max(Math.abs(value), 1e-6),
    );
  });
}

/** Steps of a falling curve: widths, and falls of zero or more. */
const fallingSteps = fc.array(
  fc.tuple(
    fc.double({ min: 0.01, max: 1, noNaN: true }),
    fc.integer({ min: 0, max: 1000 }).map((fall) => fall / 100),
  ),
  { minLength: 1, maxLength: 11 },
);

function fallingPoints(steps: readonly (readonly [number, number])[]): { x: number[]; y: number[] } {
  const x = [0];
  const y = [steps.reduce((sum, [, fall]) => sum + fall, 0)];
  for (const [width, fall] of steps) {
    x.push((x.at(-1) ?? 0) + width);
    y.push((y.at(-1) ?? 0) - fall);
  }
  return { x, y };
}

describe('slopes of a monotone curve', () => {
  it('are those of SciPy for even spacing', () => {
    // Computed with SciPy 1.10 PchipInterpolator.
    expectClose(pchipSlopes(FLOWS, PRESSURES), [-1.1, -1.29231, -1.16667, -1.33333, -2.18182, -2.6], 1e-5);
  });

  it('are those of SciPy for uneven spacing, with a level piece and a flat end', () => {
    // Computed with SciPy 1.17.1 PchipInterpolator.
    const slopes = pchipSlopes([0, 3, 4, 9, 11, 20], [50, 44, 44, 30, 12, 0]);
    expectClose(slopes, [-3.5, 0, 0, -4.617801047120419, -2.7563805104408354, 0], 1e-13);
  });

  it('are those of SciPy where an end would overshoot or turn', () => {
    // Computed with SciPy 1.17.1 PchipInterpolator.
    expectClose(pchipSlopes([0, 1, 3], [0, 5, 4.9]), [6.683333333333334, 0, -0.15], 1e-13);
    expectClose(pchipSlopes([0, 1, 3], [0, 0.1, 9]), [0, 0.17682119205298014, 7.35], 1e-13);
    const turning = pchipSlopes([0, 1, 5, 5.5], [10, 9, -8, 10]);
    expectClose(turning, [-0.35, -1.440677966101695, 0, 40.4722222222222], 1e-13);
  });

  it('are limited to three secants where an end turns sharply', () => {
    // Derived: 3·1 exceeds the limit of the three-point formula (2·1 + 1)/2 + 20/2 = 11.5.
    expect(pchipSlopes([0, 1, 2], [0, 1, -19])[0]).toBe(3);
  });

  it('are the secant of two points', () => {
    expect([...pchipSlopes([1, 3], [5, 4])]).toEqual([-0.5, -0.5]);
  });

  it('need ascending knots and as many values', () => {
    expect(() => pchipSlopes([0], [1])).toThrow(RangeError);
    expect(() => pchipSlopes([0, 1], [1])).toThrow(RangeError);
    expect(() => pchipSlopes([0, 1, 1], [1, 2, 3])).toThrow(RangeError);
    expect(() => pchipSlopes([0, Number.NaN], [1, 2])).toThrow(RangeError);
  });
});

describe('a monotone curve', () => {
  it('has the values of SciPy', () => {
    // Computed with SciPy 1.10 PchipInterpolator.
    const curve = monotoneCurve(FLOWS, PRESSURES);
    const values = [2.5, 7.5, 12.5, 17.5, 22.5].map((x) => valueAt(curve, x));
    expectClose(values, [37.1202, 30.4215, 24.6042, 17.5303, 6.26136], 1e-5);
  });

  it('has the values of SciPy for uneven spacing', () => {
    // Computed with SciPy 1.17.1 PchipInterpolator.
    const curve = monotoneCurve([0, 3, 4, 9, 11, 20], [50, 44, 44, 30, 12, 0]);
    const values = [1, 3.5, 6, 10.5, 15, 19].map((x) => valueAt(curve, x));
    const expected = [46.88888888888889, 44, 41.2885445026178, 15.154813170393949, 3.5929458718837424];
    expectClose(values, [...expected, 0.13928752160255142], 1e-13);
  });

  it('goes through its knots and on straight outside', () => {
    const curve = monotoneCurve(FLOWS, PRESSURES);
    FLOWS.forEach((x, i) => {
      expect(valueAt(curve, x)).toBe(PRESSURES[i]);
    });
    // Derived from the end slopes -1.1 and -2.6.
    expect(valueAt(curve, -2)).toBeCloseTo(42.2, 12);
    expect(valueAt(curve, 26)).toBeCloseTo(-2.6, 12);
    expect(slopeAt(curve, -2)).toBeCloseTo(-1.1, 12);
    expect(slopeAt(curve, 30)).toBeCloseTo(-2.6, 12);
  });

  it('is exact for a cubic with its own slopes', () => {
    // Derived: x³ − 2x on 1 … 3.
    const curve = hermiteCurve([1, 3], [-1, 21], [1, 25]);
    for (const x of [1, 1.3, 2, 2.9]) {
      expect(valueAt(curve, x)).toBeCloseTo(x ** 3 - 2 * x, 12);
      expect(slopeAt(curve, x)).toBeCloseTo(3 * x ** 2 - 2, 12);
    }
  });

  it('never rises through falling points, and never leaves their range', () => {
    // Published: Fritsch and Butland 1984. Allowed: rounding of four units in the last place of the top value.
    fc.assert(
      fc.property(fallingSteps, (steps) => {
        const { x, y } = fallingPoints(steps);
        const curve = monotoneCurve(x, y);
        const rounding = 4 * Number.EPSILON * (y[0] ?? 0);
        const out = { value: 0, slope: 0 };
        let before = y[0] ?? 0;
        let worstSlope = Number.NEGATIVE_INFINITY;
        let worstRise = 0;
        for (let i = 1; i <= 60; i += 1) {
          evaluate(curve, ((x.at(-1) ?? 0) * i) / 60, out);
          worstRise = Math.max(worstRise, out.value - before);
          worstSlope = Math.max(worstSlope, out.slope);
          before = out.value;
        }
        expect(worstRise).toBeLessThanOrEqual(rounding);
        expect(worstSlope).toBeLessThanOrEqual(rounding / 0.01);
      }),
      { seed: 1980, numRuns: 10_000 },
    );
  });

  it('has the slope of its values', () => {
    fc.assert(
      fc.property(fallingSteps, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (steps, share) => {
        const { x, y } = fallingPoints(steps);
        const curve = monotoneCurve(x, y);
        const at = share * (x.at(-1) ?? 0);
        const h = 1e-6;
        const difference = (valueAt(curve, at + h) - valueAt(curve, at - h)) / (2 * h);
        // The second derivative is at most 6 · 3 secants of 1000 over a width of 0.01.
        expect(Math.abs(slopeAt(curve, at) - difference)).toBeLessThan(h * 1.8e6);
      }),
      { seed: 1984, numRuns: 1000 },
    );
  });
});

describe('the inverse of a monotone curve', () => {
  it('finds the place of a value', () => {
    fc.assert(
      fc.property(fallingSteps, fc.double({ min: 0, max: 1, noNaN: true }), (steps, share) => {
        const { x, y } = fallingPoints(steps);
        const curve = monotoneCurve(x, y);
        const [top = 0] = y;
        const bottom = y.at(-1) ?? 0;
        const wanted = bottom + share * (top - bottom);
        const found = inverseAt(curve, Math.min(wanted, top));
        expect(found).toBeDefined();
        expect(Math.abs(valueAt(curve, found ?? Number.NaN) - wanted)).toBeLessThan(1e-9 * Math.max(top, 1));
      }),
      { seed: 7, numRuns: 1000 },
    );
  });

  it('works on rising curves and gives the left end of a level piece', () => {
    const curve = monotoneCurve([0, 1, 2, 4], [1, 3, 3, 8]);
    expect(inverseAt(curve, 3)).toBe(1);
    expect(inverseAt(curve, 1)).toBe(0);
    expect(inverseAt(curve, 8)).toBe(4);
    const middle = inverseAt(curve, 5) ?? Number.NaN;
    expect(middle).toBeGreaterThan(2);
    expect(valueAt(curve, middle)).toBeCloseTo(5, 12);
  });

  it('has nothing outside the range of the curve', () => {
    const curve = monotoneCurve(FLOWS, PRESSURES);
    expect(inverseAt(curve, 40.1)).toBeUndefined();
    expect(inverseAt(curve, -0.1)).toBeUndefined();
  });
});
