import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SOUND_ASSUMPTIONS } from '../../src/sound/sound-assumptions.ts';
import { stallTerm } from '../../src/sound/stall.ts';

const { ramp } = SOUND_ASSUMPTIONS.stall;

// Model assumption, no source: 3 dB left of the pressure peak, reached over a ramp.
describe('stall', () => {
  it('is nothing right of the peak or without one', () => {
    expect(stallTerm(0.4, 0.4, SOUND_ASSUMPTIONS)).toBe(0);
    expect(stallTerm(0.7, 0.4, SOUND_ASSUMPTIONS)).toBe(0);
    expect(stallTerm(-0.2, 0, SOUND_ASSUMPTIONS)).toBe(0);
  });

  it('is half in the middle of the ramp and full at its end', () => {
    expect(stallTerm(0.4 - ramp / 2, 0.4, SOUND_ASSUMPTIONS)).toBeCloseTo(1.5, 10);
    expect(stallTerm(0.4 - ramp, 0.4, SOUND_ASSUMPTIONS)).toBeCloseTo(3, 10);
    expect(stallTerm(-1, 0.4, SOUND_ASSUMPTIONS)).toBe(3);
  });

  it('follows what a user sets', () => {
    // Derived: 5 dB over 0.1, so 2 dB at four tenths of the way.
    const set = { ...SOUND_ASSUMPTIONS, stall: { ...SOUND_ASSUMPTIONS.stall, rise: 5, ramp: 0.1 } };
    expect(stallTerm(0.36, 0.4, set)).toBeCloseTo(2, 10);
    expect(stallTerm(0.29, 0.4, set)).toBe(5);
  });

  it('has no jump and never falls towards shut-off', () => {
    const share = fc.double({ min: -0.5, max: 1, noNaN: true });
    fc.assert(
      fc.property(share, fc.double({ min: 0, max: 0.01, noNaN: true }), (at, step) => {
        const fall = stallTerm(at, 0.4, SOUND_ASSUMPTIONS) - stallTerm(at + step, 0.4, SOUND_ASSUMPTIONS);
        expect(fall).toBeGreaterThanOrEqual(-1e-12);
        expect(fall).toBeLessThanOrEqual((3 / ramp) * step + 1e-12);
      }),
      { seed: 79 },
    );
  });
});
