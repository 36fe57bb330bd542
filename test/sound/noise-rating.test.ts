import { describe, expect, it } from 'vitest';
import { noiseRating, noiseRatingCurve } from '../../src/sound/noise-rating.ts';
import { weightedLevel } from '../../src/sound/spectrum.ts';

const CENTRES = [31.5, 63, 125, 250, 500, 1000, 2000, 4000, 8000];

describe('noise rating', () => {
  it('has the curve NR 25', () => {
    // Published coefficients (two public code files, one of them aligned); digits computed.
    const levels = [72.43, 55.25, 43.75, 35.25, 29.15, 25.0, 21.88, 19.53, 17.75];
    const curve = noiseRatingCurve(25);
    expect(curve.map((band) => band.centre)).toEqual(CENTRES);
    curve.forEach((band, index) => {
      expect(Math.abs(band.level - (levels[index] ?? 0))).toBeLessThanOrEqual(0.01);
    });
    expect(noiseRatingCurve(30).find((band) => band.centre === 500)?.level).toBeCloseTo(34.02, 2);
  });

  it('is 1 kHz at its own number', () => {
    // Published: by definition of the curves, NR is the level in the 1 kHz octave.
    expect(noiseRatingCurve(37).find((band) => band.centre === 1000)?.level).toBe(37);
  });

  it('of a spectrum is set by the highest band', () => {
    const bands = [40, 36, 32, 30, 27, 24, 20, 14, 8].map((level, index) => ({
      centre: CENTRES[index] ?? 0,
      level,
    }));
    const found = noiseRating(bands);
    expect(found?.rating).toBeCloseTo(24, 2); // computed
    expect(found?.governing).toBe(1000);
  });

  it('of a curve is its own number', () => {
    expect(noiseRating(noiseRatingCurve(33))?.rating).toBeCloseTo(33, 10);
  });

  it('carries 36.9 dB(A) at NR 25', () => {
    expect(Math.abs(weightedLevel(noiseRatingCurve(25)) - 36.9)).toBeLessThan(0.05); // computed with NumPy
  });

  it('of nothing is undefined', () => {
    expect(noiseRating([])).toBeUndefined();
    expect(noiseRating([{ centre: 16000, level: 50 }])).toBeUndefined();
  });
});
