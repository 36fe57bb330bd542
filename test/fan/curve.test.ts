import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { curveFromBox } from '../../src/fan/box-figures.ts';
import {
  completeCurve,
  curveFromPoints,
  evaluateRise,
  type FanCurve,
  isStalled,
  peakAirPower,
  pressureRise,
  REFERENCE_DENSITY,
} from '../../src/fan/curve.ts';
import { LEAST_SLOPE_SHARE } from '../../src/fan/envelope.ts';
import { minimise } from '../../src/numerics/minimum.ts';
import { hermiteCurve, monotoneCurve, valueAt } from '../../src/numerics/monotone-curve.ts';
import { bracketedRoot } from '../../src/numerics/roots.ts';

const LITRES = 1e-3;
const DIPPED = {
  flows: [0, 5, 10, 15, 18, 22, 26, 30].map((flow) => flow * LITRES),
  pressures: [40, 33, 25, 22, 24, 21, 12, 0],
};

function relativeError(actual: number, expected: number): number {
  return Math.abs(actual / expected - 1);
}

function root(f: (x: number) => number, low: number, high: number): number {
  const found = bracketedRoot(f, low, high, { tolerance: 1e-14 });
  if (!found.ok) throw new Error(found.reason);
  return found.root;
}

/** A curve of three to nine falling or rising points from 40 to 400 Pa, zero at the end. */
const anyCurve = fc
  .tuple(
    fc.array(fc.tuple(fc.integer({ min: 2, max: 50 }), fc.double({ min: 0.05, max: 1.1, noNaN: true })), {
      minLength: 1,
      maxLength: 8,
    }),
    fc.integer({ min: 40, max: 400 }),
    fc.integer({ min: 2, max: 50 }),
  )
  .map(([steps, shutOff, lastWidth]): FanCurve => {
    const flows = [0];
    for (const [width] of steps) flows.push((flows.at(-1) ?? 0) + width * LITRES);
    flows.push((flows.at(-1) ?? 0) + lastWidth * LITRES);
    return curveFromPoints({ flows, pressures: [shutOff, ...steps.map(([, share]) => share * shutOff), 0] });
  });

/** Flow over free delivery, backwards, forwards and overdriven. */
const anyShare = fc.double({ min: -1.5, max: 2.5, noNaN: true });
const anyRatio = fc.double({ min: 0.05, max: 1.1, noNaN: true });

