import { describe, expect, it } from 'vitest';
import { openingShape, openingSpectrum } from '../../src/sound/opening-spectrum.ts';
import { bandsLevel, weightedLevel } from '../../src/sound/spectrum.ts';

describe('the spectrum of an opening', () => {
  it('peaks at 160.1 Hz per m/s', () => {
    // Published: Long, equation 13.31, 48.8 Hz per ft/s and -5.82 dB at the peak (phonometry, hvac.py).
    expect(48.8 / 0.3048).toBeCloseTo(160.1, 1);
    expect(openingShape(160.1 * 3, 3)).toBe(-5.82);
    // Derived: an octave below -5.82 - 0.15 - 1.13, an octave above -5.82 + 0.15 - 1.13.
    expect(openingShape(160.1, 2)).toBeCloseTo(-7.1, 9);
    expect(openingShape(160.1 * 4, 2)).toBeCloseTo(-6.8, 9);
  });

  // Computed with NumPy from the round shape summed over the octaves: A-weighted less unweighted level.
  it.each([
    [1, -7.051],
    [2, -3.908],
    [3, -2.439],
    [4, -1.589],
    [6, -0.669],
  ])(
    'at %d m/s is brought to the level given, which is %d dB above the unweighted one',
    (velocity, weighting) => {
      const bands = openingSpectrum(20, velocity);
      expect(weightedLevel(bands)).toBeCloseTo(20, 10);
      expect(20 - bandsLevel(bands)).toBeCloseTo(weighting, 2);
    },
  );
});
