import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalProbability, normalQuantile } from '../../src/sound/normal-distribution.ts';

describe('normal distribution', () => {
  // Computed with SciPy 1.17 stats.norm.
  it.each([
    [0, 0.5],
    [1, 0.8413447460685429],
    [-1.959963984540054, 0.025],
    [2.5, 0.9937903346742238],
    [-5, 2.866515718791933e-7],
    [7.5, 0.999999999999968],
  ])('below %d has probability %d', (z, probability) => {
    expect(Math.abs(normalProbability(z) - probability)).toBeLessThan(1e-14);
  });

  it('ends at 0 and 1', () => {
    expect(normalProbability(Number.NEGATIVE_INFINITY)).toBe(0);
    expect(normalProbability(Number.POSITIVE_INFINITY)).toBe(1);
    expect(normalQuantile(0)).toBe(Number.NEGATIVE_INFINITY);
    expect(normalQuantile(1)).toBe(Number.POSITIVE_INFINITY);
  });

  it('turns back', () => {
    expect(normalQuantile(0.9)).toBeCloseTo(1.2815515655446004, 10); // computed with SciPy 1.17
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 0.999, noNaN: true }), (probability) => {
        expect(normalProbability(normalQuantile(probability))).toBeCloseTo(probability, 12);
      }),
      { seed: 76 },
    );
  });
});