describe('the pressure rise of a fan', () => {
  const parabola = curveFromBox(0.03, 40, 0);

  it('goes on beyond free delivery and at rest', () => {
    // Derived: for a parabola the continuation is the same parabola, and the stopped fan a resistance p0/Q0².
    expect(relativeError(pressureRise(parabola, 0.01, 1, 1), 35.5555555556)).toBeLessThan(1e-6);
    expect(relativeError(pressureRise(parabola, 0.02, 0.5, 1), -7.77777777778)).toBeLessThan(1e-6);
    expect(relativeError(pressureRise(parabola, 0.02, 0, 1), -17.7777777778)).toBeLessThan(1e-6);
    expect(relativeError(pressureRise(parabola, -0.02, 0, 1), 17.7777777778)).toBeLessThan(1e-6);
  });

  it('grows in reverse flow', () => {
    // Derived: 40 · (1 + 1/9), plus the least slope 2.5e-4 · 40/0.03 over 0.01 m³/s.
    const leastPart = ((2.5e-4 * 40) / 0.03) * 0.01;
    expect(relativeError(pressureRise(parabola, -0.01, 1, 1), 44.4444444444 + leastPart)).toBeLessThan(1e-9);
  });

  it('follows speed and density', () => {
    // Derived: 1500 to 1000 revolutions, and 1.2 to 1.0040089877 kg/m³.
    const fan = curveFromPoints({ flows: [0, 0.03, 0.045], pressures: [60, 40, 0] });
    expect(relativeError(pressureRise(fan, 0.02, 2 / 3, 1), 17.7777777778)).toBeLessThan(1e-9);
    expect(
      relativeError(pressureRise(fan, 0.03, 1, 1.0040089877 / REFERENCE_DENSITY), 33.466966),
    ).toBeLessThan(1e-7);
  });

  it('is of degree two in flow and speed together', () => {
    fc.assert(
      fc.property(
        anyCurve,
        anyShare,
        anyRatio,
        fc.double({ min: 0.1, max: 3, noNaN: true }),
        (fan, share, ratio, factor) => {
          const flow = share * fan.freeDelivery;
          const scaled = pressureRise(fan, factor * flow, factor * ratio, 1);
          const expected = factor ** 2 * pressureRise(fan, flow, ratio, 1);
          expect(Math.abs(scaled - expected)).toBeLessThan(1e-11 * factor ** 2 * fan.shutOff * 30);
        },
      ),
      { seed: 2, numRuns: 1000 },
    );
  });

  it('falls strictly with flow', () => {
    const gap = fc.double({ min: 1e-5, max: 1, noNaN: true });
    fc.assert(
      fc.property(anyCurve, anyShare, anyRatio, gap, (fan, share, ratio, further) => {
        const left = pressureRise(fan, share * fan.freeDelivery, ratio, 1);
        const right = pressureRise(fan, (share + further) * fan.freeDelivery, ratio, 1);
        expect(right).toBeLessThan(left);
      }),
      { seed: 3, numRuns: 1000 },
    );
  });

  it('has the slope of its values, but never less than the least slope', () => {
    const out = { rise: 0, slope: 0 };
    fc.assert(
      fc.property(anyCurve, anyShare, anyRatio, (fan, share, ratio) => {
        const flow = share * fan.freeDelivery;
        const h = 1e-7 * fan.freeDelivery;
        const density = 0.9;
        evaluateRise(fan, flow, ratio, density, out);
        const difference =
          (pressureRise(fan, flow + h, ratio, density) - pressureRise(fan, flow - h, ratio, density)) /
          (2 * h);
        const mean = fan.shutOff / fan.freeDelivery;
        const least = density * ratio * LEAST_SLOPE_SHARE * mean;
        expect(out.rise).toBe(pressureRise(fan, flow, ratio, density));
        expect(out.slope).toBeLessThanOrEqual(-least * (1 - 1e-12));
        // Allowed over h: curvature of a piece of 0.004 of free delivery that takes the whole fall, 6 · 250/0.004.
        expect(Math.abs(out.slope - Math.min(difference, -least))).toBeLessThan(1e-2 * mean);
        expect(Math.abs(out.slope - Math.min(difference, -least))).toBeLessThan(
          1e-3 * Math.abs(out.slope) + 2 * least,
        );
      }),
      { seed: 4, numRuns: 1000 },
    );
  });

  it('and its slope are continuous at no flow and at free delivery', () => {
    fc.assert(
      fc.property(anyCurve, anyRatio, (fan, ratio) => {
        const before = { rise: 0, slope: 0 };
        const after = { rise: 0, slope: 0 };
        const mean = fan.shutOff / fan.freeDelivery;
        for (const flow of [0, ratio * fan.freeDelivery]) {
          evaluateRise(fan, flow - 1e-12 * fan.freeDelivery, ratio, 1, before);
          evaluateRise(fan, flow + 1e-12 * fan.freeDelivery, ratio, 1, after);
          expect(Math.abs(after.rise - before.rise)).toBeLessThan(1e-9 * fan.shutOff);
          expect(Math.abs(after.slope - before.slope)).toBeLessThan(1e-6 * mean);
        }
      }),
      { seed: 5, numRuns: 1000 },
    );
  });

  it('goes over to the stopped fan as the speed goes to zero', () => {
    fc.assert(
      fc.property(anyCurve, anyShare, (fan, share) => {
        const flow = share * fan.freeDelivery;
        const still = pressureRise(fan, flow, 0, 1);
        expect(Math.abs(still + fan.quadratic * flow * Math.abs(flow))).toBeLessThan(1e-12 * fan.shutOff);
        expect(Math.abs(pressureRise(fan, flow, 1e-12, 1) - still)).toBeLessThan(1e-9 * fan.shutOff);
        expect(Math.abs(pressureRise(fan, flow, 1e-300, 1) - still)).toBeLessThan(1e-12 * fan.shutOff);
      }),
      { seed: 6, numRuns: 1000 },
    );
  });

  it('is zero, and so is its slope, at rest without flow', () => {
    const out = { rise: 1, slope: 1 };
    evaluateRise(parabola, 0, 0, 1, out);
    expect(Math.abs(out.rise)).toBe(0);
    expect(Math.abs(out.slope)).toBe(0);
  });
});

