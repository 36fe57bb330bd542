import { describe, expect, it } from 'vitest';
import { bandsLevel } from '../../src/sound/spectrum.ts';
import {
  efficiencyAllowance,
  offDutyAllowance,
  unratedPower,
  unratedSpectrum,
} from '../../src/sound/unrated-fan.ts';

describe('fan without a rating', () => {
  it('by VDI 2081', () => {
    // Computed from 42 + 10 lg Q + 20 lg p (published: phonometry, page on VDI 2081, fan of 16 000 m³/h and 600 Pa).
    expect(unratedPower(4.4444, 600)).toBeCloseTo(104.0412, 3);
    expect(unratedPower(0.02, 20)).toBeCloseTo(51.0309, 4);
  });

  it('by ASHRAE', () => {
    const duty = { kind: 'tubeaxial', flow: 0.02, pressure: 20, efficiencyShare: 1 } as const;
    // Computed from the law of TM 5-805-4 (published) with KW 52 at 1 kHz (published: phonometry, hvac.py).
    const kilohertz = unratedSpectrum(duty).find((band) => band.centre === 1000);
    expect(Math.abs((kilohertz?.level ?? 0) - 46.3675)).toBeLessThan(0.01);
  });

  it('rises in the octave of the blade-pass tone only', () => {
    const duty = { kind: 'tubeaxial', flow: 0.02, pressure: 20, efficiencyShare: 1 } as const;
    const plain = unratedSpectrum(duty);
    const tonal = unratedSpectrum({ ...duty, bladePass: 210 });
    // Published: Long, table 13.7, through phonometry, hvac.py: 7 dB for a tubeaxial fan.
    const rises = tonal.map((band, index) => band.level - (plain[index]?.level ?? 0));
    expect(rises.map((rise) => Math.round(rise))).toEqual([0, 0, 7, 0, 0, 0, 0, 0]);
  });

  it('is louder as a propeller', () => {
    // Published: Long, table 13.5, through phonometry, hvac.py: higher or equal in every octave.
    const duty = { flow: 0.02, pressure: 20, efficiencyShare: 0.8 } as const;
    const propeller = bandsLevel(unratedSpectrum({ kind: 'propeller', ...duty }));
    expect(propeller).toBeGreaterThan(bandsLevel(unratedSpectrum({ kind: 'tubeaxial', ...duty })));
  });

  // Published: Long, table 13.6, through phonometry, hvac.py.
  it.each([
    [1, 0],
    [0.9, 0],
    [0.89, 3],
    [0.8, 6],
    [0.7, 9],
    [0.6, 12],
    [0.5, 15],
    [0.49, 16],
  ])('at %d of its best efficiency is %d dB louder', (share, allowance) => {
    expect(efficiencyAllowance(share)).toBe(allowance);
  });

  // Published coefficients: VDI 2081-1 figure 13, through phonometry, hvac.py; digits computed.
  it.each([
    [0.2, 10.8584],
    [0.4, 5.2072],
    [0.5, 3.2],
    [0.6, 1.6968],
    [0.8, 0.0776],
    [1, 0.1],
    [1.2, 1.5144],
    [1.4, 4.0712],
    [1.5, 5.7],
  ])('at %d of its best flow is %d dB louder', (share, allowance) => {
    expect(offDutyAllowance(share)).toBeCloseTo(allowance, 4);
  });
});
