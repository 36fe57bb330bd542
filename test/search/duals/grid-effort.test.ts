import { describe, expect, it } from 'vitest';
import { type Effort, effortOf, newEffort, placedBank } from '../../../src/search/bank-effort.ts';
import { PRICES } from '../../../src/search/duals/effort-dual.ts';
import { flowAt, NO_FLOW, stepBelow, stepsFor } from '../../../src/search/duals/flow-grid.ts';
import { effortOnGrid } from '../../../src/search/duals/grid-effort.ts';
import { dualsOf } from '../../../src/search/leg-cost.ts';
import { createSharedDuals } from '../../../src/search/shared-duals.ts';
import { SOUND_ASSUMPTIONS } from '../../../src/sound/sound-assumptions.ts';
import { type Random, seeded } from '../random.ts';
import { randomFan } from '../random-fan.ts';

function placed(random: Random) {
  const bank = { fan: randomFan(random, 'invented'), count: random.whole(1, 3) };
  return placedBank(bank, random.between(0, 6), random.spread(0.5, 2), SOUND_ASSUMPTIONS);
}

/** Greatest difference of two lists, as a share of the greatest entry. */
function apart(one: Float64Array, other: Float64Array, length: number): number {
  let most = 0;
  let scale = 1e-12;
  for (let index = 0; index < length; index++) {
    scale = Math.max(scale, Math.abs(other[index] as number));
    most = Math.max(most, Math.abs((one[index] as number) - (other[index] as number)));
  }
  return most / scale;
}

function expectAlike(one: Effort, other: Effort): void {
  expect(one.length).toBe(other.length);
  expect(apart(one.rises, other.rises, one.length)).toBeLessThan(1e-9);
  expect(apart(one.energies, other.energies, one.length)).toBeLessThan(1e-9);
}

describe('the grid of flows', () => {
  it('rounds down, by less than its span', () => {
    for (const span of [1, 3]) {
      for (const flow of [2e-7, 1e-4, 0.0123, 0.5]) {
        const step = stepBelow(flow, span);
        expect(flowAt(step)).toBeLessThanOrEqual(flow);
        expect(flowAt(step + span)).toBeGreaterThan(flow);
      }
    }
    expect(flowAt(stepBelow(0, 1))).toBe(0);
  });

  it('counts enough steps for a factor', () => {
    expect(stepsFor(1)).toBeCloseTo(0, 12);
    expect(flowAt(stepsFor(1.5)) / flowAt(0)).toBeGreaterThanOrEqual(1.5);
    expect(stepsFor(Number.POSITIVE_INFINITY)).toBe(Number.POSITIVE_INFINITY);
  });
});

// Reference: the same bank asked at each speed by itself, without tables. Derived: by the fan laws pressure goes with the
// square of the speed at a flow that goes with the speed (ISO 13349 / AMCA 201, from memory).
describe('the effort of a bank from tables', () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8])(
    'is that of the bank at each speed, whatever has been read before, seed %i',
    (seed) => {
      const random = seeded(seed);
      const own = placed(random);
      const free = own.bank.count * own.bank.fan.curve.freeDelivery;
      for (let ask = 0; ask < 40; ask++) {
        const low = stepBelow(random.spread(0.001, 8) * free, random.pick([1, 3]));
        const top = low + random.whole(0, 60);
        const density = random.between(0.9, 1.25);
        const plain = effortOf(own, flowAt(low) * density, flowAt(top) * density, density, newEffort());
        expectAlike(effortOnGrid(own, { low, top, thin: density, dense: density }, newEffort()), plain);
      }
    },
  );

  it('knows what no flow and any flow mean', () => {
    const own = placed(seeded(3));
    const plain = effortOf(own, 0, Number.POSITIVE_INFINITY, 1.2, newEffort());
    const air = { low: NO_FLOW, top: Number.POSITIVE_INFINITY, thin: 1.2, dense: 1.2 };
    expectAlike(effortOnGrid(own, air, newEffort()), plain);
  });
});

describe('duals of a group from tables', () => {
  // Reference: duals of the bank itself at the flow and the density asked for.
  it.each([11, 12, 13, 14, 15, 16])(
    'never promise more than those of its banks, and little less, seed %i',
    (seed) => {
      const random = seeded(seed);
      const own = placed(random);
      const tree = [{ options: [0], parts: [0], mayBeEmpty: false, oneRow: true }];
      const shared = createSharedDuals(tree, [{ placed: own, derating: 0.9 }]);
      const free = own.bank.count * own.bank.fan.curve.freeDelivery;
      for (let ask = 0; ask < 40; ask++) {
        const density = random.between(0.95, 1.25);
        const flow = random.spread(0.05, 0.9) * free * density;
        const group = shared(-1, { from: flow, reach: 1, density, behind: false });
        const bank = {
          placed: own,
          derating: 0.9,
          closeness: { stage: 0, walls: 0, before: [], behind: [] },
        };
        const demand = { flow, densities: [density] } as unknown as Parameters<typeof dualsOf>[2];
        const needs = { stretches: [{ from: 1, to: 1 }], rises: Float64Array.of(0) };
        const sides = { before: 0, behind: 0 };
        const exact = dualsOf(bank, { derating: 1, sides }, demand, needs);
        const values = exact.stretches[0] as Float64Array;
        for (let price = 0; price < PRICES.length; price++) {
          const truth = values[price] as number;
          expect(group.values[price]).toBeLessThanOrEqual(truth + 1e-9 * Math.abs(truth) + 1e-12);
        }
        expect(group.most).toBeGreaterThanOrEqual(exact.most[0] as number);
        // 1 % of flow and density is worth some 3 % of shut-off pressure at most.
        const spare = 0.05 * own.bank.fan.curve.shutOff;
        expect(group.most - (exact.most[0] as number)).toBeLessThan(spare);
      }
    },
  );
});
