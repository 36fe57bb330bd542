import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { minimise } from '../../src/numerics/minimum.ts';

describe('the minimum between two ends', () => {
  // Derived by setting the derivative to zero.
  it.each([
    ['(x − 2)²', (x: number) => (x - 2) ** 2, -5, 9, 2, 0],
    ['eˣ − 3x', (x: number) => Math.exp(x) - 3 * x, 0, 3, Math.log(3), 3 - 3 * Math.log(3)],
    ['|x − 0.4|', (x: number) => Math.abs(x - 0.4), -1, 1, 0.4, 0],
    ['x⁴', (x: number) => x ** 4, -1, 2, 0, 0],
    ['x ln x', (x: number) => x * Math.log(x), 0.01, 2, 1 / Math.E, -1 / Math.E],
  ])('of %s is found', (_, f, low, high, at, value) => {
    const found = minimise(f, low, high, 1e-7);
    expect(found.ok).toBe(true);
    if (!found.ok) return;
    expect(Math.abs(found.value - value)).toBeLessThan(1.1e-7);
    expect(Math.abs(f(found.at) - found.value)).toBe(0);
    if (value !== 0 || at !== 0) expect(Math.abs(found.at - at)).toBeLessThan(1.5e-7);
  });

  it('may lie exactly at an end', () => {
    expect(minimise((x) => 2 * x, 1, 4, 1e-6)).toMatchObject({ ok: true, at: 1, value: 2 });
    expect(minimise((x) => -x, 1, 4, 1e-6)).toMatchObject({ ok: true, at: 4, value: -4 });
    expect(minimise((x) => x, 3, 3, 1e-6)).toMatchObject({ ok: true, at: 3, value: 3 });
  });

  it('takes few calls for smooth functions and counts them', () => {
    // Computed with SciPy 1.17.1 minimize_scalar(method='bounded'): 10 calls without the two ends.
    let calls = 0;
    const counted = (x: number) => {
      calls += 1;
      return Math.exp(x) - 3 * x;
    };
    expect(minimise(counted, 0, 3, 1e-8)).toMatchObject({ ok: true, calls });
    expect(calls).toBeLessThanOrEqual(13);
  });

  it('takes no more calls than golden cuts need where a kink misleads the parabolas', () => {
    // Derived: golden cuts part 2 to 1e-7 in ln(2e7)/ln(1.618) = 35 calls.
    const found = minimise((x) => Math.abs(x - 0.4), -1, 1, 1e-7);
    expect(found.ok && found.calls).toBeLessThanOrEqual(35);
  });

  it('is refused with a reason where the function is not finite', () => {
    expect(minimise((x) => (x > 0.2 ? Number.NaN : x), 0, 1, 1e-6)).toMatchObject({
      ok: false,
      reason: 'not-finite',
    });
    expect(minimise((x) => 1 / (1 - x), 0, 1, 1e-6)).toMatchObject({ ok: false, reason: 'not-finite' });
    expect(minimise((x) => (x < 0.3 ? Number.NaN : x), 0, 1, 1e-6)).toMatchObject({
      ok: false,
      best: expect.any(Number),
    });
  });

  it('is found for 1000 random functions with one minimum', () => {
    const cases = fc.tuple(
      fc.double({ min: -1, max: 1, noNaN: true }),
      fc.double({ min: 1, max: 4, noNaN: true }),
      fc.double({ min: 0.1, max: 10, noNaN: true }),
    );
    fc.assert(
      fc.property(cases, ([at, power, weight]) => {
        const f = (x: number) => Math.abs(x - at) ** power * (x < at ? weight : 1);
        const found = minimise(f, -1, 1, 1e-6);
        expect(found.ok).toBe(true);
        if (found.ok) expect(found.value).toBeLessThanOrEqual(Math.max(f(at + 1.1e-6), f(at - 1.1e-6)));
      }),
      { seed: 1973, numRuns: 1000 },
    );
  });
});
