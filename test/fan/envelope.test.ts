import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  curveFault,
  fallingPoints,
  LEAST_SLOPE_SHARE,
  lastPeak,
  lowerEnvelope,
} from '../../src/fan/envelope.ts';

const DIPPED = { flows: [0, 5, 10, 15, 18, 22, 26, 30], pressures: [40, 33, 25, 22, 24, 21, 12, 0] };

describe('the lower envelope', () => {
  it('is the running minimum', () => {
    // Derived.
    expect(lowerEnvelope(DIPPED.pressures)).toEqual([40, 33, 25, 22, 22, 21, 12, 0]);
    expect(lowerEnvelope([30, 32, 31, 10])).toEqual([30, 30, 30, 10]);
  });
});

describe('the last pressure peak', () => {
  it('ends the last rising piece', () => {
    expect(lastPeak(DIPPED)).toBe(18);
    expect(lastPeak({ flows: [0, 1, 2, 3, 4, 5], pressures: [10, 12, 9, 9.5, 9.5, 0] })).toBe(3);
  });

  it('is at zero flow if the points never rise', () => {
    expect(lastPeak({ flows: [0, 1, 2], pressures: [10, 10, 0] })).toBe(0);
  });
});

describe('falling points', () => {
  it('are the envelope, with only its level pieces tilted', () => {
    // Derived: least slope 2.5e-4 · 40/30 over a width of 3.
    const { flows, pressures } = fallingPoints(DIPPED);
    expect(flows).toEqual(DIPPED.flows);
    expect(pressures[4]).toBeCloseTo(21.999, 12);
    expect(pressures.filter((_, i) => i !== 4)).toEqual([40, 33, 25, 22, 21, 12, 0]);
  });

  it('stay above zero where the points all but touch it', () => {
    // Derived: least slope 2.5e-4 · 40/40 over the last 20 and the last 10.
    const { pressures } = fallingPoints({ flows: [0, 20, 30, 40], pressures: [40, 0.004, 0.001, 0] });
    expect(pressures[1]).toBeCloseTo(0.005, 15);
    expect(pressures[2]).toBeCloseTo(0.0025, 15);
  });

  it('are drawn out to zero with the last slope', () => {
    // Derived: 10 Pa at 5 Pa a unit of flow.
    expect(fallingPoints({ flows: [0, 10, 12], pressures: [30, 20, 10] })).toEqual({
      flows: [0, 10, 12, 14],
      pressures: [30, 20, 10, 0],
    });
  });

  it('are drawn out with the mean slope if the last piece is flatter', () => {
    // Derived: 20 Pa over 10, so 10 Pa more in another 5.
    const { flows } = fallingPoints({ flows: [0, 5, 10], pressures: [30, 10, 10] });
    expect(flows.at(-1)).toBeCloseTo(15, 12);
  });

  it('are cut where the pressure passes zero', () => {
    // Derived: 10 of 15 Pa fall over 3 of flow.
    expect(fallingPoints({ flows: [0, 10, 13, 20], pressures: [30, 10, -5, -60] })).toEqual({
      flows: [0, 10, 12],
      pressures: [30, 10, 0],
    });
    expect(fallingPoints({ flows: [0, 10, 13, 20], pressures: [30, 10, 0, 0] }).flows).toEqual([0, 10, 13]);
  });

  it('are drawn back to zero flow, but to no more than twice the first pressure', () => {
    // Derived: 2 Pa a unit of flow, five units.
    expect(fallingPoints({ flows: [5, 10, 20], pressures: [30, 20, 0] }).pressures[0]).toBe(40);
    expect(fallingPoints({ flows: [20, 21], pressures: [10, 0] }).pressures[0]).toBe(20);
    expect(fallingPoints({ flows: [5, 6, 20], pressures: [30, 31, 0] }).pressures[0]).toBeCloseTo(30, 1);
  });

  it('fall at least with the least slope and nowhere exceed the points by more than that allows', () => {
    const pieces = fc.array(fc.tuple(fc.integer({ min: 1, max: 50 }), fc.integer({ min: 0, max: 600 })), {
      minLength: 1,
      maxLength: 10,
    });
    fc.assert(
      fc.property(pieces, fc.integer({ min: 50, max: 600 }), (steps, shutOff) => {
        const flows = [0];
        for (const [width] of steps) flows.push((flows.at(-1) ?? 0) + width);
        const points = {
          flows: [...flows, (flows.at(-1) ?? 0) + 7],
          pressures: [shutOff, ...steps.map(([, p]) => p), 0],
        };
        const falling = fallingPoints(points);
        const delivery = falling.flows.at(-1) ?? 0;
        const least = (LEAST_SLOPE_SHARE * shutOff) / delivery;
        expect(falling.pressures.at(-1)).toBe(0);
        expect(falling.pressures[0]).toBe(shutOff);
        for (let i = 1; i < falling.flows.length; i += 1) {
          const width = (falling.flows[i] ?? 0) - (falling.flows[i - 1] ?? 0);
          const fall = (falling.pressures[i - 1] ?? 0) - (falling.pressures[i] ?? 0);
          expect(fall).toBeGreaterThanOrEqual(least * width * (1 - 1e-9));
          expect(falling.pressures[i]).toBeLessThanOrEqual(
            (points.pressures[i] ?? 0) + LEAST_SLOPE_SHARE * shutOff,
          );
        }
      }),
      { seed: 25, numRuns: 1000 },
    );
  });
});

describe('unusable points', () => {
  it.each([
    ['unequal-lengths', [0, 1], [1]],
    ['too-few-points', [0], [1]],
    ['too-few-points', [], []],
    ['not-finite', [0, Number.NaN], [1, 0]],
    ['not-finite', [0, 1], [Number.POSITIVE_INFINITY, 0]],
    ['negative-flow', [-1, 1], [1, 0]],
    ['flows-not-ascending', [0, 1, 1], [3, 2, 0]],
    ['flows-not-ascending', [0, 2, 1], [3, 2, 0]],
    ['no-pressure', [0, 1], [0, 0]],
    ['no-pressure', [0, 1], [-3, -4]],
    ['does-not-fall', [0, 1], [5, 5]],
    ['does-not-fall', [0, 1, 2], [5, 6, 7]],
    ['does-not-fall', [0, 1], [5, 4.5]],
    ['flows-not-ascending', [0, 1, 2], [5, 4, -1e30]],
    ['not-finite', [1, 2], [1.5e308, 1]],
  ])('are named: %s', (fault, flows, pressures) => {
    expect(curveFault({ flows, pressures })).toBe(fault);
    expect(() => fallingPoints({ flows, pressures })).toThrow(
      new RangeError(`points of a fan curve: ${fault}`),
    );
  });

  it('are not found where there are none', () => {
    expect(curveFault(DIPPED)).toBeUndefined();
    expect(curveFault({ flows: [0, 1], pressures: [5, 4] })).toBe('does-not-fall');
    expect(curveFault({ flows: [0, 1], pressures: [4, 3] })).toBeUndefined();
  });
});
