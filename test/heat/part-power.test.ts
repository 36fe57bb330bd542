import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type PowerLaw,
  partPower,
  partPowerSlope,
  rises,
  runawayBoundary,
  settledPart,
} from '../../src/heat/part-power.ts';
import { HOPELESS } from '../../src/heat/part-temperature.ts';

const SEED = 411;
const ZERO = 273.15;
const AIR = 25 + ZERO;

/** 200 W at 50 °C, of which 40 W leak and grow by 2 %/K. */
const leaky: PowerLaw = {
  power: 200,
  slope: 0,
  powerAt: 50 + ZERO,
  leakage: { power: 40, growth: 0.02 },
};
const linear: PowerLaw = { power: 200, slope: 0.005, powerAt: 50 + ZERO };

/** A random leaking part and its surroundings. */
const leakyCases = fc.record({
  air: fc.double({ min: 263, max: 333, noNaN: true }),
  resistance: fc.double({ min: 1e-3, max: 1.5, noNaN: true }),
  power: fc.double({ min: 1, max: 250, noNaN: true }),
  share: fc.double({ min: 0.01, max: 1, noNaN: true }),
  growth: fc.double({ min: 0.002, max: 0.05, noNaN: true }),
  powerAt: fc.double({ min: 293, max: 363, noNaN: true }),
  factor: fc.double({ min: 0.1, max: 1.2, noNaN: true }),
});

function lawOf({
  power,
  share,
  growth,
  powerAt,
}: {
  power: number;
  share: number;
  growth: number;
  powerAt: number;
}) {
  return { power, slope: 0, powerAt, leakage: { power: share * power, growth } };
}

