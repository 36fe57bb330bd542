import { describe, expect, it } from 'vitest';
import { leastSquares } from '../../src/numerics/least-squares.ts';

/** Published: NIST StRD, nonlinear regression, Misra1a (from memory; the certified results below confirm it). */
const MISRA1A = [
  [77.6, 10.07],
  [114.9, 14.73],
  [141.1, 17.94],
  [190.8, 23.93],
  [239.9, 29.61],
  [289, 35.18],
  [332.8, 40.02],
  [378.4, 44.82],
  [434.8, 50.76],
  [477.3, 55.05],
  [536.8, 61.01],
  [593.1, 66.4],
  [689.1, 75.47],
  [760, 81.78],
] as const;

describe('least squares', () => {
  it('meet certified values of a known set', () => {
    // Published: y = b1·(1 − exp(−b2·x)): 238.94212918 ± 2.7070075241, 5.5015643181e-4 ± 7.2668688436e-6, residual sum
    // 0.12455138894, standard deviation 0.10187876330 with 12 degrees of freedom. Started at 500 and 1e-4, as published.
    const deviation = 0.1018787633;
    const found = leastSquares(
      ([scale = 0, rate = 0]) =>
        MISRA1A.map(([x, y]) => (Math.exp(scale) * -Math.expm1(-Math.exp(rate) * x) - y) / deviation),
      [Math.log(500), Math.log(1e-4)],
    );
    if (!found.ok) throw new Error(found.reason);
    const [scale = 0, rate = 0] = found.values.map(Math.exp);
    expect(scale / 238.94212918).toBeCloseTo(1, 8);
    expect(rate / 5.5015643181e-4).toBeCloseTo(1, 8);
    expect((found.misfit * deviation ** 2) / 0.12455138894).toBeCloseTo(1, 8);
    const [first = 0, second = 0] = found.covariance.map((row, index) => Math.sqrt(row[index] ?? 0));
    expect((first * scale) / 2.7070075241).toBeCloseTo(1, 5);
    expect((second * rate) / 7.2668688436e-6).toBeCloseTo(1, 5);
  });

  it('of a straight line are those of the textbook', () => {
    // Derived: slope Sxy/Sxx, variances σ²/Sxx and σ²·Σx²/(n·Sxx) for σ = 1.
    const x = [0, 1, 2, 3, 5];
    const y = [1.1, 2.9, 5.2, 6.8, 11.3];
    const found = leastSquares(
      ([intercept = 0, slope = 0]) => x.map((at, index) => intercept + slope * at - (y[index] ?? 0)),
      [0, 0],
    );
    if (!found.ok) throw new Error(found.reason);
    // n 5, Σx 11, Σx² 39, Σy 27.3, Σxy 90.2: Sxx 14.8, Sxy 30.14.
    expect(found.values[1]).toBeCloseTo(30.14 / 14.8, 8);
    expect(found.values[0]).toBeCloseTo((27.3 - (11 * 30.14) / 14.8) / 5, 8);
    expect(found.covariance[1]?.[1]).toBeCloseTo(1 / 14.8, 8);
    expect(found.covariance[0]?.[0]).toBeCloseTo(39 / (5 * 14.8), 8);
    expect(found.covariance[0]?.[1]).toBeCloseTo(-11 / (5 * 14.8), 8);
  });

  it('say what they cannot tell', () => {
    const sum = leastSquares(([a = 0, b = 0]) => [a + b - 1, 2 * (a + b) - 2.1], [0, 0]);
    expect(sum).toEqual({ ok: false, reason: 'undetermined' });
    expect(leastSquares(([a = 0]) => [a - 1, 1], [Number.NaN])).toMatchObject({ reason: 'not-finite' });
    // A value without any effect.
    expect(leastSquares(([a = 0]) => [a - 1], [0, 5])).toMatchObject({ reason: 'undetermined' });
  });

  it('find the valley of Rosenbrock', () => {
    // Published: Rosenbrock (1960), residuals 10·(y − x²) and 1 − x, start (−1.2, 1), least at (1, 1).
    const found = leastSquares(([x = 0, y = 0]) => [10 * (y - x * x), 1 - x], [-1.2, 1]);
    if (!found.ok) throw new Error(found.reason);
    expect(found.values[0]).toBeCloseTo(1, 9);
    expect(found.values[1]).toBeCloseTo(1, 9);
  });
});
