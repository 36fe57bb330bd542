import { describe, expect, it } from 'vitest';
import { curveFromBox } from '../../src/fan/box-figures.ts';
import { curveFromPoints, type FanCurve, pressureRise } from '../../src/fan/curve.ts';
import { stretchedCurve } from '../../src/fan/stretched-curve.ts';

/** Flow of a fan through a quadratic resistance, by halving. */
function flowThrough(curve: FanCurve, resistance: number): number {
  let low = 0;
  let high = 2 * curve.freeDelivery;
  for (let count = 0; count < 80; count++) {
    const flow = (low + high) / 2;
    if (pressureRise(curve, flow, 1, 1) > resistance * flow * flow) low = flow;
    else high = flow;
  }
  return low;
}

const curves = [
  curveFromBox(0.02, 30),
  curveFromPoints({ flows: [0, 0.006, 0.01, 0.014, 0.02], pressures: [40, 28, 30, 18, 0] }),
];

describe.each(curves)('a stretched curve', (curve) => {
  it.each([0.8, 1, 1.1])('gives %f times the flow through any quadratic resistance', (factor) => {
    // Derived: the fan laws, of which only the curve is taken.
    const moved = stretchedCurve(curve, factor);
    for (const resistance of [1e3, 3e4, 4e5]) {
      expect(flowThrough(moved, resistance)).toBeCloseTo(factor * flowThrough(curve, resistance), 9);
    }
    expect(moved.quadratic).toBeCloseTo(curve.quadratic, 6);
    expect(moved.peakFlow).toBeCloseTo(factor * curve.peakFlow, 12);
    // Backwards and beyond free delivery as well.
    expect(pressureRise(moved, -factor * 0.004, 1, 1)).toBeCloseTo(
      factor ** 2 * pressureRise(curve, -0.004, 1, 1),
      8,
    );
    expect(pressureRise(moved, factor * 0.03, 1, 1)).toBeCloseTo(
      factor ** 2 * pressureRise(curve, 0.03, 1, 1),
      8,
    );
  });
});
