import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  energy,
  equivalentLevel,
  levelAtDistance,
  levelOf,
  riseByAdding,
  sumLevels,
  sumOfIdentical,
} from '../../src/sound/levels.ts';

const SEED = 71;
const level = fc.double({ min: -40, max: 120, noNaN: true });
const levels = fc.array(level, { minLength: 1, maxLength: 12 });

describe('adding levels', () => {
  // Computed with NumPy 2.4 from 10 lg Σ 10^(L/10), the form of python-acoustics, decibel.py.
  it.each([
    { given: [30, 30], sum: 33.0103 },
    { given: [28.4, 31.2, 25.0], sum: 33.6667 },
  ])('$given gives $sum', ({ given, sum }) => {
    expect(sumLevels(given)).toBeCloseTo(sum, 4);
  });

  it('adds 10 lg n for n equal sources', () => {
    expect(sumOfIdentical(24, 3)).toBeCloseTo(28.7712, 4); // computed: 24 + 10 lg 3
    expect(sumOfIdentical(24, 3)).toBeCloseTo(sumLevels([24, 24, 24]), 12);
    expect(sumOfIdentical(24, 0)).toBe(Number.NEGATIVE_INFINITY);
  });

  // Computed: 10 lg(1 + 10^(-d/10)); 0, 3, 10 dB are the 3.0, 1.8, 0.4 dB of any acoustics text.
  it.each([
    [0, 3.0103],
    [1, 2.539],
    [2, 2.1244],
    [3, 1.7643],
    [4, 1.4554],
    [5, 1.1933],
    [6, 0.9732],
    [8, 0.6389],
    [10, 0.4139],
    [15, 0.1352],
    [20, 0.0432],
  ])('a sound %d dB below adds %d dB', (difference, rise) => {
    expect(riseByAdding(difference)).toBeCloseTo(rise, 4);
    expect(sumLevels([40, 40 - difference])).toBeCloseTo(40 + rise, 4);
  });

  it('raises a background of 25 dB by a source 10 dB below it', () => {
    expect(sumLevels([25, 15])).toBeCloseTo(25.4139, 4); // computed
  });

  it('raises a background by 1 dB at 5.8683 dB below and by 0.5 dB at 9.1357 dB below', () => {
    expect(riseByAdding(5.8683)).toBeCloseTo(1, 4); // computed: -10 lg(10^0.1 - 1)
    expect(riseByAdding(9.1357)).toBeCloseTo(0.5, 4); // computed: -10 lg(10^0.05 - 1)
  });

  it('of nothing is silence', () => {
    expect(sumLevels([])).toBe(Number.NEGATIVE_INFINITY);
    expect(levelOf(-1)).toBe(Number.NEGATIVE_INFINITY);
  });

  it('turns levels into energy and back', () => {
    expect(energy(20)).toBeCloseTo(100, 10); // derived: 10^(20/10)
    expect(energy(Number.NEGATIVE_INFINITY)).toBe(0);
    fc.assert(
      fc.property(level, (one) => {
        expect(levelOf(energy(one))).toBeCloseTo(one, 9);
      }),
      { seed: SEED },
    );
  });

  it('does not depend on the order and is never below the loudest', () => {
    const shuffled = levels.chain((given) =>
      fc.tuple(fc.constant(given), fc.shuffledSubarray(given, { minLength: given.length })),
    );
    fc.assert(
      fc.property(shuffled, ([given, other]) => {
        expect(sumLevels(other)).toBeCloseTo(sumLevels(given), 9);
        expect(sumLevels(given)).toBeGreaterThanOrEqual(Math.max(...given) - 1e-9);
      }),
      { seed: SEED },
    );
  });

  it('is unchanged by a silent source', () => {
    fc.assert(
      fc.property(levels, (given) => {
        expect(sumLevels([...given, Number.NEGATIVE_INFINITY])).toBe(sumLevels(given));
      }),
      { seed: SEED },
    );
  });

  it('rises by k when every source rises by k', () => {
    fc.assert(
      fc.property(levels, fc.double({ min: -20, max: 20, noNaN: true }), (given, k) => {
        expect(sumLevels(given.map((one) => one + k))).toBeCloseTo(sumLevels(given) + k, 9);
      }),
      { seed: SEED },
    );
  });
});

