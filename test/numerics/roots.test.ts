import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bracketedRoot } from '../../src/numerics/roots.ts';

describe('a bracketed root', () => {
  // Roots derived, or known constants.
  it.each([
    ['x² − 2', (x: number) => x * x - 2, 0, 2, Math.SQRT2],
    ['eˣ − 10', (x: number) => Math.exp(x) - 10, -5, 10, Math.LN10],
    ['cos x', Math.cos, 0, 3, Math.PI / 2],
    ['x³', (x: number) => x ** 3, -1, 1.7, 0],
    [
      '√|x| with sign, about 0.3',
      (x: number) => Math.sign(x - 0.3) * Math.sqrt(Math.abs(x - 0.3)),
      0,
      1,
      0.3,
    ],
    ['a step at 0.7', (x: number) => (x < 0.7 ? -1 : 1), 0, 1, 0.7],
    ['a straight line downwards', (x: number) => 3 - 2 * x, 0, 10, 1.5],
  ])('of %s is found', (_, f, low, high, expected) => {
    const found = bracketedRoot(f, low, high, { tolerance: 1e-10 });
    expect(found.ok).toBe(true);
    if (found.ok) expect(Math.abs(found.root - expected)).toBeLessThan(1.1e-10);
  });

  it('takes few calls for smooth functions', () => {
    // Derived: halving alone takes 36 calls to part an interval of 3 to 1e-10.
    let calls = 0;
    const counted = (x: number) => {
      calls += 1;
      return Math.exp(x) - x - 3;
    };
    const found = bracketedRoot(counted, 0, 3, { tolerance: 1e-10 });
    expect(found).toMatchObject({ ok: true, calls });
    expect(calls).toBeLessThanOrEqual(12);
  });

  it('takes little more than halving where interpolation does not help', () => {
    // Derived: halving parts an interval of 2.7 to 1e-12 in 42 calls.
    for (const f of [(x: number) => x ** 21, (x: number) => x ** 3, (x: number) => (x < 0.7 ? -1 : 1e6)]) {
      expect(bracketedRoot(f, -1, 1.7, { tolerance: 1e-12, maxCalls: 60 }).ok).toBe(true);
    }
  });

  it('is found to rounding if no tolerance is given', () => {
    const found = bracketedRoot((x) => x ** 5 - 7, 0, 3, { tolerance: 0 });
    expect(found.ok && Math.abs(found.root / 7 ** 0.2 - 1)).toBeLessThan(1e-15);
  });

  it('may lie at an end', () => {
    expect(bracketedRoot((x) => x, 0, 1, { tolerance: 1e-9 })).toEqual({ ok: true, root: 0, calls: 1 });
    expect(bracketedRoot((x) => x, -1, 0, { tolerance: 1e-9 })).toEqual({ ok: true, root: 0, calls: 2 });
  });

  it('is refused with a reason and the best argument', () => {
    const lifted = (x: number) => x * x + 1;
    expect(bracketedRoot(lifted, -1, 3, { tolerance: 1e-9 })).toEqual({
      ok: false,
      reason: 'no-sign-change',
      best: -1,
    });
    expect(bracketedRoot((x) => 1 / x - 1, 0, 3, { tolerance: 1e-9 })).toEqual({
      ok: false,
      reason: 'not-finite',
      best: 3,
    });
    expect(bracketedRoot((x) => Math.log(x), 1.5, -1, { tolerance: 1e-9 })).toEqual({
      ok: false,
      reason: 'not-finite',
      best: 1.5,
    });
    const hole = (x: number) => (x > 0.2 && x < 0.9 ? Number.NaN : x - 0.5);
    expect(bracketedRoot(hole, 0, 2, { tolerance: 1e-9 })).toMatchObject({ ok: false, reason: 'not-finite' });
    const step = (x: number) => (x < 0.7 ? -1 : 2);
    const stopped = bracketedRoot(step, 0, 1, { tolerance: 1e-12, maxCalls: 5 });
    expect(stopped).toMatchObject({ ok: false, reason: 'too-many-calls' });
  });

  it('never looks outside and never takes many calls, for 1000 random monotone functions', () => {
    // Derived: halving takes about 40 calls to 1e-12; three times that is the least a safe method may promise.
    const cases = fc.tuple(
      fc.double({ min: -0.999, max: 0.999, noNaN: true }),
      fc.double({ min: 0.2, max: 9, noNaN: true }),
      fc.double({ min: 0, max: 5, noNaN: true }),
    );
    fc.assert(
      fc.property(cases, ([root, power, line]) => {
        let outside = 0;
        const f = (x: number) => {
          if (x < -1 || x > 1) outside += 1;
          return Math.sign(x - root) * Math.abs(x - root) ** power + line * (x - root);
        };
        const found = bracketedRoot(f, -1, 1, { tolerance: 1e-12, maxCalls: 120 });
        expect(outside).toBe(0);
        expect(found.ok).toBe(true);
        if (found.ok)
          expect(Math.abs(f(found.root))).toBeLessThanOrEqual(Math.abs(f(root + 1.1e-12)) + 1e-15);
      }),
      { seed: 1997, numRuns: 1000 },
    );
  });
});
