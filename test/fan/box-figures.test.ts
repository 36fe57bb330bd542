import { describe, expect, it } from 'vitest';
import {
  AXIAL_LINEAR_SHARE,
  BOX_UNCERTAINTY,
  boxFlowBand,
  CENTRIFUGAL_LINEAR_SHARE,
  curveFromBox,
} from '../../src/fan/box-figures.ts';
import { pressureRise } from '../../src/fan/curve.ts';
import { bracketedRoot } from '../../src/numerics/roots.ts';

/** Flow over free delivery on a quadratic loss of `resistance` times p0/Q0². */
function workingShare(linearShare: number, resistance: number): number {
  const fan = curveFromBox(0.03, 40, linearShare);
  const loss = resistance * fan.quadratic;
  const found = bracketedRoot((q) => pressureRise(fan, q, 1, 1) - loss * q ** 2, 0, 0.03, {
    tolerance: 1e-14,
  });
  return found.ok ? found.root / 0.03 : Number.NaN;
}

describe('a curve from box figures', () => {
  it('lies midway between the straight line and the parabola for an axial fan', () => {
    // Derived: at half the free delivery 1 − 0.25 − 0.125.
    const fan = curveFromBox(0.03, 40);
    expect(pressureRise(fan, 0.015, 1, 1)).toBeCloseTo(25, 12);
    expect(pressureRise(fan, 0, 1, 1)).toBe(40);
    expect(Math.abs(pressureRise(fan, 0.03, 1, 1))).toBe(0);
    expect(fan.synthesised).toBe(true);
    expect(fan.peakFlow).toBe(0);
  });

  it('has the working points of its closed forms', () => {
    // Derived: (√5 − 1)/2 for the line, 2/3 between, 1/√2 for the parabola.
    expect(Math.abs(workingShare(1, 1) / 0.6180339887 - 1)).toBeLessThan(1e-6);
    expect(Math.abs(workingShare(AXIAL_LINEAR_SHARE, 1) / (2 / 3) - 1)).toBeLessThan(1e-6);
    expect(Math.abs(workingShare(CENTRIFUGAL_LINEAR_SHARE, 1) / Math.SQRT1_2 - 1)).toBeLessThan(1e-6);
    // Derived: 0.390388, 0.419111, 0.447214.
    expect(Math.abs(workingShare(1, 4) / ((Math.sqrt(17) - 1) / 8) - 1)).toBeLessThan(1e-6);
    expect(Math.abs(workingShare(0.5, 4) / ((Math.sqrt(18.25) - 0.5) / 9) - 1)).toBeLessThan(1e-6);
    expect(Math.abs(workingShare(0, 4) / Math.sqrt(0.2) - 1)).toBeLessThan(1e-6);
  });

  it('shows eleven points of itself', () => {
    const fan = curveFromBox(0.03, 40);
    expect(fan.raw.flows).toHaveLength(11);
    fan.raw.flows.forEach((flow, i) => {
      expect(pressureRise(fan, flow, 1, 1)).toBeCloseTo(fan.raw.pressures[i] ?? Number.NaN, 12);
    });
  });

  it('needs figures above zero', () => {
    for (const [flow, pressure, share] of [
      [0, 40, 0.5],
      [0.03, 0, 0.5],
      [Number.NaN, 40, 0.5],
      [0.03, Number.POSITIVE_INFINITY, 0.5],
      [0.03, 40, 1.1],
      [0.03, 40, -0.1],
    ] as const) {
      expect(() => curveFromBox(flow, pressure, share)).toThrow(RangeError);
    }
  });
});

describe('the band of a flow from box figures', () => {
  it('covers line and parabola where no stall dip can hide', () => {
    // Derived: the closed forms of line and parabola against the curve between.
    for (const resistance of [0.25, 0.5, 1, 1.5]) {
      const middle = workingShare(0.5, resistance);
      const band = boxFlowBand(middle);
      expect(workingShare(1, resistance) / middle - 1).toBeGreaterThan(band.low);
      expect(workingShare(0, resistance) / middle - 1).toBeLessThan(band.high);
    }
  });

  it('is wider downwards near shut-off', () => {
    expect(boxFlowBand(0.51)).toBe(BOX_UNCERTAINTY.nearFreeDelivery);
    expect(boxFlowBand(0.5)).toBe(BOX_UNCERTAINTY.nearShutOff);
    expect(boxFlowBand(0.2).low).toBeLessThan(boxFlowBand(0.8).low);
    const own = { ...BOX_UNCERTAINTY, divide: 0.1 };
    expect(boxFlowBand(0.2, own)).toBe(BOX_UNCERTAINTY.nearFreeDelivery);
  });
});