describe('distance', () => {
  it('weighs three equal sources at different distances', () => {
    const heard = [0.5, 1, 2].map((distance) => levelAtDistance(25, 1, distance));
    // Computed: 25 - 20 lg r.
    expect(heard[0]).toBeCloseTo(31.0206, 4);
    expect(heard[1]).toBeCloseTo(25, 12);
    expect(heard[2]).toBeCloseTo(18.9794, 4);
    expect(sumLevels(heard)).toBeCloseTo(32.2016, 4);
  });

  it('moves a rating to 1 m', () => {
    expect(levelAtDistance(22, 3, 1)).toBeCloseTo(31.5424, 4); // computed: 22 + 20 lg 3
    expect(levelAtDistance(32, 0.5, 1)).toBeCloseTo(25.9794, 4); // computed: 32 - 20 lg 2
  });

  it('returns to the start after going and coming back', () => {
    const distance = fc.double({ min: 0.1, max: 20, noNaN: true });
    fc.assert(
      fc.property(level, distance, (one, far) => {
        expect(levelAtDistance(levelAtDistance(one, 1, far), far, 1)).toBeCloseTo(one, 9);
      }),
      { seed: SEED },
    );
  });

  it('refuses a distance of 0', () => {
    expect(() => levelAtDistance(25, 1, 0)).toThrow(RangeError);
    expect(() => levelAtDistance(25, Number.NaN, 1)).toThrow(RangeError);
  });
});

describe('equivalent level', () => {
  it('of 70 % at 22, 25 % at 28, 5 % at 36 dB is 26.7 dB', () => {
    const states = [
      { level: 22, share: 0.7 },
      { level: 28, share: 0.25 },
      { level: 36, share: 0.05 },
    ];
    expect(equivalentLevel(states)).toBeCloseTo(26.7, 3); // computed with NumPy 2.4
  });

  it('of 90 % at 20, 10 % at 40 dB is 30.3743 dB', () => {
    const states = [
      { level: 20, share: 0.9 },
      { level: 40, share: 0.1 },
    ];
    expect(equivalentLevel(states)).toBeCloseTo(30.3743, 4); // computed with NumPy 2.4
  });

  it('counts time switched off as silence', () => {
    const states = [
      { level: 30, share: 0.5 },
      { level: Number.NEGATIVE_INFINITY, share: 0.5 },
    ];
    expect(equivalentLevel(states)).toBeCloseTo(26.9897, 4); // derived: 30 + 10 lg 0.5
  });

  it('lies between the quietest and the loudest state', () => {
    const state = fc.record({ level, weight: fc.integer({ min: 1, max: 100 }) });
    fc.assert(
      fc.property(fc.array(state, { minLength: 1, maxLength: 8 }), (given) => {
        const sum = given.reduce((total, one) => total + one.weight, 0);
        const result = equivalentLevel(given.map((one) => ({ level: one.level, share: one.weight / sum })));
        const all = given.map((one) => one.level);
        expect(result).toBeGreaterThanOrEqual(Math.min(...all) - 1e-6);
        expect(result).toBeLessThanOrEqual(Math.max(...all) + 1e-6);
      }),
      { seed: SEED },
    );
  });

  it('refuses shares that are negative or do not sum to 1', () => {
    expect(() => equivalentLevel([{ level: 20, share: 0.9 }])).toThrow(RangeError);
    expect(() => equivalentLevel([])).toThrow(RangeError);
    const negative = [
      { level: 20, share: 1.5 },
      { level: 30, share: -0.5 },
    ];
    expect(() => equivalentLevel(negative)).toThrow(RangeError);
  });
});
