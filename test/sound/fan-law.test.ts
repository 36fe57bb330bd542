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
