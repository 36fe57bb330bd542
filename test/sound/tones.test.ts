import { describe, expect, it } from 'vitest';
import {
  beat,
  beatDepth,
  beatPeak,
  bladePass,
  criticalBandwidth,
  prominenceRatioLimit,
  tonalAdjustment,
  tonalAudibility,
  toneToNoiseLimit,
} from '../../src/sound/tones.ts';

describe('tones of fans', () => {
  it('pass blades', () => {
    // Published: phonometry, hvac.py, B N/60.
    expect(bladePass(7, 30)).toBe(210);
    expect(bladePass(9, 40)).toBe(360);
  });

  it('beat', () => {
    expect(beat(bladePass(7, 1800 / 60), bladePass(7, 1740 / 60))).toBeCloseTo(7, 12); // computed
    expect(beat(203, 210)).toBe(7);
  });

  // Computed: 20 lg((1 + a)/(1 - a)), a = 10^(-|ΔL|/20).
  it.each([
    [1, 24.806],
    [3, 15.3402],
    [-3, 15.3402],
    [6, 9.57],
    [10, 5.688],
    [20, 1.743],
  ])('%d dB apart swing by %d dB', (difference, swing) => {
    expect(Math.abs(beatDepth(difference) - swing)).toBeLessThan(1e-3);
  });

  it('swing without bound when equal', () => {
    expect(beatDepth(0)).toBe(Number.POSITIVE_INFINITY);
    expect(beatPeak(0)).toBeCloseTo(6.0206, 4); // derived: 20 lg 2
    expect(beatPeak(6)).toBeCloseTo(3.529, 3); // computed
  });
});

describe('prominence', () => {
  it('knows the critical band', () => {
    // Published: phonometry, page on tone audibility, prints 101.36 Hz at 137.3 Hz; 1 kHz computed.
    expect(Math.abs(criticalBandwidth(137.3) - 101.36)).toBeLessThan(0.01);
    expect(criticalBandwidth(1000)).toBeCloseTo(162.2, 1);
  });

  it('limits the tone-to-noise ratio', () => {
    // Published: phonometry, page on tone prominence, prints 13.0 at 250 Hz; digits computed.
    expect(Math.abs((toneToNoiseLimit(250) ?? 0) - 13.0)).toBeLessThan(0.05);
    const limits = [100, 210, 250, 500, 1000, 5000].map(toneToNoiseLimit);
    expect(limits).toEqual([16.33, 13.646, 13.015, 10.508, 8, 8].map((limit) => expect.closeTo(limit, 3)));
  });

  it('limits the prominence ratio', () => {
    // Published law: phonometry and MoSQITo, ECMA-418-1; digits computed.
    expect([250, 500, 1000, 8000].map(prominenceRatioLimit)).toEqual(
      [15.021, 12.01, 9, 9].map((limit) => expect.closeTo(limit, 3)),
    );
  });

  it('judges 89.1 Hz to 11.2 kHz only', () => {
    expect([89, 11_201, Number.NaN].map(toneToNoiseLimit)).toEqual([undefined, undefined, undefined]);
    expect([89.1, 11_200].map((frequency) => prominenceRatioLimit(frequency) !== undefined)).toEqual([
      true,
      true,
    ]);
  });

  it('adjusts by ISO 1996-2', () => {
    // Published: python-acoustics, iso_1996_2_2007.py, and phonometry, page on environmental levels (11.1 and 6).
    const audible = tonalAudibility(54.1, 45.2, 430);
    expect(Math.abs(audible - 11.1251)).toBeLessThan(1e-3);
    expect(tonalAdjustment(audible)).toBe(6);
    // Computed.
    expect(tonalAudibility(30, 25, 210)).toBeCloseTo(7.0466, 3);
    expect(tonalAdjustment(tonalAudibility(30, 25, 210))).toBeCloseTo(3.0466, 3);
    expect([-5, 4, 10, 15].map(tonalAdjustment)).toEqual([0, 0, 6, 6]);
  });
});
