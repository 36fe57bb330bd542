import { describe, expect, it } from 'vitest';
import { elementLoss, type SeriesLeg, type Stage, seriesLeg } from '../../src/airway/series.ts';
import type { Element } from '../../src/elements/element.ts';
import { curveFromBox } from '../../src/fan/box-figures.ts';
import { type FanCurve, pressureRise } from '../../src/fan/curve.ts';
import { LEAST_SLOPE_SHARE } from '../../src/fan/envelope.ts';
import { elementFrom } from './element-pool.ts';
import { randomLeg } from './random-airway.ts';
import { chance, logBetween, seededRandom } from './seeded-random.ts';

const SEED = 88;
const DENSITY = 1.2;

/** Parabola p0·(1 − (Q/Q0)²), strong and weak. */
const strong = curveFromBox(0.03, 40, 0);
const weak = curveFromBox(0.01, 5, 0);

function bank(curve: FanCurve, derating = 1, count = 1): Stage {
  return { kind: 'bank', curve, count, derating };
}

const plainLoss: Element = {
  viscous: 300 / 1.81e-5,
  inertial: 5e4 / DENSITY,
  faint: 0,
  lossUncertainty: 0,
  remarks: [],
};

interface Setting {
  readonly ratios?: readonly number[];
  readonly density?: number;
  readonly viscosity?: number;
}

function legOf(
  stages: readonly Stage[],
  { ratios, density = DENSITY, viscosity = 1.81e-5 }: Setting = {},
): SeriesLeg {
  const leg = seriesLeg(stages);
  leg.ratios.set(ratios ?? stages.map(() => 1));
  leg.densities.fill(density);
  leg.viscosities.fill(viscosity);
  leg.refresh();
  return leg;
}

function lossAt(leg: SeriesLeg, massFlow: number): number {
  leg.evaluate(massFlow);
  return leg.loss;
}

function slopeAt(leg: SeriesLeg, massFlow: number): number {
  leg.evaluate(massFlow);
  return leg.slope;
}

