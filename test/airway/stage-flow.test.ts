import { describe, expect, it } from 'vitest';
import { createBalancer, newNetworkState } from '../../src/airway/balance.ts';
import type { BankStage } from '../../src/airway/bank-stage.ts';
import { type SeriesLeg, type Stage, seriesLeg } from '../../src/airway/series.ts';
import { closenessLoss, fanFlow } from '../../src/airway/stage-flow.ts';
import { FAN_ASSUMPTIONS } from '../../src/fan/fan-assumptions.ts';
import { lostConductance } from '../../src/fan/mixed-bank.ts';
import { imbalance, randomAirway, randomLeg } from './random-airway.ts';
import { between, chance, logBetween, oneOf, type Random, seededRandom } from './seeded-random.ts';

const SEED = 91;

function crowdedBank(random: Random, bank: BankStage): BankStage {
  const lost = { dead: chance(random, 0.5) ? 1 : 0, missing: chance(random, 0.3) ? 1 : 0 };
  const conductance = lostConductance(bank.curve, 0.08, lost, FAN_ASSUMPTIONS);
  return {
    ...bank,
    ...(conductance > 0 ? { conductance } : {}),
    ...(chance(random, 0.4) ? { walls: logBetween(random, 1e2, 1e5) } : {}),
  };
}

function crowdedStage(random: Random, stage: Stage): Stage {
  if (stage.kind === 'bank') return crowdedBank(random, stage);
  if (stage.kind === 'empty' || chance(random, 0.4)) return stage;
  return { ...stage, used: between(random, 0.15, 1) };
}

/** The same leg with walls, elements used in part, lost fans and air of another weight. */
function crowded(random: Random, plain: SeriesLeg): SeriesLeg {
  const leg = seriesLeg(plain.stages.map((stage) => crowdedStage(random, stage)));
  leg.densities.set(plain.densities);
  leg.viscosities.set(plain.viscosities);
  leg.ratios.set(plain.ratios);
  leg.lift = oneOf(random, [0, between(random, -0.5, 0.5)]);
  leg.refresh();
  return leg;
}

function anyFlow(random: Random): number {
  return (chance(random, 0.8) ? 1 : -1) * logBetween(random, 1e-4, 0.08);
}

function lossAt(leg: SeriesLeg, flow: number): number {
  leg.evaluate(flow);
  return leg.loss;
}

describe('a leg in which things stand close and fans are lost', () => {
  const random = seededRandom(SEED);
  const legs = Array.from({ length: 2000 }, () => crowded(random, randomLeg(random)));

  it('loses what its stages lose by themselves and by standing close, less what its weight gives', () => {
    // Derived: pressures along a line add.
    for (const leg of legs) {
      const flow = anyFlow(random);
      const parts = leg.stages.flatMap((_, stage) => [
        leg.stageLoss(stage, flow),
        closenessLoss(leg, stage, flow),
      ]);
      const size = parts.reduce((sum, part) => sum + Math.abs(part), Math.abs(leg.lift) + 1e-12);
      const sum = parts.reduce((total, part) => total + part, -leg.lift);
      expect(Math.abs(lossAt(leg, flow) - sum) / size).toBeLessThan(1e-11);
    }
  });

  it('loses more by closeness in the sense of the flow', () => {
    // Derived: a concentrated flow loses no less than a spread one.
    for (const leg of legs) {
      const flow = anyFlow(random);
      for (let stage = 0; stage < leg.stages.length; stage++) {
        expect(closenessLoss(leg, stage, flow) * flow).toBeGreaterThanOrEqual(0);
      }
    }
  });

  it('never loses less at more flow, and has the slope of its loss', () => {
    // Difference quotient over a small step; where a curve bends it lies between the slopes at both ends.
    for (const leg of legs) {
      const flow = anyFlow(random);
      const step = 1e-5 * Math.abs(flow);
      const quotient = (lossAt(leg, flow + step) - lossAt(leg, flow - step)) / (2 * step);
      const slopes = [-1, 0, 1].map((side) => {
        leg.evaluate(flow + side * step);
        return leg.slope;
      });
      const [least, most] = [Math.min(...slopes), Math.max(...slopes)];
      // The least slope of a fan's curve is held; the quotient may fall short of it.
      const held = leg.stages.some(({ kind }) => kind === 'bank') ? 3 : 0;
      expect(quotient).toBeGreaterThanOrEqual(-1e-9);
      expect(least - quotient).toBeLessThan(1e-3 * most + held + 1e-9);
      expect(quotient - most).toBeLessThan(1e-3 * most + 1e-3);
    }
  });
});

describe('the flow of each fan', () => {
  it('of a bank in which all turn is its share', () => {
    // Definition: fans side by side share the flow.
    const random = seededRandom(SEED + 1);
    for (let trial = 0; trial < 200; trial++) {
      const leg = randomLeg(random);
      const flow = anyFlow(random);
      leg.stages.forEach((stage, index) => {
        const expected = stage.kind === 'bank' ? flow / (leg.densities[index] ?? 0) / stage.count : 0;
        expect(fanFlow(leg, index, flow)).toBeCloseTo(expected, 12);
      });
    }
  });
});

describe('random airways with walls, lost fans and heights', () => {
  it('balance without losing air', () => {
    // Conservation of mass. Legs without any resistance have no one flow where weight pushes.
    const random = seededRandom(SEED + 2);
    const solved = Array.from({ length: 600 }, () => {
      const airway = randomAirway(random);
      const legs = airway.legs.map((leg) => crowded(random, leg));
      for (const leg of legs) if (!leg.stages.some(({ kind }) => kind === 'element')) leg.lift = 0;
      const state = newNetworkState(airway.topology);
      const { status } = createBalancer(airway.topology)(legs, state);
      return { status, topology: airway.topology, flows: state.flows };
    });
    const balanced = solved.filter(({ status }) => status === 'balanced');
    expect(solved.filter(({ status }) => status === 'too many steps')).toHaveLength(0);
    expect(solved.filter(({ status }) => status === 'not a number')).toHaveLength(0);
    expect(balanced.length).toBeGreaterThan(500);
    for (const { topology, flows } of balanced) expect(imbalance(topology, flows)).toBeLessThan(1e-9);
  });
});
