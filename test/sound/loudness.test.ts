import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { phons, sones } from '../../src/sound/loudness.ts';

describe('loudness', () => {
  // Published law: MoSQITo, sone2phone.py and loudness_zwst (ISO 532-1); digits computed.
  it.each([
    [40, 1],
    [50, 2],
    [30, 0.4391],
    [20, 0.1375],
    [0, 0],
    [-10, 0],
  ])('of %d phon is %d sone', (level, loudness) => {
    expect(sones(level)).toBeCloseTo(loudness, 3);
  });

  it('doubles with 10 phon from 40 phon on', () => {
    expect(sones(63) / sones(60)).toBeCloseTo(1.2311, 4); // derived: 2^0.3
    expect(sones(65) / sones(60)).toBeCloseTo(Math.SQRT2, 12); // derived: 2^0.5
    expect(sones(70) / sones(60)).toBeCloseTo(2, 12);
  });

  it('turns back', () => {
    fc.assert(
      fc.property(fc.double({ min: 5, max: 110, noNaN: true }), (level) => {
        expect(phons(sones(level))).toBeCloseTo(level, 6);
      }),
      { seed: 75 },
    );
    expect(phons(0.9999)).toBe(40);
    expect(phons(0)).toBeCloseTo(2.8, 1); // computed: 40 · 0.0005^0.35
  });
});
