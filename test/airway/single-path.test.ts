import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createBalancer, newNetworkState } from '../../src/airway/balance.ts';
import type { BankStage } from '../../src/airway/bank-stage.ts';
import { type SeriesLeg, type Stage, seriesLeg } from '../../src/airway/series.ts';
import { createSinglePath } from '../../src/airway/single-path.ts';
import type { Element } from '../../src/elements/element.ts';
import { curveFromBox } from '../../src/fan/box-figures.ts';
import type { FanCurve } from '../../src/fan/curve.ts';
import { curvePool, elementPool } from './element-pool.ts';

const SHUT_OFF = 40;
const FREE_DELIVERY = 0.03;
const LOSS = 5e4;
/** A fan whose pressure is the parabola p0·(1 − (Q/Q0)²), so that the flows below have closed forms. */
const parabola = curveFromBox(FREE_DELIVERY, SHUT_OFF, 0);
const quadraticLoss: Element = {
  viscous: 0,
  inertial: LOSS / 1.2,
  faint: 0,
  lossUncertainty: 0,
  remarks: [],
};

function bank(curve: FanCurve, count = 1, derating = 1): BankStage {
  return { kind: 'bank', curve, count, derating };
}

function passive(element: Element): Stage {
  return { kind: 'element', element };
}

interface Plan {
  readonly stages: readonly Stage[];
  readonly ratios: readonly number[];
  readonly densities: readonly number[];
}

function legOf({ stages, ratios, densities }: Plan): SeriesLeg {
  const leg = seriesLeg(stages);
  leg.ratios.set(ratios);
  leg.densities.set(densities);
  leg.refresh();
  return leg;
}

/** The same flow by the solver of whole airways. */
function balancedFlow(leg: SeriesLeg): number {
  const topology = { chambers: 1, from: [0], to: [0] };
  const state = newNetworkState(topology);
  const { status } = createBalancer(topology)([leg], state);
  if (status !== 'balanced') throw new Error(status);
  return state.flows[0] as number;
}

function uniform(stages: readonly Stage[], ratio: number): SeriesLeg {
  const densities = stages.map(() => 1.2);
  return legOf({ stages, ratios: stages.map(() => ratio), densities });
}

const stage: fc.Arbitrary<Stage> = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom(...elementPool).map(passive) },
  {
    weight: 2,
    arbitrary: fc
      .tuple(fc.constantFrom(...curvePool), fc.integer({ min: 1, max: 3 }), fc.constantFrom(1, 0.9, 0.8))
      .map(([curve, count, derating]) => bank(curve, count, derating)),
  },
  { weight: 1, arbitrary: fc.constant<Stage>({ kind: 'empty' }) },
);

const MOST_EXTRA_STAGES = 6;

function oneForEachStage(value: fc.Arbitrary<number>): fc.Arbitrary<number[]> {
  const length = MOST_EXTRA_STAGES + 2;
  return fc.array(value, { minLength: length, maxLength: length });
}

/** One fan in five is stopped. */
const speedRatio = fc.oneof(
  { weight: 1, arbitrary: fc.constant(0) },
  { weight: 4, arbitrary: fc.double({ min: 0.1, max: 1, noNaN: true }) },
);

/** Paths with one fan or more and one resistance or more; warm and cold air, fans fast, slow and stopped. */
const plan: fc.Arbitrary<Plan> = fc
  .record({
    element: fc.constantFrom(...elementPool),
    curve: fc.constantFrom(...curvePool),
    rest: fc.array(stage, { maxLength: MOST_EXTRA_STAGES }),
    ratios: oneForEachStage(speedRatio),
    densities: oneForEachStage(fc.double({ min: 0.8, max: 1.3, noNaN: true })),
  })
  .map(({ element, curve, rest, ratios, densities }) => {
    const stages = [passive(element), bank(curve), ...rest];
    return {
      stages,
      ratios: ratios.slice(0, stages.length),
      densities: densities.slice(0, stages.length),
    };
  });

/** The same with the first fan turning: what is left of a flow of nothing has no relative accuracy. */
const turning = plan.map(({ stages, ratios: [first = 0, bank = 0, ...rest], densities }): Plan => {
  return { stages, ratios: [first, Math.max(bank, 0.1), ...rest], densities };
});

