import { describe, expect, it } from 'vitest';
import { coreLoudness } from '../../src/sound/core-loudness.ts';
import { phons } from '../../src/sound/loudness.ts';
import { fanSpectrum } from '../../src/sound/spectrum.ts';
import { octaveLoudness, zwickerLoudness } from '../../src/sound/zwicker-loudness.ts';

const NONE = Number.NEGATIVE_INFINITY;

/** A spectrum with one third octave, counted from 25 Hz. */
function single(band: number, level: number): number[] {
  return Array.from({ length: 28 }, (_, index) => (index === band ? level : NONE));
}

describe('loudness by the method of Zwicker', () => {
  it('reproduces the machine noise of the standard', () => {
    // Published: ISO 532-1:2017, annex B.2, test signal 1, 83.296 sone (through MoSQITo, test_loudness_zwst.py).
    const machine = [
      -60, -60, 78, 79, 89, 72, 80, 89, 75, 87, 85, 79, 86, 80, 71, 70, 72, 71, 72, 74, 69, 65, 67, 77, 68,
      58, 45, 30,
    ];
    expect(Math.abs(zwickerLoudness(machine) - 83.296)).toBeLessThan(0.005);
  });

  it('reproduces the loudness of fan noise computed elsewhere', () => {
    // Computed with MoSQITo (loudness_zwst) for the axial shape of VDI 2081-1, equation 15, free field, rounded to
    // 0.01 sone and the same within 0.02 sone from 800 to 3000 rpm.
    const table = [
      [10, 0],
      [15, 0.01],
      [20, 0.18],
      [25, 0.54],
      [30, 1.15],
      [35, 2.05],
      [40, 3.33],
      [45, 5.08],
    ] as const;
    for (const rpm of [800, 1500, 3000]) {
      for (const [level, sone] of table) {
        expect(Math.abs(octaveLoudness(fanSpectrum(level, rpm / 60)) - sone)).toBeLessThan(0.025);
      }
    }
  });

  it('gives those as phon', () => {
    // Computed with MoSQITo as above: 22, 32, 42, 50, 57 and 63 phon.
    const found = [20, 25, 30, 35, 40, 45].map((level) => phons(octaveLoudness(fanSpectrum(level, 25))));
    [22, 32, 42, 50, 57, 63].forEach((phon, index) => {
      expect(Math.abs((found[index] ?? 0) - phon)).toBeLessThan(0.6);
    });
  });

  it('makes a third octave at 1 kHz about 1 sone at 40 dB and four times as loud at 60 dB', () => {
    // Published: definition of the sone, a tone of 40 dB at 1 kHz; 60 dB is 4 sone. A tone leaks into the bands
    // beside its own, so the single band is a little quieter.
    expect(Math.abs(zwickerLoudness(single(16, 40)) - 1)).toBeLessThan(0.1);
    expect(zwickerLoudness(single(16, 60)) / zwickerLoudness(single(16, 40))).toBeCloseTo(4, 0);
  });

  it('masks a weak band above a strong one, and not below it', () => {
    // Published: upward spread of masking, Zwicker and Fastl, Psychoacoustics (from memory).
    const strong = single(16, 70);
    const above = strong.with(18, 20);
    const below = strong.with(12, 20);
    expect(zwickerLoudness(above)).toBeCloseTo(zwickerLoudness(strong), 9);
    expect(zwickerLoudness(below)).toBeGreaterThan(zwickerLoudness(strong) + 0.01);
  });

  it('rises with every band and is nothing below the threshold of hearing', () => {
    expect(zwickerLoudness(single(16, 3))).toBe(0);
    expect(zwickerLoudness(Array.from({ length: 28 }, () => NONE))).toBe(0);
    let before = 0;
    for (let level = 20; level <= 110; level += 2) {
      const now = zwickerLoudness(Array.from({ length: 28 }, () => level));
      expect(now).toBeGreaterThan(before);
      before = now;
    }
  });

  it('wants all third octaves', () => {
    expect(() => coreLoudness([30, 30])).toThrow(RangeError);
  });
});