describe('stages in series', () => {
  it('lose a·Q + b·Q² and gain what the fan gives', () => {
    // Derived: 300·0.01 + 5e4·0.01² = 8 Pa, less 40·(1 − 1/9) Pa.
    const leg = legOf([{ kind: 'element', element: plainLoss }, bank(strong)]);
    expect(lossAt(leg, 0.01 * DENSITY)).toBeCloseTo(8 - (40 * 8) / 9, 10);
    expect(leg.stageLoss(0, 0.01 * DENSITY)).toBeCloseTo(8, 10);
    expect(leg.stageLoss(1, 0.01 * DENSITY)).toBeCloseTo((-40 * 8) / 9, 10);
  });

  it('lose in thin hot air by the local density and viscosity', () => {
    // Derived: the laminar part goes with viscosity and the volume flow, the other with density and its square.
    const leg = legOf([{ kind: 'element', element: plainLoss }], { density: 0.9, viscosity: 2.1e-5 });
    const flow = 0.012 / 0.9;
    const expected = ((300 * 2.1) / 1.81) * flow + ((5e4 * 0.9) / 1.2) * flow ** 2;
    expect(lossAt(leg, 0.012)).toBeCloseTo(expected, 10);
    expect(lossAt(leg, -0.012)).toBeCloseTo(-expected, 10);
    expect(elementLoss(plainLoss, flow, 0.9, 2.1e-5)).toBeCloseTo(expected, 10);
  });

  it('count the small linear part with the density', () => {
    // Derived from the contract: faint·ρ·Q.
    const leg = legOf([{ kind: 'element', element: { ...plainLoss, viscous: 0, inertial: 0, faint: 7 } }]);
    expect(lossAt(leg, 0.01)).toBeCloseTo(0.07, 12);
    expect(slopeAt(leg, 0.01)).toBeCloseTo(7, 12);
  });

  it('count laws of their own, each at its own air', () => {
    // Contract: the leg's loss at a mass flow is that of each element at its local volume flow.
    const duct = elementFrom('duct', { duct: '90 x 2 mm', length: '40 mm' });
    const leg = seriesLeg([
      { kind: 'element', element: duct },
      { kind: 'element', element: duct },
    ]);
    leg.densities.set([1.2, 1.1]);
    leg.viscosities.set([1.81e-5, 1.95e-5]);
    leg.refresh();
    const cold = elementLoss(duct, 0.002 / 1.2, 1.2, 1.81e-5);
    const hot = elementLoss(duct, 0.002 / 1.1, 1.1, 1.95e-5);
    expect(lossAt(leg, 0.002)).toBeCloseTo(cold + hot, 12);
  });

  it('lose nothing in empty places', () => {
    // Definition of an empty place.
    const leg = legOf([{ kind: 'empty' }, { kind: 'empty' }]);
    expect(lossAt(leg, 0.02)).toBe(0);
    expect(leg.stageLoss(1, 0.02)).toBe(0);
  });

  it('sum up to the leg', () => {
    // Derived: pressures along a line add.
    const random = seededRandom(SEED);
    for (let trial = 0; trial < 3000; trial++) {
      const leg = randomLeg(random);
      const flow = (chance(random, 0.8) ? 1 : -1) * logBetween(random, 1e-6, 0.08);
      const parts = leg.stages.map((_, stage) => leg.stageLoss(stage, flow));
      const size = parts.reduce((sum, part) => sum + Math.abs(part), 1e-12);
      const sum = parts.reduce((total, part) => total + part, 0);
      expect(Math.abs(lossAt(leg, flow) - sum) / size).toBeLessThan(1e-12);
    }
  });

  it('have the slope of their loss', () => {
    // Difference quotient; a fan's slope is held at a least value, of which the quotient may fall short.
    const random = seededRandom(SEED + 1);
    for (let trial = 0; trial < 3000; trial++) {
      const leg = randomLeg(random);
      const flow = (chance(random, 0.8) ? 1 : -1) * logBetween(random, 1e-4, 0.08);
      const step = 1e-6 * Math.abs(flow);
      const quotient = (lossAt(leg, flow + step) - lossAt(leg, flow - step)) / (2 * step);
      const slope = slopeAt(leg, flow);
      const held = leg.stages.reduce(
        (sum, stage, index) => sum + (stage.kind === 'bank' ? heldSlope(leg, stage.curve, index) : 0),
        0,
      );
      expect(slope - quotient).toBeGreaterThan(-1e-4 * slope - 1e-4);
      expect(slope - quotient).toBeLessThan(1e-4 * slope + 1e-4 + held);
    }
  });

  it('never lose less at more flow', () => {
    // Property on which the one solution of an airway rests.
    const random = seededRandom(SEED + 2);
    for (let trial = 0; trial < 1000; trial++) {
      const leg = randomLeg(random);
      const flow = logBetween(random, 1e-5, 0.05);
      const ladder = [-2, -1, -0.5, -0.1, 0, 0.1, 0.5, 1, 1.001, 2].map((factor) =>
        lossAt(leg, factor * flow),
      );
      for (let rung = 1; rung < ladder.length; rung++) {
        expect((ladder[rung] ?? Number.NaN) - (ladder[rung - 1] ?? Number.NaN)).toBeGreaterThanOrEqual(0);
      }
      for (const factor of [-1, 0, 1]) expect(slopeAt(leg, factor * flow)).toBeGreaterThanOrEqual(0);
    }
  });
});

/** Least slope of a fan's curve at the speed and air of its stage [Pa·s/kg]; a single fan has the largest. */
function heldSlope(leg: SeriesLeg, curve: FanCurve, stage: number): number {
  const least = LEAST_SLOPE_SHARE * curve.quadratic * curve.freeDelivery;
  return (least * (leg.ratios[stage] ?? 0)) / DENSITY;
}

describe('fans side by side', () => {
  it.each([2, 3])('%d share the flow at the pressure of one', (count) => {
    // Derived: flows of fans side by side add.
    const one = legOf([bank(strong)]);
    const all = legOf([bank(strong, 1, count)]);
    for (const flow of [-0.01, 0, 0.01, 0.03, 0.05]) {
      expect(lossAt(all, count * flow)).toBeCloseTo(lossAt(one, flow), 10);
      expect(slopeAt(all, count * flow)).toBeCloseTo(slopeAt(one, flow) / count, 10);
    }
  });
});

