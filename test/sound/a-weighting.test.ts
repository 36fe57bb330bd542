import { describe, expect, it } from 'vitest';
import { bandWeight, weightAt } from '../../src/sound/a-weighting.ts';

describe('A-weighting', () => {
  it('of bands is the table of the standard, at every nominal third-octave centre', () => {
    // Published: IEC 61672-1:2013 table 3, through python-acoustics, iec_61672_1_2013.csv.
    // Its ends, 10 to 25 Hz and 20 kHz, from memory of the same table; the equation below bears them out.
    const table = [
      [10, -70.4],
      [12.5, -63.4],
      [16, -56.7],
      [20, -50.5],
      [25, -44.7],
      [31.5, -39.4],
      [40, -34.6],
      [50, -30.2],
      [63, -26.2],
      [80, -22.5],
      [100, -19.1],
      [125, -16.1],
      [160, -13.4],
      [200, -10.9],
      [250, -8.6],
      [315, -6.6],
      [400, -4.8],
      [500, -3.2],
      [630, -1.9],
      [800, -0.8],
      [1000, 0],
      [1250, 0.6],
      [1600, 1],
      [2000, 1.2],
      [2500, 1.3],
      [3150, 1.2],
      [4000, 1],
      [5000, 0.5],
      [6300, -0.1],
      [8000, -1.1],
      [10_000, -2.5],
      [12_500, -4.3],
      [16_000, -6.6],
      [20_000, -9.3],
    ] as const;
    expect(table.map(([centre]) => [centre, bandWeight(centre)])).toEqual(table);
  });

  it('of a frequency is the equation of the standard', () => {
    // Computed with NumPy from IEC 61672-1 equation E.6 with unrounded poles.
    expect(Math.abs(weightAt(100) - -19.1428)).toBeLessThan(0.003);
    expect(weightAt(1000)).toBeCloseTo(0, 4);
    expect(weightAt(8000)).toBeCloseTo(-1.1471, 3);
    expect(weightAt(10 ** 3.9)).toBeCloseTo(-1.1107, 3);
    expect(weightAt(0)).toBe(Number.NEGATIVE_INFINITY);
  });

  it('agrees between table and equation within 0.05 dB at all exact centres', () => {
    const nominal = [
      10, 12.5, 16, 20, 25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000,
      1250, 1600, 2000, 2500, 3150, 4000, 5000, 6300, 8000, 10000, 12500, 16000, 20000,
    ];
    // Published: IEC 61672-1 rounds the equation at 1000 · 10^(n/10) to 0.1 dB, so 0.05 is all it may differ.
    expect(nominal).toHaveLength(34);
    nominal.forEach((centre, index) => {
      const exact = 1000 * 10 ** ((index - 20) / 10);
      expect(Math.abs(bandWeight(centre) - weightAt(exact))).toBeLessThanOrEqual(0.0501);
    });
  });

  it('knows no bands but the nominal ones', () => {
    expect(() => bandWeight(440)).toThrow(RangeError);
  });
});
