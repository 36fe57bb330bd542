import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  HOPELESS,
  loopGain,
  powerAtTemperature,
  settledTemperature,
} from '../../src/heat/part-temperature.ts';

const SEED = 32;
const ZERO = 273.15;

describe('a part whose power rises with its temperature', () => {
  // Derived: T = (T_a + R·P0·(1 − a·T0))/(1 − a·R·P0) with 25 °C, 0.14 K/W, 200 W at 50 °C, 0.5 %/K.
  const air = 25 + ZERO;
  const settled = settledTemperature(air, 0.14, 200, 0.005, 50 + ZERO);

  it('settles where its heat keeps it', () => {
    expect(settled - ZERO).toBeCloseTo(53.4884, 4);
    expect(powerAtTemperature(200, 0.005, 50 + ZERO, settled)).toBeCloseTo(203.488, 3);
    expect(air + 0.14 * powerAtTemperature(200, 0.005, 50 + ZERO, settled)).toBeCloseTo(settled, 9);
  });

  it('has the loop gain R·dP/dT', () => {
    expect(loopGain(0.14, 200, 0.005)).toBeCloseTo(0.14, 12);
    const slope =
      powerAtTemperature(200, 0.005, 323.15, 324.15) - powerAtTemperature(200, 0.005, 323.15, 323.15);
    expect(loopGain(0.14, 200, 0.005)).toBeCloseTo(0.14 * slope, 12);
  });

  it('amplifies a warmer room by 1/(1 − gain)', () => {
    // Derived.
    const warmer = settledTemperature(air + 1, 0.14, 200, 0.005, 50 + ZERO);
    expect(warmer - settled).toBeCloseTo(1 / 0.86, 9);
  });

  it('is where a fixed-point iteration ends', () => {
    // Computed here by iteration, which converges below a gain of 1.
    const cases = fc.record({
      air: fc.double({ min: 263, max: 333, noNaN: true }),
      resistance: fc.double({ min: 0, max: 1, noNaN: true }),
      power: fc.double({ min: 0, max: 150, noNaN: true }),
      slope: fc.double({ min: 0, max: 0.006, noNaN: true }),
      powerAt: fc.double({ min: 293, max: 363, noNaN: true }),
    });
    fc.assert(
      fc.property(cases, ({ air: given, resistance, power, slope, powerAt }) => {
        let temperature = given;
        for (let round = 0; round < 400; round++) {
          temperature = given + resistance * powerAtTemperature(power, slope, powerAt, temperature);
        }
        const direct = settledTemperature(given, resistance, power, slope, powerAt);
        expect(Math.abs(direct - temperature)).toBeLessThan(1e-6);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  it('does not depend on the slope at the temperature its power is stated for', () => {
    // Derived: at T0 the power is P0, whatever the slope.
    for (const slope of [-0.004, 0, 0.002, 0.006]) {
      expect(settledTemperature(300, 0.2, 100, slope, 320)).toBeCloseTo(320, 9);
    }
  });
});

describe('a part without slope', () => {
  it('is warmer than its air by R·P', () => {
    // Definition of the thermal resistance.
    expect(settledTemperature(300, 0.25, 80, 0, 323.15)).toBeCloseTo(320, 12);
    expect(settledTemperature(300, 0, 80, 0.004, 323.15)).toBeCloseTo(300, 12);
    expect(settledTemperature(300, 0.25, 0, 0.004, 323.15)).toBeCloseTo(300, 12);
  });
});

describe('a part that runs away', () => {
  // Published: stable below dP/dT = 1/R_th (thermal runaway in power electronics practice).
  it.each([
    [1, 200, 0.005],
    [0.5, 400, 0.005],
    [2, 200, 0.005],
  ])('has no temperature: R %d K/W, %d W, %d/K', (resistance, power, slope) => {
    expect(loopGain(resistance, power, slope)).toBeGreaterThanOrEqual(1);
    expect(settledTemperature(298.15, resistance, power, slope, 323.15)).toBe(HOPELESS);
  });

  it('grows without limit on the way there, never falling', () => {
    // Derived: 1/(1 − gain).
    const at = (gain: number) => settledTemperature(298.15, gain, 200, 0.005, 323.15);
    const ladder = [0.1, 0.5, 0.9, 0.99, 0.999, 0.9999999, 1, 1.5].map(at);
    for (let rung = 1; rung < ladder.length; rung++) {
      expect(ladder[rung]).toBeGreaterThanOrEqual(ladder[rung - 1] ?? Number.NaN);
    }
    expect(at(0.999)).toBeGreaterThan(1e4);
    expect(Math.max(...ladder)).toBe(HOPELESS);
  });
});

describe('a part whose power falls with its temperature', () => {
  it('settles below what it would reach at its stated power', () => {
    // Derived as above: 10 W at 300 K, −1 %/K, 1 K/W: T = (300 + 10·(1 + 3))/(1.1) = 309.0909 K.
    expect(settledTemperature(300, 1, 10, -0.01, 300)).toBeCloseTo(340 / 1.1, 9);
  });

  it('never makes cold', () => {
    // A part does not draw less than nothing.
    expect(powerAtTemperature(10, -0.01, 300, 450)).toBe(0);
    expect(settledTemperature(450, 1, 10, -0.01, 300)).toBe(450);
    expect(powerAtTemperature(10, 0.01, 300, 150)).toBe(0);
    expect(settledTemperature(150, 1, 10, 0.01, 300)).toBe(150);
  });
});
