import { describe, expect, it } from 'vitest';
import { ratingNeeded, supplyAt } from '../../src/heat/supply.ts';
import {
  PEAK_ALLOWANCES,
  peakAllowance,
  peakHeadroom,
  startingExcess,
  supplyHeadroom,
  sustainedHeadroom,
} from '../../src/heat/supply-headroom.ts';

describe('what is left of a supply for long', () => {
  it('of 330 W at 300 W from the wall and 77 % is 99 W, 30 %', () => {
    // Derived: 0.77·300 = 231 W; 330 − 231 = 99 W; 99/330 = 0.3. Dividing by the efficiency gives 390 W and a failure.
    const { output, loss } = supplyAt(300, { kind: 'number', efficiency: 0.77 });
    expect(output).toBeCloseTo(231, 9);
    expect(loss).toBeCloseTo(69, 9);
    const found = sustainedHeadroom(output, 330);
    expect(found.spare).toBeCloseTo(99, 9);
    expect(found.share).toBeCloseTo(0.3, 12);
    expect(found.verdict).toBe('pass');
    expect(sustainedHeadroom(300 / 0.77, 330).verdict).toBe('fail');
  });

  it.each([
    // Common practice: four fifths of the rating for long.
    [240, 'pass'],
    [240.001, 'tight'],
    [300, 'tight'],
    [300.001, 'fail'],
  ])('of 300 W under %d W is %s', (load, verdict) => {
    expect(sustainedHeadroom(load, 300).verdict).toBe(verdict);
  });

  it('is enough exactly from the rating on that the load needs', () => {
    // One rule, told two ways: the least rating for an output, and the verdict on it.
    for (const load of [30, 123.4, 195.977, 231]) {
      expect(sustainedHeadroom(load, ratingNeeded(load)).verdict).toBe('pass');
      expect(sustainedHeadroom(load, 0.999 * ratingNeeded(load)).verdict).toBe('tight');
    }
  });
});

describe('short peaks', () => {
  it.each([
    // Published: design guide of desktop power supplies, table of power excursions; edition not known, from memory.
    ['to 450 W', [1.5, 1.45, 1.35, 1.1]],
    ['above 450 W', [2, 1.8, 1.6, 1.2]],
  ] as const)('of supplies %s are those of the table', (kind, shares) => {
    expect([1e-4, 1e-3, 1e-2, 0.1].map((duration) => peakAllowance(kind, duration))).toEqual(shares);
  });

  it('last no longer than a tenth of a second, and get less the longer they last', () => {
    // Derived from the table: a peak between two durations is held to the longer.
    for (const kind of ['to 450 W', 'above 450 W', 'none'] as const) {
      expect(peakAllowance(kind, 0.11)).toBe(1);
      const shares = [1e-5, 1e-4, 5e-4, 1e-3, 2e-3, 0.05, 0.1, 1].map((time) => peakAllowance(kind, time));
      expect(shares).toEqual([...shares].sort((a, b) => b - a));
    }
    expect(peakAllowance('to 450 W', 2e-4)).toBe(1.45);
    expect(PEAK_ALLOWANCES.none).toEqual([]);
  });

  it('pass or fail, with nothing between', () => {
    expect(peakHeadroom(494, 1e-3, 330, 'above 450 W').verdict).toBe('pass');
    expect(peakHeadroom(478.6, 1e-3, 330, 'to 450 W').verdict).toBe('fail');
    expect(peakHeadroom(478.5, 1e-3, 330, 'to 450 W').verdict).toBe('pass');
    expect(peakHeadroom(330, 1, 330, 'to 450 W').verdict).toBe('pass');
  });
});

describe('fans that start', () => {
  it('take so many times their power', () => {
    // Derived: 2 fans of 3 W and 1 of 6 W at 2.5 times: 12·1.5 W.
    const fans = [
      { count: 2, power: 3 },
      { count: 1, power: 6 },
    ];
    expect(startingExcess(fans)).toBeCloseTo(18, 12);
    expect(startingExcess(fans, 1)).toBe(0);
  });

  it('count in all that is asked of a supply, whose worst verdict holds', () => {
    // Derived: 231 W of 330 W, fans 12 W: starting 249 W; a millisecond of 1.8 times the load on top, 433.8 W of 478.5 W.
    const load = {
      sustained: 231,
      peaks: [{ factor: 1.8, duration: 1e-3 }],
      fans: [{ count: 2, power: 6 }],
    };
    const found = supplyHeadroom(load, 330, 'to 450 W');
    expect(found.starting.load).toBeCloseTo(249, 9);
    expect(found.peaks[0]?.load).toBeCloseTo(433.8, 9);
    expect(found.verdict).toBe('pass');
    expect(supplyHeadroom(load, 330, 'none').verdict).toBe('fail');
    expect(supplyHeadroom({ ...load, sustained: 270 }, 330, 'above 450 W').verdict).toBe('tight');
    expect(supplyHeadroom({ ...load, peaks: [], fans: [{ count: 20, power: 6 }] }, 330, 'none').verdict).toBe(
      'fail',
    );
  });
});
