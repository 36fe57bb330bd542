import { describe, expect, it } from 'vitest';
import { createBalancer } from '../../src/airway/balance.ts';
import type { Topology } from '../../src/airway/topology.ts';
import { curveFromBox } from '../../src/fan/box-figures.ts';
import { inSeries, lawOf, parabolicFan, resistance } from './leg-laws.ts';
import { imbalance, randomStart } from './random-airway.ts';
import { seededRandom } from './seeded-random.ts';
import { bank, distance, legOf, passive, solve } from './solved-network.ts';

const SEED = 4711;

/** Two chambers, each with a fan to the room, joined by a core and a bypass, one with a leak, one with a grille. */
const pushPull: Topology = { chambers: 3, from: [0, 1, 1, 1, 2, 2], to: [1, 0, 2, 2, 0, 0] };
const pushPullLaws = [
  parabolicFan(40, 0.03),
  resistance(0, 3e5),
  resistance(500, 1e5),
  resistance(0, 8e5),
  resistance(0, 6e4),
  parabolicFan(30, 0.025),
];
// Computed with SciPy 1.17.1 (optimize.root) and mpmath 1.3 (findroot, 25 digits) on the chamber pressures.
const pushPullPressures = [15.5307232532, -3.2362259471];
const pushPullFlows = [
  0.02346398787086, 0.00719507314143, 0.01142549790861, 0.00484341682083, -0.00734418811838, 0.02361310284783,
];

describe('a push-pull network of two chambers', () => {
  it('has the pressures and flows an independent solver finds', () => {
    const { report, pressures, flows } = solve(pushPull, pushPullLaws);
    expect(report.status).toBe('balanced');
    expect(pressures[0]).toBe(0);
    expect(distance(pressures.slice(1), pushPullPressures)).toBeLessThan(1e-8);
    expect(distance(flows, pushPullFlows)).toBeLessThan(1e-8);
  });

  it('has them also with elements and fan curves in the legs', () => {
    const laws = [
      legOf([bank(curveFromBox(0.03, 40, 0))]),
      legOf([passive(0, 3e5)]),
      legOf([passive(200, 4e4), passive(300, 6e4)]),
      legOf([passive(0, 8e5)]),
      legOf([passive(0, 6e4)]),
      legOf([bank(curveFromBox(0.025, 30, 0))]),
    ];
    const { report, pressures, flows } = solve(pushPull, laws);
    expect(report.status).toBe('balanced');
    expect(distance(pressures.slice(1), pushPullPressures)).toBeLessThan(1e-8);
    expect(distance(flows, pushPullFlows)).toBeLessThan(1e-8);
  });

  it('draws air in through the exhaust grille and loses none', () => {
    // The sign is what matters: the stronger fan pulls the second chamber below the room.
    const { flows, state } = solve(pushPull, pushPullLaws);
    expect(flows[4]).toBeLessThan(0);
    // Conservation of mass.
    expect(imbalance(pushPull, state.flows)).toBeLessThan(1e-12);
  });

  it('has one solution from 200 random starts', () => {
    // Theory: strictly increasing laws have one solution (content; Millar 1951, from memory).
    const random = seededRandom(SEED);
    const balance = createBalancer(pushPull);
    for (let trial = 0; trial < 200; trial++) {
      const state = randomStart(random, pushPull);
      expect(balance(pushPullLaws, state).status).toBe('balanced');
      expect(Math.abs((state.pressures[1] ?? 0) - 15.5307232532)).toBeLessThan(1e-9);
      expect(Math.abs((state.pressures[2] ?? 0) + 3.2362259471)).toBeLessThan(1e-9);
    }
  });

  it('is solved from its own solution in one or two steps', () => {
    // Property of Newton's method.
    const { state } = solve(pushPull, pushPullLaws);
    expect(solve(pushPull, pushPullLaws, state).report.steps).toBeLessThanOrEqual(2);
  });
});

describe('what cannot be solved', () => {
  it.each([
    ['a chamber without any leg', { chambers: 3, from: [0, 1], to: [1, 0] }],
    ['two chambers joined only to each other', { chambers: 4, from: [0, 1, 2, 3], to: [1, 0, 3, 2] }],
    [
      'three chambers joined only to each other',
      { chambers: 5, from: [0, 1, 2, 3, 4, 2], to: [1, 0, 3, 4, 2, 4] },
    ],
    ['a chamber joined only to itself', { chambers: 3, from: [0, 1, 2], to: [1, 0, 2] }],
  ])('%s has no answer', (_, topology) => {
    // Theory: pressures that hang on nothing are undetermined.
    const laws = topology.from.map((_, leg) => (leg === 0 ? parabolicFan(40, 0.03) : resistance(100, 1e5)));
    expect(solve(topology, laws).report.status).toBe('singular');
  });

  it('a law that gives no number is told', () => {
    const topology = { chambers: 2, from: [0, 1], to: [1, 0] };
    const broken = lawOf(
      () => Number.NaN,
      () => 1,
    );
    const { report } = solve(topology, [broken, resistance(100, 1e5)]);
    expect(['not a number', 'singular']).toContain(report.status);
  });

  it('a law that gives no number in a leg that goes round in one chamber is told too', () => {
    const topology = { chambers: 2, from: [1, 0, 1], to: [1, 1, 0] };
    const broken = lawOf(
      () => Number.NaN,
      () => 1,
    );
    const { report } = solve(topology, [broken, parabolicFan(40, 0.03), resistance(100, 1e5)]);
    expect(report.status).toBe('not a number');
  });

  it('a single leg from the room to the room needs no chamber', () => {
    // Derived: as one fan on its loss.
    const topology = { chambers: 1, from: [0], to: [0] };
    const { report, flows } = solve(topology, [inSeries(parabolicFan(40, 0.03), resistance(0, 5e4))]);
    expect(report.status).toBe('balanced');
    expect(flows[0]).toBeCloseTo(Math.sqrt(40 / (5e4 + 40 / 0.03 ** 2)), 11);
  });
});
