import { describe, expect, it } from 'vitest';
import { backgroundCorrection, removeBackground } from '../../src/sound/background-removal.ts';

describe('background correction', () => {
  it('is 1.2563 dB at 6 dB in the engineering grade', () => {
    // Published: phonometry, page on sound power, ISO 3744, prints 1.26; digits computed.
    expect(backgroundCorrection(6, 'engineering')).toEqual({
      correction: expect.closeTo(1.2563, 4),
      upperBound: false,
    });
  });

  // Published limits: phonometry (ISO 3744; 15 dB from memory), python-acoustics, power.py (ISO 3746).
  // Digits computed.
  it.each([
    { grade: 'engineering', difference: 15, correction: 0.1396, upperBound: false },
    { grade: 'engineering', difference: 15.1, correction: 0, upperBound: false },
    { grade: 'engineering', difference: 5.9, correction: 1.3, upperBound: true },
    { grade: 'engineering', difference: -3, correction: 1.3, upperBound: true },
    { grade: 'survey', difference: 3, correction: 3.0206, upperBound: false },
    { grade: 'survey', difference: 10, correction: 0.4576, upperBound: false },
    { grade: 'survey', difference: 10.1, correction: 0, upperBound: false },
    { grade: 'survey', difference: 2.9, correction: 3, upperBound: true },
  ] as const)('$grade at $difference dB: $correction', ({ grade, difference, correction, upperBound }) => {
    const found = backgroundCorrection(difference, grade);
    expect(found.correction).toBeCloseTo(correction, 4);
    expect(found.upperBound).toBe(upperBound);
  });

  it('agrees with the energetic difference', () => {
    // Computed: 10 lg(10^3.3 - 10^2.8).
    expect(removeBackground(33, 28)).toBeCloseTo(31.3491, 4);
    expect(33 - backgroundCorrection(5, 'survey').correction).toBeCloseTo(31.3491, 4);
  });

  it('leaves silence when nothing stands out', () => {
    expect(removeBackground(28, 28)).toBe(Number.NEGATIVE_INFINITY);
    expect(removeBackground(27, 28)).toBe(Number.NEGATIVE_INFINITY);
  });
});
