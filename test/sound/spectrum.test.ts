import { describe, expect, it } from 'vitest';
import { bandWeight } from '../../src/sound/a-weighting.ts';
import { SOUND_ASSUMPTIONS } from '../../src/sound/sound-assumptions.ts';
import { bandsLevel, fanShape, fanSpectrum, OCTAVES, weightedLevel } from '../../src/sound/spectrum.ts';

function octaves(levels: readonly number[]) {
  return levels.map((level, index) => ({ centre: OCTAVES[index] ?? 0, level }));
}

describe('spectra', () => {
  it.each([
    // Published: phonometry, printed example of a sound power determination: 103.7 dB(A), 105.8 dB.
    { levels: [90.5, 94.5, 98.5, 100.5, 99.5, 96.5, 91.5, 84.5], weighted: 103.7, total: 105.8 },
    // Published: phonometry, printed example of a duct: 38.8 dB(A), 47.0 dB.
    { levels: [42.5, 41.6, 40.0, 37.3, 33.3, 28.1, 21.8], weighted: 38.8, total: 47.0 },
  ])('reproduce the printed sums $weighted and $total', ({ levels, weighted, total }) => {
    expect(Math.abs(weightedLevel(octaves(levels)) - weighted)).toBeLessThan(0.06);
    expect(Math.abs(bandsLevel(octaves(levels)) - total)).toBeLessThan(0.1); // bands printed to 0.1 dB
  });

  it('give the digits of an independent computation', () => {
    // Computed with NumPy 2.4 from the table of IEC 61672-1.
    expect(weightedLevel(octaves([90.5, 94.5, 98.5, 100.5, 99.5, 96.5, 91.5, 84.5]))).toBeCloseTo(
      103.6581,
      4,
    );
    expect(weightedLevel(octaves([42.5, 41.6, 40.0, 37.3, 33.3, 28.1, 21.8]))).toBeCloseTo(38.7667, 4);
    expect(weightedLevel(octaves(OCTAVES.map(() => 30)))).toBeCloseTo(36.9871, 4);
    expect(bandsLevel(octaves(OCTAVES.map(() => 30)))).toBeCloseTo(39.0309, 4);
  });
});

describe('fan spectrum', () => {
  it('has the shape of VDI 2081', () => {
    // Computed with NumPy from VDI 2081-1 equation 15 (published: phonometry, hvac.py) at 1500 rpm.
    const shape = [-7.42, -5.793, -5.047, -5.208, -6.275, -8.248, -11.127, -14.912];
    OCTAVES.forEach((centre, index) => {
      expect(fanShape(centre, 25)).toBeCloseTo(shape[index] ?? 0, 3);
    });
  });

  it('does not sum to nothing, so it is brought to a level', () => {
    // Computed by a script of its own from the same equation: energetic sum over the octaves.
    const sum = (rpm: number) =>
      bandsLevel(OCTAVES.map((centre) => ({ centre, level: fanShape(centre, rpm / 60) })));
    expect(sum(1000)).toBeCloseTo(1.6642, 4);
    expect(sum(1500)).toBeCloseTo(1.9138, 4);
    expect(sum(3000)).toBeCloseTo(2.0984, 4);
  });

  it('peaks at 0.2094 times the rpm', () => {
    // Derived: lg St = 0.6.
    expect(fanShape(0.2085 * 1500, 25)).toBeLessThanOrEqual(-5);
    const peak = Math.PI * 25 * 10 ** 0.6;
    expect(fanShape(peak, 25)).toBe(-5);
    expect(fanShape(peak * 1.1, 25)).toBeLessThan(-5);
    expect(fanShape(peak / 1.1, 25)).toBeLessThan(-5);
  });

  // Computed with NumPy: A-weighted octave levels over the A-weighted sum.
  it.each([
    { rpm: 1000, relative: [-30.2, -18.9, -11.2, -6.5, -4.9, -6.2, -9.8, -16.2], weighting: -4.063 },
    { rpm: 1500, relative: [-32.4, -20.6, -12.4, -7.2, -5.0, -5.8, -8.9, -14.8], weighting: -3.165 },
    { rpm: 2000, relative: [-34.0, -21.9, -13.3, -7.7, -5.2, -5.6, -8.3, -13.8], weighting: -2.591 },
    { rpm: 3000, relative: [-36.4, -23.8, -14.6, -8.5, -5.4, -5.3, -7.5, -12.4], weighting: -1.881 },
  ])('at $rpm rpm is brought to the level given', ({ rpm, relative, weighting }) => {
    const bands = fanSpectrum(30, rpm / 60);
    expect(weightedLevel(bands)).toBeCloseTo(30, 10);
    expect(30 - bandsLevel(bands)).toBeCloseTo(weighting, 3);
    bands.forEach((band, index) => {
      const difference = band.level + bandWeight(band.centre) - 30 - (relative[index] ?? 0);
      expect(Math.abs(difference)).toBeLessThanOrEqual(0.0501);
    });
  });

  it('makes the A-weighted level rise by 54.9 dB a decade when the unweighted one rises by 50', () => {
    const weighting = (rpm: number) => -bandsLevel(fanSpectrum(0, rpm / 60));
    const exponent = (from: number, to: number) =>
      50 + (weighting(to) - weighting(from)) / Math.log10(to / from);
    // Computed with NumPy by summing the shape of VDI 2081-1 equation 15 over the octaves.
    expect(Math.abs(exponent(600, 3000) - 54.915)).toBeLessThan(0.02);
    expect(exponent(500, 600)).toBeCloseTo(55.98, 2);
    expect(exponent(4000, 6000)).toBeCloseTo(52.85, 2);
    expect(Math.abs(exponent(600, 3000) - SOUND_ASSUMPTIONS.speedExponent)).toBeLessThan(0.1);
  });
});
