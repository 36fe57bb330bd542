import { describe, expect, it } from 'vitest';
import { curveFromBox } from '../../src/fan/box-figures.ts';
import { curveFromPoints, pressureRise } from '../../src/fan/curve.ts';
import { rawRise } from '../../src/fan/raw-curve.ts';

/** Points with a dip of stall between 10 and 18 L/s. */
const dipped = curveFromPoints({
  flows: [0, 0.005, 0.01, 0.015, 0.018, 0.022, 0.026, 0.03],
  pressures: [40, 33, 25, 22, 24, 21, 12, 0],
});

describe('the rise by the points as given', () => {
  it('lies above the one computed with in the dip', () => {
    // At a point of the curve the interpolation is the point: 24 Pa, where the lower envelope has 22.
    expect(rawRise(dipped, 0.018, 1, 1)).toBeCloseTo(24, 10);
    expect(pressureRise(dipped, 0.018, 1, 1)).toBeCloseTo(22, 2);
  });

  it('follows the fan laws', () => {
    // Fan laws: pressure ~ speed² and density at a flow ~ speed.
    expect(rawRise(dipped, 0.5 * 0.018, 0.5, 0.9)).toBeCloseTo(0.9 * 0.25 * 24, 10);
  });

  it('is left out where it is the one computed with', () => {
    // Contract: beyond the dip, outside the points, for a stopped fan, and for curves without a dip.
    expect(rawRise(dipped, 0.028, 1, 1)).toBeUndefined();
    for (const flow of [-0.01, 0.031, 0.05]) expect(rawRise(dipped, flow, 1, 1)).toBeUndefined();
    expect(rawRise(dipped, 0.01, 0, 1)).toBeUndefined();
    expect(rawRise(curveFromBox(0.03, 40), 0.01, 1, 1)).toBeUndefined();
    const falling = curveFromPoints({ flows: [0, 0.01, 0.02], pressures: [30, 20, 0] });
    expect(rawRise(falling, 0.015, 1, 1)).toBeUndefined();
  });
});
