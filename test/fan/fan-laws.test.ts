import { describe, expect, it } from 'vitest';
import { scaleBySimilarity } from '../../src/fan/fan-laws.ts';

function expectPoint(
  actual: { flow: number; pressure: number; power: number },
  expected: readonly [number, number, number],
): void {
  const { flow, pressure, power } = actual;
  [flow, pressure, power].forEach((value, i) => {
    expect(Math.abs(value / (expected[i] ?? Number.NaN) - 1)).toBeLessThan(1e-5);
  });
}

describe('the fan laws', () => {
  it('scale a fan by diameter, speed and density', () => {
    // Published: textbook example data in FOSSEE/Scilab-TBC-Uploads, 746/DEPENDENCIES/10_11.sci (36 to 42 in, 600 to
    // 1150 rpm, 0.075 to 0.045 lbm/ft³); results derived, in the units of the data.
    const ratios = { diameter: 42 / 36, speed: 1150 / 600, density: 0.045 / 0.075 };
    const known = { flow: 30_000, pressure: 2.96, power: 21.4 };
    expectPoint(scaleBySimilarity(known, ratios), [91_307.9, 8.88034, 195.406]);
  });

  it('scale by speed alone', () => {
    // Derived.
    const known = { flow: 0.03, pressure: 40, power: 2 };
    expectPoint(scaleBySimilarity(known, { speed: 1000 / 1500 }), [0.02, 17.7777778, 0.592592593]);
  });

  it('scale by density alone', () => {
    // Derived.
    const known = { flow: 0.03, pressure: 40, power: 2 };
    expectPoint(scaleBySimilarity(known, { density: 1.0040089877 / 1.2 }), [0.03, 33.466966, 1.6733483]);
  });
});
