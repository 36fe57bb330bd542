import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { levelAtRatio, slopeAtRatio, speedModel } from '../../src/sound/fan-noise.ts';
import { SOUND_ASSUMPTIONS } from '../../src/sound/sound-assumptions.ts';

const SEED = 73;

function rating(speed: number, level: number) {
  return { speed, level, basisStated: true };
}

const ratio = fc.double({ min: 0.05, max: 3, noNaN: true });
const ratings = fc.array(
  fc.record({
    speed: fc.double({ min: 5, max: 60, noNaN: true }),
    level: fc.double({ min: 5, max: 60, noNaN: true }),
    basisStated: fc.boolean(),
  }),
  { minLength: 1, maxLength: 6 },
);

describe('level over speed', () => {
  // Exponent 55: from the VDI 2081 axial spectrum (see spectrum.test.ts); digits computed: 55 lg r.
  it.each([
    [0.5, -16.5566],
    [0.8, -5.3301],
    [1.2, 4.355],
    [2, 16.5566],
  ])('of one rating at speed ratio %d changes by %d dB', (share, change) => {
    const model = speedModel([rating(25, 30)], 25, SOUND_ASSUMPTIONS);
    expect(levelAtRatio(model, share)).toBeCloseTo(30 + change, 4);
    expect(slopeAtRatio(model, share)).toBeCloseTo(23.8862, 4); // derived: 55/ln 10
  });

  it('of one rating below full speed scales from there', () => {
    const model = speedModel([rating(20, 30)], 40, SOUND_ASSUMPTIONS);
    expect(levelAtRatio(model, 0.5)).toBeCloseTo(30, 12);
    expect(levelAtRatio(model, 1)).toBeCloseTo(46.5566, 4); // computed: 55 lg 2
  });

  it('of two ratings weighs their exponent and goes through the top one', () => {
    const model = speedModel([rating(1000 / 60, 16.5), rating(2000 / 60, 33)], 2000 / 60, SOUND_ASSUMPTIONS);
    expect(levelAtRatio(model, 1)).toBeCloseTo(33, 12);
    // Computed with NumPy: exponent 54.9001, 33 + 54.9001 lg 0.7 at 1400 rpm.
    expect(slopeAtRatio(model, 0.7) * Math.LN10).toBeCloseTo(54.9001, 3);
    expect(levelAtRatio(model, 0.7)).toBeCloseTo(24.4959, 3);
    expect(model.exponentUncertainty).toBeCloseTo(3.4237, 4);
  });

  it('of two ratings alone is the slope between them', () => {
    // Computed: (33 - 16.5)/lg 2 = 54.8118; a prior that weighs nothing leaves it.
    const fitted = { ...SOUND_ASSUMPTIONS, speedExponent: 60, speedExponentUncertainty: 1e6 };
    const model = speedModel([rating(1000 / 60, 16.5), rating(2000 / 60, 33)], 2000 / 60, fitted);
    expect(slopeAtRatio(model, 0.7) * Math.LN10).toBeCloseTo(54.8118, 3);
    expect(model.exponentUncertainty).toBeCloseTo(4.6979, 4); // computed: √2 dB over lg 2
  });

  it('of three ratings interpolates against the logarithm of speed', () => {
    const model = speedModel([rating(10, 12), rating(20, 26), rating(40, 45)], 40, SOUND_ASSUMPTIONS);
    for (const [share, level] of [
      [0.25, 12],
      [0.5, 26],
      [1, 45],
    ] as const) {
      expect(levelAtRatio(model, share)).toBeCloseTo(level, 10);
    }
    expect(levelAtRatio(model, Math.SQRT1_2)).toBeCloseTo(35.5, 10); // derived: half way in lg N
    // Computed with NumPy polyfit: 54.8118 from the three, weighed with 55 (u 5) and scatter 1 dB: 54.8458.
    expect(slopeAtRatio(model, 0.1) * Math.LN10).toBeCloseTo(54.8458, 3);
    expect(slopeAtRatio(model, 1.1)).toBeCloseTo(slopeAtRatio(model, 0.1), 12);
  });

  it('keeps the exponent within the range believed', () => {
    const flat = speedModel([rating(10, 30), rating(40, 31)], 40, SOUND_ASSUMPTIONS);
    const steep = speedModel([rating(10, 1), rating(40, 60)], 40, SOUND_ASSUMPTIONS);
    expect(slopeAtRatio(flat, 0.5) * Math.LN10).toBeCloseTo(40, 10);
    expect(slopeAtRatio(steep, 0.5) * Math.LN10).toBeCloseTo(70, 10);
  });

  it('keeps the louder of two ratings at one speed', () => {
    const model = speedModel([rating(20, 31), rating(20, 30), rating(20, 29)], 20, SOUND_ASSUMPTIONS);
    expect(levelAtRatio(model, 1)).toBe(31);
    expect(slopeAtRatio(model, 1) * Math.LN10).toBeCloseTo(55, 10);
  });

  it('does not depend on the order of the ratings', () => {
    const given = [rating(10, 12), rating(20, 26), rating(40, 45)];
    const model = speedModel(given, 40, SOUND_ASSUMPTIONS);
    expect(speedModel([...given].reverse(), 40, SOUND_ASSUMPTIONS)).toEqual(model);
  });

  it('raises a rating that is quieter than a slower one', () => {
    const model = speedModel([rating(10, 20), rating(20, 35), rating(40, 33)], 40, SOUND_ASSUMPTIONS);
    expect(levelAtRatio(model, 0.5)).toBeCloseTo(35, 10);
    expect(levelAtRatio(model, 1)).toBeCloseTo(35 + Math.log10(2), 10); // assumption: 1 dB a decade at least
  });

  it('rises strictly with speed, whatever the ratings', () => {
    fc.assert(
      fc.property(ratings, ratio, fc.double({ min: 1.0001, max: 3, noNaN: true }), (given, share, factor) => {
        const model = speedModel(given, 30, SOUND_ASSUMPTIONS);
        expect(levelAtRatio(model, share * factor)).toBeGreaterThan(levelAtRatio(model, share));
        expect(slopeAtRatio(model, share)).toBeGreaterThan(0);
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  it('has no jump, and the slope of its differences', () => {
    fc.assert(
      fc.property(ratings, ratio, (given, share) => {
        const model = speedModel(given, 30, SOUND_ASSUMPTIONS);
        const step = 1e-7;
        const rise = levelAtRatio(model, share * (1 + step)) - levelAtRatio(model, share);
        const slopes = [slopeAtRatio(model, share), slopeAtRatio(model, share * (1 + step))];
        expect(rise / step).toBeGreaterThanOrEqual(Math.min(...slopes) * (1 - 1e-4) - 1e-4);
        expect(rise / step).toBeLessThanOrEqual(Math.max(...slopes) * (1 + 1e-4) + 1e-4);
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  it('has no jump at a rating', () => {
    const model = speedModel([rating(10, 12), rating(20, 26), rating(40, 45)], 40, SOUND_ASSUMPTIONS);
    for (const share of [0.25, 0.5, 1]) {
      const below = levelAtRatio(model, share * (1 - 1e-12));
      expect(levelAtRatio(model, share * (1 + 1e-12))).toBeCloseTo(below, 9);
    }
  });

  it('gives the same for doubling twice and quadrupling once', () => {
    fc.assert(
      fc.property(fc.double({ min: 10, max: 50, noNaN: true }), (level) => {
        const model = speedModel([rating(20, level)], 20, SOUND_ASSUMPTIONS);
        const doubled = speedModel([rating(20, levelAtRatio(model, 2))], 20, SOUND_ASSUMPTIONS);
        expect(levelAtRatio(doubled, 2)).toBeCloseTo(levelAtRatio(model, 4), 9);
      }),
      { seed: SEED },
    );
  });

  it('is silent at rest', () => {
    const model = speedModel([rating(20, 30)], 20, SOUND_ASSUMPTIONS);
    expect(levelAtRatio(model, 0)).toBe(Number.NEGATIVE_INFINITY);
    expect(levelAtRatio(model, -1)).toBe(Number.NEGATIVE_INFINITY);
    expect(slopeAtRatio(model, 0)).toBeGreaterThan(0);
  });

  it('refuses a fan without a rating', () => {
    expect(() => speedModel([], 20, SOUND_ASSUMPTIONS)).toThrow(RangeError);
  });
});
