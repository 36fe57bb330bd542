import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beatRange, beatRemedies, nearestIn, overlap } from '../../src/sound/beating.ts';
import { TONE_ASSUMPTIONS } from '../../src/sound/tone-assumptions.ts';
import { beat, criticalBandwidth } from '../../src/sound/tones.ts';

const { speedDifference } = TONE_ASSUMPTIONS;

describe('beats of fans whose speeds differ', () => {
  it('are 3 to 10 % of the tone for equal fans', () => {
    // Model assumption from memory: datasheets allow 10 %.
    expect(beatRange(200, 200, speedDifference)).toEqual({ from: 6, to: 20 });
  });

  it.each([
    [200, 190, 0, 30], // 10 Hz lie between 6 and 20 Hz: the tones may meet
    [200, 160, 20, 60], // 40 - 20 and 40 + 20 Hz
    [200, 198, 4, 22], // 6 - 2 and 20 + 2 Hz
  ])('of %d and %d Hz are %d to %d Hz', (one, other, from, to) => {
    // Derived by hand.
    expect(beatRange(one, other, speedDifference)).toEqual({ from, to: expect.closeTo(to, 9) });
    expect(beatRange(other, one, speedDifference).from).toBe(from);
  });

  it('lie in the range whatever the fans do', () => {
    const tone = fc.double({ min: 50, max: 800, noNaN: true });
    const share = fc.double({ min: speedDifference.from, max: speedDifference.to, noNaN: true });
    fc.assert(
      fc.property(tone, tone, share, fc.boolean(), (one, other, off, faster) => {
        const real = other + (faster ? 1 : -1) * off * Math.max(one, other);
        const { from, to } = beatRange(one, other, speedDifference);
        expect(beat(one, real)).toBeGreaterThanOrEqual(from - 1e-9);
        expect(beat(one, real)).toBeLessThanOrEqual(to + 1e-9);
      }),
      { seed: 81 },
    );
  });

  it('are compared with what is heard', () => {
    const heard = { from: 0.5, to: 20 };
    expect(nearestIn({ from: 3, to: 12 }, heard)).toBe(3);
    expect(nearestIn({ from: 0, to: 12 }, heard)).toBe(0.5);
    expect(nearestIn({ from: 25, to: 40 }, heard)).toBe(25);
    expect(nearestIn({ from: 0, to: 0.2 }, heard)).toBe(0.2);
    expect(overlap({ from: 20, to: 40 }, heard)).toBe(true);
    expect(overlap({ from: 20.1, to: 40 }, heard)).toBe(false);
    expect(overlap({ from: 0, to: 0.4 }, heard)).toBe(false);
  });
});

describe('what ends a beat', () => {
  it('in numbers for seven blades at 1800 rpm', () => {
    // Computed with Python: critical band at 210 Hz (ECMA-418-1) 103.165 Hz.
    const remedies = beatRemedies(210, 7, 30, 0.3);
    expect(remedies.lockAt).toBe(30);
    expect(remedies.lockWithin).toBeCloseTo(0.042857, 6);
    expect(remedies.runApart * 60).toBeCloseTo(884.274, 3);
    expect(remedies.blades).toEqual({ most: 3, least: 11 });
  });

  it('ends it', () => {
    const tone = fc.double({ min: 60, max: 900, noNaN: true });
    const blades = fc.integer({ min: 3, max: 11 });
    const speed = fc.double({ min: 8, max: 90, noNaN: true });
    fc.assert(
      fc.property(tone, blades, speed, (first, count, turning) => {
        const {
          lockAt,
          lockWithin,
          runApart,
          avoid,
          blades: other,
        } = beatRemedies(first, count, turning, 0.3);
        const width = criticalBandwidth(first);
        expect(beat(first, count * (lockAt + lockWithin))).toBeLessThanOrEqual(0.3 + 1e-9);
        expect(beat(first, count * (lockAt + runApart))).toBeGreaterThanOrEqual(width - 1e-9);
        expect(beat(first, count * avoid.to)).toBeGreaterThanOrEqual(width - 1e-9);
        if (avoid.from > 0) expect(beat(first, count * avoid.from)).toBeGreaterThanOrEqual(width - 1e-9);
        expect(beat(first, other.least * turning)).toBeGreaterThanOrEqual(width - 1e-9);
        if (other.most > 0) expect(beat(first, other.most * turning)).toBeGreaterThanOrEqual(width - 1e-9);
      }),
      { seed: 82 },
    );
  });
});
