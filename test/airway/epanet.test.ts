import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { createBalancer, newNetworkState } from '../../src/airway/balance.ts';
import type { Topology } from '../../src/airway/topology.ts';
import { epanet, type PlainLeg, type WaterSolution } from './epanet.ts';
import { DENSITY, parabolicFan, resistance } from './leg-laws.ts';
import { blowsForwards, plainNetwork } from './plain-network.ts';
import { seededRandom, wholeBetween } from './seeded-random.ts';

// EPANET solves networks of water pipes: the same equations, another program. Published: OWA-EPANET 2.3 in the
// package epanet-js 0.9.0.
let water: (topology: Topology, legs: readonly PlainLeg[]) => WaterSolution;

beforeAll(async () => {
  // It warns of overdriven fans ("pumps cannot deliver enough head"), which are wanted here.
  vi.spyOn(console, 'warn').mockImplementation(() => undefined);
  water = await epanet();
});

afterAll(() => {
  vi.restoreAllMocks();
});

function air(topology: Topology, legs: readonly PlainLeg[]): WaterSolution {
  const state = newNetworkState(topology);
  const laws = legs.map((leg) =>
    leg.kind === 'fan' ? parabolicFan(leg.shutOff, leg.freeDelivery) : resistance(leg.a, leg.b),
  );
  expect(createBalancer(topology)(laws, state).status).toBe('balanced');
  return { flows: Array.from(state.flows, (flow) => flow / DENSITY), pressures: [...state.pressures] };
}

const NETWORKS = 300;

/** Largest distance of two lists, as a share of each value or, if given, of one scale. */
function distance(found: readonly number[], expected: readonly number[], scale?: number): number {
  const distances = expected.map((value, index) =>
    Math.abs(((found[index] ?? Number.NaN) - value) / (scale ?? value)),
  );
  return Math.max(...distances);
}

/**
 * Flows of at least a thousandth of the largest. Below, EPANET replaces the square law, which is flat at rest, by a
 * line; the pressures tell whether such a leg is right.
 */
function notFaint(flows: readonly number[], measure = flows): readonly number[] {
  const least = Math.max(...measure.map(Math.abs)) / 1000;
  return flows.filter((_, index) => Math.abs(measure[index] ?? 0) >= least);
}

describe('EPANET finds the same flows and pressures', () => {
  it('in the push-pull network of two chambers', () => {
    const topology = { chambers: 3, from: [0, 1, 1, 1, 2, 2], to: [1, 0, 2, 2, 0, 0] };
    const legs: readonly PlainLeg[] = [
      { kind: 'fan', shutOff: 40, freeDelivery: 0.03 },
      { kind: 'resistance', a: 0, b: 3e5 },
      { kind: 'resistance', a: 500, b: 1e5 },
      { kind: 'resistance', a: 0, b: 8e5 },
      { kind: 'resistance', a: 0, b: 6e4 },
      { kind: 'fan', shutOff: 30, freeDelivery: 0.025 },
    ];
    const ours = air(topology, legs);
    const theirs = water(topology, legs);
    // EPANET stops at a relative change of flow of 1e-8, its finest accuracy.
    expect(distance(ours.flows, theirs.flows)).toBeLessThan(1.3e-8);
    expect(distance(ours.pressures.slice(1), theirs.pressures.slice(1))).toBeLessThan(3.5e-8);
  });

  it('in 300 random networks of up to six chambers and twenty legs', () => {
    const random = seededRandom(1953);
    let compared = 0;
    let legs = 0;
    for (let trial = 0; trial < 20_000 && compared < NETWORKS; trial++) {
      const inner = wholeBetween(random, 1, 6);
      const plan = plainNetwork(random, inner, wholeBetween(random, inner, 2 * inner + 1));
      const ours = air(plan.topology, plan.legs);
      if (!blowsForwards(plan, ours)) continue;
      compared += 1;
      legs += plan.legs.length;
      const theirs = water(plan.topology, plan.legs);
      const largest = Math.max(...ours.flows);
      expect(distance(notFaint(ours.flows), notFaint(theirs.flows, ours.flows), largest)).toBeLessThan(1e-7);
      // Close to free delivery a pressure is the small difference of two like the shut-off pressure.
      const highest = Math.max(...plan.legs.map((leg) => (leg.kind === 'fan' ? leg.shutOff : 0)));
      expect(distance(ours.pressures, theirs.pressures, highest)).toBeLessThan(5e-8);
    }
    expect(compared).toBe(NETWORKS);
    expect(legs).toBeGreaterThan(5 * NETWORKS);
  });
});