describe('a part whose leakage grows exponentially', () => {
  it('settles where its heat keeps it', () => {
    // Computed with Python by an independent script: 160 W + 40 W·exp(0.02·(T − 50)), 0.14 K/W, air of 25 °C.
    const settled = settledPart(leaky, 1, AIR, 0.14);
    expect(settled - ZERO).toBeCloseTo(53.3932, 4);
    expect(partPower(leaky, 1, settled)).toBeCloseTo(202.809, 3);
    expect(0.14 * partPowerSlope(leaky, 1, settled)).toBeCloseTo(0.119865, 5);
  });

  it('runs away beyond a boundary', () => {
    // Computed as above: 0.294988 K/W at 122.198 °C; condition of stability published in power electronics practice.
    const boundary = runawayBoundary(leaky, 1, AIR);
    expect(boundary?.resistance).toBeCloseTo(0.294988, 6);
    expect((boundary?.temperature ?? Number.NaN) - ZERO).toBeCloseTo(122.198, 3);
    const resistance = boundary?.resistance ?? Number.NaN;
    expect(settledPart(leaky, 1, AIR, resistance * (1 + 1e-9))).toBe(HOPELESS);
    const last = settledPart(leaky, 1, AIR, resistance * (1 - 1e-9));
    expect(Math.abs(last - ZERO - 122.198)).toBeLessThan(0.02);
    expect(resistance * partPowerSlope(leaky, 1, last)).toBeLessThan(1);
    expect(resistance * partPowerSlope(leaky, 1, last)).toBeGreaterThan(0.999);
  });

  it('is where a fixed-point iteration ends, or has no answer if that runs off', () => {
    // Computed here by iteration from the air, which rises to the lower root and converges below a gain of 1.
    let settledCount = 0;
    fc.assert(
      fc.property(leakyCases, ({ air, resistance, factor, ...fields }) => {
        const law = lawOf(fields);
        const found = settledPart(law, factor, air, resistance);
        let temperature = air;
        for (let round = 0; round < 3000 && temperature < 2000; round++) {
          temperature = air + resistance * partPower(law, factor, temperature);
        }
        const boundary = runawayBoundary(law, factor, air)?.resistance ?? Number.NaN;
        if (Math.abs(resistance / boundary - 1) < 0.01) return;
        if (resistance < boundary) {
          settledCount += 1;
          expect(Math.abs(found - temperature)).toBeLessThan(1e-8);
          expect(resistance * partPowerSlope(law, factor, found)).toBeLessThan(1);
        } else {
          expect(found).toBe(HOPELESS);
          expect(temperature).toBeGreaterThan(1000);
        }
      }),
      { seed: SEED, numRuns: 400 },
    );
    expect(settledCount).toBeGreaterThan(100);
  });

  it('never gives what is no number, however little or much of it leaks', () => {
    for (const share of [1e-300, 1e-12, 1e-3, 0.5, 1]) {
      for (const resistance of [0, 1e-9, 0.1, 10, 1e6]) {
        for (const growth of [1e-6, 0.02, 0.1]) {
          const law = lawOf({ power: 100, share, growth, powerAt: 323.15 });
          const found = settledPart(law, 1, AIR, resistance);
          expect(found).toBeGreaterThanOrEqual(AIR);
          expect(found).toBeLessThanOrEqual(HOPELESS);
          expect(runawayBoundary(law, 1, AIR)?.resistance).toBeGreaterThan(0);
          expect(Number.isFinite(runawayBoundary(law, 1, AIR)?.temperature)).toBe(true);
        }
      }
    }
  });

  it('is amplified as its loop gain says', () => {
    // Derived: dT/dT_air = 1/(1 − G).
    fc.assert(
      fc.property(leakyCases, ({ air, resistance, factor, ...fields }) => {
        const law = lawOf(fields);
        const found = settledPart(law, factor, air, resistance);
        const gain = resistance * partPowerSlope(law, factor, found);
        if (found >= HOPELESS || gain > 0.9) return;
        const step = 1e-4;
        const [below, above] = [-step, step].map((by) => settledPart(law, factor, air + by, resistance));
        const rise = ((above ?? Number.NaN) - (below ?? Number.NaN)) / (2 * step);
        expect(Math.abs(rise * (1 - gain) - 1)).toBeLessThan(1e-4);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });
});

describe('a part whose power grows linearly', () => {
  it('is the closed form', () => {
    // Derived: (T_a + R·P0·(1 − a·T0))/(1 − a·R·P0): 53.4884 °C, 203.488 W, gain 0.14.
    const settled = settledPart(linear, 1, AIR, 0.14);
    expect(settled - ZERO).toBeCloseTo(53.4884, 4);
    expect(partPower(linear, 1, settled)).toBeCloseTo(203.488, 3);
    expect(0.14 * partPowerSlope(linear, 1, settled)).toBeCloseTo(0.14, 12);
  });

  it('runs away at the resistance that makes its gain 1, at no finite temperature', () => {
    // Published: stable below dP/dT = 1/R.
    expect(runawayBoundary(linear, 1, AIR)).toEqual({ resistance: 1, temperature: Number.POSITIVE_INFINITY });
    expect(runawayBoundary(linear, 0.5, AIR)?.resistance).toBe(2);
    expect(settledPart(linear, 1, AIR, 1)).toBe(HOPELESS);
  });

  it('is close to a little leakage of the same slope', () => {
    // Derived: both laws agree to first order about the temperature their power is stated for.
    const tangent: PowerLaw = { ...linear, slope: 0, leakage: { power: 50, growth: 0.02 } };
    expect(partPowerSlope(tangent, 1, linear.powerAt)).toBeCloseTo(
      partPowerSlope(linear, 1, linear.powerAt),
      12,
    );
    const gap = settledPart(tangent, 1, AIR, 0.14) - settledPart(linear, 1, AIR, 0.14);
    expect(gap).toBeGreaterThan(0);
    expect(gap).toBeLessThan(0.05);
  });
});

describe('a part that cannot run away', () => {
  it.each<[string, PowerLaw]>([
    ['steady', { power: 100, slope: 0, powerAt: 323.15 }],
    ['falling', { power: 100, slope: -0.004, powerAt: 323.15 }],
  ])('%s has no boundary', (_, law) => {
    expect(rises(law)).toBe(false);
    expect(runawayBoundary(law, 1, AIR)).toBeUndefined();
    expect(settledPart(law, 1, AIR, 50)).toBeLessThan(HOPELESS);
  });

  it('switched off is as warm as its air, whatever its law', () => {
    for (const law of [leaky, linear]) {
      expect(settledPart(law, 0, AIR, 5)).toBe(AIR);
      expect(partPowerSlope(law, 0, 400)).toBe(0);
      expect(runawayBoundary(law, 0, AIR)).toBeUndefined();
    }
  });
});