describe('a curve from points', () => {
  it('meets a resistance where SciPy does, dip or no dip', () => {
    // Computed with SciPy 1.17.1, PchipInterpolator and brentq, flows in L/s; resistances in Pa/(L/s)².
    const fan = curveFromPoints(DIPPED);
    const raw = monotoneCurve(DIPPED.flows, DIPPED.pressures);
    for (const [resistance, rawFlow, envelopeFlow] of [
      [0.02, 25.582947, 25.58989],
      [0.05, 21.016335, 20.737446],
      [0.07, 18.491272, 17.728105],
      [0.1, 14.834097, 14.834097],
      [0.2, 10.98657, 10.98657],
    ] as const) {
      const loss = (flow: number) => resistance * 1e6 * flow ** 2;
      const onRaw = root((flow) => valueAt(raw, flow) - loss(flow), 0, 0.03);
      const onEnvelope = root((flow) => pressureRise(fan, flow, 1, 1) - loss(flow), 0, 0.03);
      expect(relativeError(onRaw / LITRES, rawFlow)).toBeLessThan(1e-6);
      expect(relativeError(onEnvelope / LITRES, envelopeFlow)).toBeLessThan(1e-4);
    }
  });

  it('keeps the points, its ends and the peak', () => {
    const fan = curveFromPoints(DIPPED);
    expect(fan.raw).toBe(DIPPED);
    expect(fan.freeDelivery).toBeCloseTo(0.03, 15);
    expect(fan.shutOff).toBe(40);
    expect(fan.peakFlow).toBeCloseTo(0.018, 15);
    expect(fan.synthesised).toBe(false);
    // Derived: p0/Q0²; end slopes by the three-point formula, (3 · 1.4 − 1.6)/2 and (3 · 3 − 2.25)/2 in Pa/(L/s).
    expect(relativeError(fan.quadratic, 40 / 0.03 ** 2)).toBeLessThan(1e-12);
    expect(fan.reverseSlope).toBeCloseTo(1300, 9);
    expect(fan.overdriveSlope).toBeCloseTo(-3375, 9);
  });

  it('begins level only as far as the least slope allows', () => {
    // Derived: raised pressures at the start leave a level envelope of 30 Pa.
    const fan = curveFromPoints({ flows: [0, 0.01, 0.02, 0.03], pressures: [30, 33, 31, 0] });
    expect(fan.shutOff).toBe(30);
    expect(fan.peakFlow).toBe(0.01);
    expect(pressureRise(fan, 0.015, 1, 1)).toBeLessThan(30);
    expect(pressureRise(fan, 0.015, 1, 1)).toBeGreaterThan(30 * (1 - LEAST_SLOPE_SHARE));
  });

  it('refuses unusable points', () => {
    expect(() => curveFromPoints({ flows: [0, 1], pressures: [0, 0] })).toThrow(RangeError);
  });

  it('cannot be completed if it does not go from shut-off to free delivery', () => {
    const raw = { flows: [0, 1], pressures: [1, 0] };
    expect(() => completeCurve(raw, monotoneCurve([0.1, 1], [1, 0]), false)).toThrow(RangeError);
    expect(() => completeCurve(raw, monotoneCurve([0, 1], [1, 0.1]), false)).toThrow(RangeError);
    expect(() => completeCurve(raw, monotoneCurve([0, 1], [-1, 0]), false)).toThrow(RangeError);
  });
});

describe('stall', () => {
  const fan = curveFromPoints(DIPPED);

  it('is left of the pressure peak, at every speed', () => {
    expect(isStalled(fan, 0.0179, 1)).toBe(true);
    expect(isStalled(fan, 0.0181, 1)).toBe(false);
    expect(isStalled(fan, 0.0089, 0.5)).toBe(true);
    expect(isStalled(fan, 0.0091, 0.5)).toBe(false);
    expect(isStalled(fan, -0.001, 0.5)).toBe(true);
  });

  it('does not befall a stopped fan, nor one without a dip unless the flow reverses', () => {
    expect(isStalled(fan, -0.001, 0)).toBe(false);
    const smooth = curveFromBox(0.03, 40);
    expect(isStalled(smooth, 0, 1)).toBe(false);
    expect(isStalled(smooth, -1e-6, 1)).toBe(true);
  });
});

describe('the greatest air power', () => {
  it('is that of the textbook curves', () => {
    // Derived by setting d(Q·p)/dQ to zero: parabola at 1/√3, straight line at 1/2, the curve between at (√7 − 1)/3.
    const between = (Math.sqrt(7) - 1) / 3;
    const cases: [number, number][] = [
      [0, 2 / (3 * Math.sqrt(3))],
      [1, 0.25],
      [0.5, between * (1 - 0.5 * between - 0.5 * between ** 2)],
    ];
    for (const [linearShare, share] of cases) {
      const bound = peakAirPower(curveFromBox(0.03, 40, linearShare)) / (0.03 * 40 * share);
      expect(bound).toBeGreaterThanOrEqual(1);
      expect(bound).toBeLessThan(1 + 1e-6);
    }
  });

  it('is never below any power of the curve, and within 1e-6 of the best', () => {
    fc.assert(
      fc.property(anyCurve, (fan) => {
        const bound = peakAirPower(fan);
        const loss = (flow: number) => -flow * pressureRise(fan, flow, 1, 1);
        let best = 0;
        const knots = [...fan.curve.x];
        knots.slice(1).forEach((end, i) => {
          const found = minimise(loss, knots[i] ?? 0, end, 1e-9 * fan.freeDelivery);
          if (found.ok) best = Math.max(best, -found.value);
          for (let k = 0; k <= 20; k += 1) {
            best = Math.max(best, -loss((knots[i] ?? 0) + ((end - (knots[i] ?? 0)) * k) / 20));
          }
        });
        expect(bound).toBeGreaterThanOrEqual(best);
        expect(bound).toBeLessThan(best * (1 + 1e-6));
      }),
      { seed: 8, numRuns: 1000 },
    );
  });
});

describe('a curve of one cubic piece', () => {
  it('is a parabola if its end slopes are', () => {
    // Derived.
    const fan = completeCurve(
      { flows: [0, 2], pressures: [8, 0] },
      hermiteCurve([0, 2], [8, 0], [0, -8]),
      false,
    );
    expect(pressureRise(fan, 1, 1, 1)).toBeCloseTo(6, 12);
    expect(pressureRise(fan, 3, 1, 1)).toBeCloseTo(-10, 12);
    expect(fan.reverseSlope).toBeCloseTo(LEAST_SLOPE_SHARE * 4, 15);
  });
});