describe('fan laws in a leg', () => {
  it('pressure goes with the square of the speed where the flow goes with the speed', () => {
    // Fan laws (affinity); ASHRAE Handbook HVAC Systems and Equipment, chapter on fans (from memory).
    const full = legOf([bank(strong)]);
    const slow = legOf([bank(strong)], { ratios: [0.4] });
    for (const flow of [-0.01, 0.002, 0.02, 0.05]) {
      expect(lossAt(slow, 0.4 * flow)).toBeCloseTo(0.16 * lossAt(full, flow), 10);
    }
  });

  it('pressure goes with the density at one volume flow', () => {
    // Fan laws, as above.
    const full = legOf([bank(strong)]);
    const thin = legOf([bank(strong)], { density: 0.9 });
    expect(lossAt(thin, 0.9 * 0.015)).toBeCloseTo(0.75 * lossAt(full, 1.2 * 0.015), 10);
  });
});

describe('a fan behind another in one stream', () => {
  // Model assumption, no source: the pressure it adds shrinks by a factor; what it takes away does not.
  const flow = 0.006;
  const massFlow = flow * DENSITY;
  const gain = (curve: FanCurve, ratio = 1, at = flow) => pressureRise(curve, at, ratio, 1);

  it('adds less', () => {
    const leg = legOf([bank(strong), bank(strong, 0.8)]);
    expect(lossAt(leg, massFlow)).toBeCloseTo(-1.8 * gain(strong), 10);
    expect(leg.stageLoss(0, massFlow)).toBeCloseTo(-gain(strong), 10);
    expect(leg.stageLoss(1, massFlow)).toBeCloseTo(-0.8 * gain(strong), 10);
  });

  it('adds less also with an element or an empty place between', () => {
    const leg = legOf([
      bank(strong),
      { kind: 'empty' },
      { kind: 'element', element: plainLoss },
      bank(strong, 0.9),
    ]);
    expect(leg.stageLoss(3, massFlow)).toBeCloseTo(-0.9 * gain(strong), 10);
  });

  it('takes away as much as ever when it is overdriven', () => {
    const at = 0.02;
    const leg = legOf([bank(strong), bank(weak, 0.8)]);
    expect(gain(weak, 1, at)).toBeLessThan(0);
    expect(leg.stageLoss(1, at * DENSITY)).toBeCloseTo(-gain(weak, 1, at), 10);
  });

  it('takes away as much as ever when it stands still', () => {
    const leg = legOf([bank(strong), bank(strong, 0.8)], { ratios: [1, 0] });
    expect(leg.stageLoss(1, massFlow)).toBeCloseTo(-gain(strong, 0), 10);
  });

  it('adds all it can behind one that stands still', () => {
    const leg = legOf([bank(strong), bank(strong, 0.8)], { ratios: [0, 0.7] });
    expect(leg.stageLoss(1, massFlow)).toBeCloseTo(-gain(strong, 0.7), 10);
  });

  it('adds all it can if it is the first, whatever its factor', () => {
    const leg = legOf([{ kind: 'element', element: plainLoss }, bank(strong, 0.8)]);
    expect(leg.stageLoss(1, massFlow)).toBeCloseTo(-gain(strong), 10);
  });

  it('is joined without a jump where its rise goes through zero', () => {
    // At free delivery the factor changes, the rise does not.
    const leg = legOf([bank(strong), bank(weak, 0.8)]);
    const edge = 0.01 * DENSITY;
    expect(Math.abs(leg.stageLoss(1, edge * (1 + 1e-9)) - leg.stageLoss(1, edge * (1 - 1e-9)))).toBeLessThan(
      1e-7,
    );
  });

  it('forgets its neighbour when that is switched off and on', () => {
    const leg = legOf([bank(strong), bank(strong, 0.8)]);
    leg.ratios[0] = 0;
    leg.refresh();
    expect(leg.stageLoss(1, massFlow)).toBeCloseTo(-gain(strong), 10);
    leg.ratios[0] = 0.2;
    leg.refresh();
    expect(leg.stageLoss(1, massFlow)).toBeCloseTo(-0.8 * gain(strong), 10);
  });
});