describe('the operating point of a single path', () => {
  it.each([1, 0.5, 0.2])('is that of a parabola on a quadratic loss at speed %d', (ratio) => {
    // Derived: Q = r·√(p0/(R + p0/Q0²)), since pressures go with the square of the speed, flows with the speed.
    const expected = 1.2 * ratio * Math.sqrt(SHUT_OFF / (LOSS + SHUT_OFF / FREE_DELIVERY ** 2));
    const flow = createSinglePath(uniform([passive(quadraticLoss), bank(parabola)], ratio))(0.005);
    expect(Math.abs(flow / expected - 1)).toBeLessThan(1e-6);
  });

  it('is the free delivery of a fan without resistance', () => {
    // Derived: no loss, so no pressure. Two fans side by side carry twice the flow.
    const flow = createSinglePath(uniform([{ kind: 'empty' }, bank(parabola, 2)], 0.5))(1e-4);
    expect(Math.abs(flow / (1.2 * 2 * 0.5 * FREE_DELIVERY) - 1)).toBeLessThan(1e-12);
  });

  it('is no flow where every fan is stopped', () => {
    expect(createSinglePath(uniform([passive(quadraticLoss), bank(parabola)], 0))(0.01)).toBe(0);
    expect(createSinglePath(uniform([passive(quadraticLoss)], 1))(0.01)).toBe(0);
  });

  it('lies where the loss changes its sign, to 1e-9', () => {
    // Derived: the loss rises strictly, so its root lies between two flows at which its signs differ.
    const lossAt = (leg: SeriesLeg, flow: number) => {
      leg.evaluate(flow);
      return leg.loss;
    };
    fc.assert(
      fc.property(plan, (drawn) => {
        const leg = legOf(drawn);
        const flow = createSinglePath(leg)(0.005);
        expect(lossAt(leg, flow * (1 - 1e-9))).toBeLessThanOrEqual(0);
        expect(lossAt(leg, flow * (1 + 1e-9))).toBeGreaterThanOrEqual(0);
      }),
      { seed: 19, numRuns: 400 },
    );
  });

  it('agrees with the balance of whole airways to 1e-9', () => {
    fc.assert(
      fc.property(turning, (drawn) => {
        const leg = legOf(drawn);
        const flow = createSinglePath(leg)(0.005);
        const expected = balancedFlow(leg);
        expect(Math.abs(flow - expected)).toBeLessThanOrEqual(1e-9 * expected);
      }),
      { seed: 20, numRuns: 400 },
    );
  });

  it('does not depend on where the search starts', () => {
    const start = fc.oneof(
      fc.double({ min: 0, max: 0.2, noNaN: true }),
      fc.constantFrom(0, -0.01, 1e-300, 1e9, Number.NaN, Number.POSITIVE_INFINITY),
    );
    fc.assert(
      fc.property(plan, start, (drawn, from) => {
        const find = createSinglePath(legOf(drawn));
        const flow = find(0.005);
        expect(Math.abs(find(from) - flow)).toBeLessThanOrEqual(1e-9 * flow);
      }),
      { seed: 21, numRuns: 400 },
    );
  });

  it('takes few evaluations, near or far', () => {
    fc.assert(
      fc.property(plan, fc.double({ min: 0, max: 0.2, noNaN: true }), (drawn, from) => {
        const leg = legOf(drawn);
        let calls = 0;
        const counted: SeriesLeg = {
          ...leg,
          evaluate: (flow) => {
            calls += 1;
            leg.evaluate(flow);
          },
          get loss() {
            return leg.loss;
          },
          get slope() {
            return leg.slope;
          },
        };
        createSinglePath(counted)(from);
        expect(calls).toBeLessThan(30);
      }),
      { seed: 22, numRuns: 400 },
    );
  });

  it('follows the speed after a refresh', () => {
    const leg = uniform([passive(quadraticLoss), bank(parabola)], 1);
    const find = createSinglePath(leg);
    const full = find(0.01);
    leg.ratios.fill(0.5);
    leg.refresh();
    expect(Math.abs(find(full) / full - 0.5)).toBeLessThan(1e-9);
  });

  it('refuses air that is no air', () => {
    const leg = uniform([passive(quadraticLoss), bank(parabola)], 1);
    leg.densities.fill(Number.NaN);
    leg.refresh();
    expect(() => createSinglePath(leg)(0.01)).toThrow(RangeError);
  });
});
