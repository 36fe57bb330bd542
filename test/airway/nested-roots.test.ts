import { describe, expect, it } from 'vitest';
import { createBalancer, newNetworkState } from '../../src/airway/balance.ts';
import { airwayOf } from './large-airway.ts';
import { nestedRoots } from './nested-roots.ts';
import type { RandomAirway } from './random-airway.ts';
import { type Random, seededRandom, wholeBetween } from './seeded-random.ts';

const SEED = 808;

/**
 * An airway of which every leg holds an element. A leg without loss has no flow at a given pressure, and one with a
 * stopped fan only has an infinite slope at rest, so that rounding of pressures passes for flow.
 */
function lossyAirway(random: Random, inner: number): RandomAirway {
  for (;;) {
    const airway = airwayOf(random, inner, wholeBetween(random, inner + 1, inner + 4));
    if (airway.legs.every(({ stages }) => stages.some(({ kind }) => kind === 'element'))) return airway;
  }
}

/** Largest distance of two lists. */
function gap(found: ArrayLike<number>, expected: readonly number[]): number {
  return Math.max(...expected.map((value, index) => Math.abs((found[index] ?? Number.NaN) - value)));
}

describe('roots within roots, without any matrix, find the same pressures and flows', () => {
  // A second method by another route: test/airway/nested-roots.ts.
  it.each([
    [1, 120],
    [2, 60],
    [3, 12],
  ])('in random airways of %i chambers', (inner, trials) => {
    const random = seededRandom(SEED + inner);
    for (let trial = 0; trial < trials; trial++) {
      const airway = lossyAirway(random, inner);
      const state = newNetworkState(airway.topology);
      expect(createBalancer(airway.topology)(airway.legs, state).status).toBe('balanced');
      const { pressures, flows } = nestedRoots(airway);
      expect(gap(state.pressures, pressures)).toBeLessThan(1e-6);
      expect(gap(state.flows, flows)).toBeLessThan(1e-8);
    }
  });
});
