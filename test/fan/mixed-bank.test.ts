import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { curveFromBox } from '../../src/fan/box-figures.ts';
import { type FanCurve, pressureRise } from '../../src/fan/curve.ts';
import { FAN_ASSUMPTIONS } from '../../src/fan/fan-assumptions.ts';
import { type BankRise, evaluateMixedRise, lostConductance } from '../../src/fan/mixed-bank.ts';
import { bracketedRoot } from '../../src/numerics/roots.ts';
import { curvePool } from '../airway/element-pool.ts';

const SEED = 62;

/** 40·(1 − (Q/0.03)²) Pa. */
const parabola = curveFromBox(0.03, 40, 0);

function riseOf(
  bank: { readonly curve: FanCurve; readonly count: number; readonly conductance: number },
  flow: number,
  ratio = 1,
  densityRatio = 1,
): BankRise {
  const out = { rise: 0, slope: 0, fanFlow: 0 };
  evaluateMixedRise(bank, flow, ratio, densityRatio, out);
  return out;
}

/** One or more turning fans beside dead ones. */
function withDead(curve: FanCurve, count: number, dead: number) {
  return { curve, count, conductance: lostConductance(curve, 0.08, { dead, missing: 0 }, FAN_ASSUMPTIONS) };
}

describe('what lost fans let through', () => {
  it('is the square law of the stopped fan for a dead one', () => {
    // Derived from the extension of the curve: Δp = (p0/Q0²)·Q², so Q = Q0/√p0 at 1 Pa.
    const two = lostConductance(parabola, 0.08, { dead: 2, missing: 0 }, FAN_ASSUMPTIONS);
    expect(two).toBeCloseTo((2 * 0.03) / Math.sqrt(40), 12);
  });

  it('grows as the root of the resistance falls', () => {
    // Derived: a factor of 0.3 on the resistance lets 1/√0.3 as much through.
    const turned = { ...FAN_ASSUMPTIONS, lost: { ...FAN_ASSUMPTIONS.lost, stopped: 0.3 } };
    const usual = lostConductance(parabola, 0.08, { dead: 1, missing: 0 }, FAN_ASSUMPTIONS);
    const found = lostConductance(parabola, 0.08, { dead: 1, missing: 0 }, turned);
    expect(found / usual).toBeCloseTo(1 / Math.sqrt(0.3), 12);
  });

  it('is that of a thin sharp hole for a missing one', () => {
    // Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagram 4-17 (from memory): 2.85 heads, Cd = 0.592349;
    // Q = Cd·A·√(2Δp/ρ) through the blade circle of 0.96 · 80 mm at 1 Pa and 1.2 kg/m³.
    const area = (Math.PI / 4) * (0.96 * 0.08) ** 2;
    const found = lostConductance(parabola, 0.08, { dead: 0, missing: 1 }, FAN_ASSUMPTIONS);
    expect(found).toBeCloseTo(0.592349 * area * Math.sqrt(2 / 1.2), 8);
  });
});

describe('a bank with a dead fan', () => {
  it('of two gives the pressure at which one fan feeds the system and the other', () => {
    // Derived: with parabolas q² = Q0²·(1 − p/p0) and l² = Q0²·p/p0, so that at p = p0/2 both flows are equal and
    // nothing is left for the system; at p = p0/5, q − l = Q0·(√0.8 − √0.2) = Q0/√5.
    const bank = withDead(parabola, 1, 1);
    expect(riseOf(bank, 0).rise).toBeCloseTo(20, 8);
    const fifth = riseOf(bank, 0.03 / Math.sqrt(5));
    expect(fifth.rise).toBeCloseTo(8, 8);
    expect(fifth.fanFlow).toBeCloseTo(0.03 * Math.sqrt(0.8), 10);
  });

  it('lets air pass forwards through it when the turning fan is overdriven', () => {
    // Derived: p = −p0, q = √2·Q0, l = −Q0, together (1 + √2)·Q0.
    const over = riseOf(withDead(parabola, 1, 1), (1 + Math.SQRT2) * 0.03);
    expect(over.rise).toBeCloseTo(-40, 8);
    expect(over.fanFlow).toBeCloseTo(Math.SQRT2 * 0.03, 10);
  });

  it('has no rise and no slope where all the air passes the turning fans freely', () => {
    // Derived: at free delivery nothing drives air through the dead fan.
    const free = riseOf(withDead(parabola, 2, 1), 2 * 0.03);
    expect(Math.abs(free.rise)).toBe(0);
    expect(Math.abs(free.slope)).toBe(0);
  });

  it('of which all are dead is the stopped bank', () => {
    // Derived: n stopped fans share the flow.
    for (const flow of [-0.05, -1e-4, 0, 1e-4, 0.05]) {
      const found = riseOf(withDead(parabola, 0, 3), flow);
      expect(found.rise).toBeCloseTo(pressureRise(parabola, flow / 3, 0, 1), 12);
      expect(found.fanFlow).toBe(0);
    }
  });

  it('standing still as a whole is the stopped bank, too', () => {
    // Derived: with its own resistance a dead fan differs in nothing from one that is switched off.
    const found = riseOf(withDead(parabola, 1, 2), 0.04, 0);
    expect(found.rise).toBeCloseTo(pressureRise(parabola, 0.04 / 3, 0, 1), 12);
    expect(found.fanFlow).toBeCloseTo(0.04 / 3, 12);
  });
});

const curves = fc.constantFrom(...curvePool);
const ratios = fc.double({ min: 0.15, max: 1, noNaN: true });
const shares = fc.double({ min: -1.5, max: 2.5, noNaN: true });
const counts = fc.integer({ min: 1, max: 4 });
const lostFans = fc
  .record({ dead: fc.integer({ min: 0, max: 3 }), missing: fc.integer({ min: 0, max: 2 }) })
  .filter(({ dead, missing }) => dead + missing > 0);

