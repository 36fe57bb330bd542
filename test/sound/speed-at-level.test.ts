import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { levelAtRatio, speedModel } from '../../src/sound/fan-noise.ts';
import { SOUND_ASSUMPTIONS } from '../../src/sound/sound-assumptions.ts';
import { ratioAtLevel } from '../../src/sound/speed-at-level.ts';

describe('speed at a level', () => {
  it('is the inverse of the level over speed', () => {
    const ratings = fc.array(
      fc.record({
        speed: fc.double({ min: 5, max: 60, noNaN: true }),
        level: fc.double({ min: 5, max: 60, noNaN: true }),
        basisStated: fc.constant(true),
      }),
      { minLength: 1, maxLength: 5 },
    );
    fc.assert(
      fc.property(ratings, fc.double({ min: 0.05, max: 3, noNaN: true }), (given, ratio) => {
        const model = speedModel(given, 30, SOUND_ASSUMPTIONS);
        expect(ratioAtLevel(model, levelAtRatio(model, ratio)) / ratio).toBeCloseTo(1, 9);
      }),
      { seed: 80, numRuns: 300 },
    );
  });

  it('of silence is rest', () => {
    const model = speedModel([{ speed: 20, level: 30, basisStated: true }], 20, SOUND_ASSUMPTIONS);
    expect(ratioAtLevel(model, Number.NEGATIVE_INFINITY)).toBe(0);
    expect(ratioAtLevel(model, 30 - 16.5566)).toBeCloseTo(0.5, 5); // computed: 55 lg 0.5
  });
});
