import { describe, expect, it } from 'vitest';
import { areaStepLoss, enclosureLoss, endReflection, linedChannelLoss } from '../../src/sound/attenuation.ts';

describe('attenuation', () => {
  it('reproduces the printed end reflection of a flush duct', () => {
    // Published: phonometry, page on the duct path, 0.30 m flush, 63 Hz to 2 kHz.
    const printed = [12.7, 7.7, 3.7, 1.3, 0.4, 0.1];
    [63, 125, 250, 500, 1000, 2000].forEach((frequency, index) => {
      const loss = endReflection(0.3, frequency, 'flush');
      expect(Math.abs(loss - (printed[index] ?? 0))).toBeLessThan(0.051);
    });
    // Computed with NumPy for small ducts.
    expect(endReflection(0.12, 250, 'flush')).toBeCloseTo(9.27, 2);
    expect(endReflection(0.06, 1000, 'flush')).toBeCloseTo(4.81, 2);
  });

  it('is within 1 dB of the handbook table for a flush duct of 150 mm', () => {
    // Published: ASHRAE table of end reflection, whole decibels, 63 Hz to 2 kHz (phonometry, hvac.py).
    const table = [18, 12, 7, 3, 1, 0];
    [63, 125, 250, 500, 1000, 2000].forEach((frequency, index) => {
      expect(Math.abs(endReflection(0.15, frequency, 'flush') - (table[index] ?? 0))).toBeLessThan(1);
    });
  });

  it('reflects more at a free end', () => {
    // Derived: a free end is a flush end 0.8 times as wide.
    expect(endReflection(0.3, 250, 'free')).toBeCloseTo(endReflection(0.24, 250, 'flush'), 12);
  });

  it('of a lined channel', () => {
    // From memory, ventilation texts: 1.05 α^1.4 (P/S) l; digits computed.
    expect(linedChannelLoss(0.24, 0.0036, 0.1, 0.5)).toBeCloseTo(2.6525, 3);
    expect(linedChannelLoss(0.24, 0.0036, 0.1, 0.15)).toBeCloseTo(0.4916, 3);
  });

  it('of an area step', () => {
    // Published: phonometry, page on VDI 2081, prints 0.88 dB for 2.5; digits computed.
    expect(Math.abs(areaStepLoss(2.5) - 0.88)).toBeLessThan(0.005);
    expect(areaStepLoss(2.5)).toBeCloseTo(0.8814, 4);
    expect(areaStepLoss(0.4)).toBeCloseTo(areaStepLoss(2.5), 12); // derived: the same both ways
    expect(areaStepLoss(1)).toBe(0);
    expect(areaStepLoss(100)).toBe(5); // published cap: phonometry, hvac.py
  });

  it('of an enclosure with an opening', () => {
    expect(enclosureLoss(0.003, 0.02)).toBeCloseTo(8.84607, 5); // energy balance (from memory); computed
  });
});