/** Any bank with lost fans at any flow. */
const anyBank = fc
  .record({ curve: curves, count: counts, lost: lostFans, share: shares, ratio: ratios })
  .map(({ curve, count, lost, share, ratio }) => ({
    bank: { curve, count, conductance: lostConductance(curve, 0.08, lost, FAN_ASSUMPTIONS) },
    ratio,
    flow: share * count * ratio * curve.freeDelivery,
  }));

describe('any bank with lost fans', () => {
  it('shares one pressure, and its flows add', () => {
    // Derived: what passes the lost places is total less turning; both laws must give the rise found.
    fc.assert(
      fc.property(anyBank, ({ bank, flow, ratio }) => {
        const { rise, fanFlow } = riseOf(bank, flow, ratio);
        const scale = bank.curve.shutOff * ratio ** 2;
        const back = bank.count * fanFlow - flow;
        expect(Math.abs(pressureRise(bank.curve, fanFlow, ratio, 1) - rise)).toBeLessThan(1e-10 * scale);
        const needed = (back * Math.abs(back)) / bank.conductance ** 2;
        expect(Math.abs(needed - rise)).toBeLessThan(1e-10 * (scale + Math.abs(rise)));
      }),
      { seed: SEED, numRuns: 1000 },
    );
  });

  it('is what a search for the common pressure finds', () => {
    // Another route: the root in the pressure, each flow at that pressure by its own root (Brent).
    fc.assert(
      fc.property(anyBank, ({ bank, flow, ratio }) => {
        const { curve, count, conductance } = bank;
        const most = 50 * Math.max(curve.freeDelivery, Math.abs(flow));
        const root = (f: (x: number) => number, low: number, high: number): number => {
          const found = bracketedRoot(f, low, high, { tolerance: 1e-15 });
          return found.ok ? found.root : found.best;
        };
        const turning = (p: number): number => root((q) => pressureRise(curve, q, ratio, 1) - p, -most, most);
        const through = (p: number): number => -Math.sign(p) * conductance * Math.sqrt(Math.abs(p));
        const reach = 400 * curve.shutOff + (flow / conductance) ** 2;
        const p = root((rise) => count * turning(rise) + through(rise) - flow, -reach, reach);
        expect(Math.abs(riseOf(bank, flow, ratio).rise - p)).toBeLessThan(
          1e-7 * (curve.shutOff + Math.abs(p)),
        );
      }),
      { seed: SEED + 1, numRuns: 60 },
    );
  });

  it('has the slope of its rise', () => {
    // Difference quotient; where a fan's slope is held at a least value the quotient may fall short of it.
    fc.assert(
      fc.property(anyBank, ({ bank, flow, ratio }) => {
        const step = 1e-6 * bank.curve.freeDelivery * ratio;
        const { slope } = riseOf(bank, flow, ratio);
        const [above, below] = [flow + step, flow - step].map((at) => riseOf(bank, at, ratio).rise);
        const quotient = ((above ?? 0) - (below ?? 0)) / (2 * step);
        const scale = (bank.curve.shutOff / bank.curve.freeDelivery) * ratio;
        expect(slope).toBeLessThanOrEqual(0);
        expect(Math.abs(slope - quotient)).toBeLessThan(1e-3 * scale + 1e-4 * Math.abs(slope));
      }),
      { seed: SEED + 2, numRuns: 500 },
    );
  });

  it('never rises with the flow, and lies between the turning fans alone and nothing', () => {
    // Derived: whatever passes beside the turning fans brings the pressure nearer to zero.
    fc.assert(
      fc.property(anyBank, ({ bank, flow, ratio }) => {
        const here = riseOf(bank, flow, ratio).rise;
        const tolerance = 1e-12 * bank.curve.shutOff;
        expect(riseOf(bank, flow + 0.01, ratio).rise).toBeLessThanOrEqual(here + tolerance);
        const plain = pressureRise(bank.curve, flow / bank.count, ratio, 1);
        expect(Math.abs(here)).toBeLessThanOrEqual(Math.abs(plain) + tolerance);
        expect(here * plain).toBeGreaterThanOrEqual(0);
      }),
      { seed: SEED + 3, numRuns: 500 },
    );
  });

  it('obeys the fan laws', () => {
    // Fan laws: flow ~ speed, pressure ~ speed² and density, ASHRAE Handbook, chapter on fans (from memory).
    fc.assert(
      fc.property(anyBank, ({ bank, flow, ratio }) => {
        const full = riseOf(bank, flow / ratio, 1);
        const slow = riseOf(bank, flow, ratio, 0.8);
        const tolerance = 1e-9 * bank.curve.shutOff;
        expect(Math.abs(slow.rise - 0.8 * ratio ** 2 * full.rise)).toBeLessThan(tolerance);
        expect(Math.abs(slow.fanFlow - ratio * full.fanFlow)).toBeLessThan(1e-9 * bank.curve.freeDelivery);
      }),
      { seed: SEED + 4, numRuns: 300 },
    );
  });

  it('comes close to the bank without lost fans as they let ever less through', () => {
    // Derived: without a way beside them the turning fans are alone.
    fc.assert(
      fc.property(anyBank, ({ bank, flow, ratio }) => {
        const tight = riseOf({ ...bank, conductance: 1e-12 }, flow, ratio).rise;
        const plain = pressureRise(bank.curve, flow / bank.count, ratio, 1);
        expect(Math.abs(tight - plain)).toBeLessThan(1e-6 * (bank.curve.shutOff + Math.abs(plain)));
      }),
      { seed: SEED + 5, numRuns: 200 },
    );
  });
});
