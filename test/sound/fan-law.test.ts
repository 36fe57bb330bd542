import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { densityChange, sizeChange, speedChange } from '../../src/sound/fan-law.ts';

describe('sound laws of similar fans', () => {
  // 50 lg: published, technical page on fan noise, and AMCA/ASHRAE fan sound laws (from memory); digits computed.
  it.each([
    [0.5, -15.0515],
    [0.8, -4.8455],
    [1.1, 2.0696],
    [1.2, 3.9591],
    [2, 15.0515],
  ])('speed times %d changes the level by %d dB', (ratio, change) => {
    expect(speedChange(ratio)).toBeCloseTo(change, 4);
  });

  it('gives the same for two steps of speed as for one over both', () => {
    const ratio = fc.double({ min: 0.1, max: 10, noNaN: true });
    fc.assert(
      fc.property(ratio, ratio, fc.double({ min: 40, max: 70, noNaN: true }), (first, second, exponent) => {
        const both = speedChange(first, exponent) + speedChange(second, exponent);
        expect(speedChange(first * second, exponent)).toBeCloseTo(both, 9);
      }),
      { seed: 84 },
    );
    expect(2 * speedChange(2)).toBeCloseTo(speedChange(4), 12);
  });

  it('takes another exponent', () => {
    expect(speedChange(0.5, 55)).toBeCloseTo(-16.5566, 4); // computed
  });

  it('grows with size', () => {
    // 70 lg D: AMCA/ASHRAE fan sound laws (from memory); digits computed.
    expect(sizeChange(0.08, 0.12)).toBeCloseTo(12.3264, 4);
    expect(sizeChange(0.092, 0.12)).toBeCloseTo(8.0775, 4);
  });

  it('for one flow from a larger fan falls by 14 dB', () => {
    // Computed: 70 lg 1.5 + 50 lg (1/1.5)³.
    expect(sizeChange(0.08, 0.12) + speedChange((0.08 / 0.12) ** 3)).toBeCloseTo(-14.0873, 4);
  });

  it('falls in thin air', () => {
    expect(densityChange(1.2, 0.95)).toBeCloseTo(-2.0292, 4); // 20 lg ρ: AMCA/ASHRAE (from memory); computed
  });

  it('is 10 lg Q + 20 lg p on the fan laws', () => {
    // Derived: Q ~ N D³, p ~ ρ N² D².
    const [speed, size, density] = [0.7, 1.3, 0.9];
    const flow = speed * size ** 3;
    const pressure = density * speed ** 2 * size ** 2;
    const change = speedChange(speed) + sizeChange(1, size) + densityChange(1, density);
    expect(change).toBeCloseTo(10 * Math.log10(flow) + 20 * Math.log10(pressure), 10);
  });
});
