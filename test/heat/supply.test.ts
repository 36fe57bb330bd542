import { describe, expect, it } from 'vitest';
import { heatOfLoads, ratingNeeded, supplyAt } from '../../src/heat/supply.ts';
import { supplyTiers, tierEfficiency } from '../../src/heat/supply-tiers.ts';

describe('tiers of efficiency', () => {
  it('have the published figures where they are tested', () => {
    // Published: table of the public programme for internal supplies (technical press).
    const gold = supplyTiers['115 V'].gold;
    expect([0.2, 0.5, 1].map((load) => tierEfficiency(gold, load))).toEqual([0.87, 0.9, 0.87]);
    const best = supplyTiers['230 V redundant'].titanium;
    expect([0.1, 0.2, 0.5, 1].map((load) => tierEfficiency(best, load))).toEqual([0.9, 0.94, 0.96, 0.91]);
    expect(supplyTiers['115 V'].silver.map(({ efficiency }) => efficiency)).toEqual([0.85, 0.88, 0.85]);
  });

  it('are joined by straight lines and held beyond', () => {
    const gold = supplyTiers['115 V'].gold;
    expect(tierEfficiency(gold, 0.35)).toBeCloseTo(0.885, 12);
    expect(tierEfficiency(gold, 0.75)).toBeCloseTo(0.885, 12);
    expect([0, 0.05, 0.19].map((load) => tierEfficiency(gold, load))).toEqual([0.87, 0.87, 0.87]);
    expect(tierEfficiency(gold, 1.4)).toBe(0.87);
  });

  it('get better from tier to tier at every load and mains', () => {
    // Common sense: that is what tiers are for.
    for (const tiers of Object.values(supplyTiers)) {
      const steps = Object.values(tiers);
      for (let step = 1; step < steps.length; step++) {
        for (const load of [0.2, 0.35, 0.5, 0.8, 1]) {
          const better = tierEfficiency(steps[step] ?? [], load);
          expect(better).toBeGreaterThanOrEqual(tierEfficiency(steps[step - 1] ?? [], load));
        }
      }
    }
  });
});

describe('a supply at a wall reading', () => {
  it('of 300 W, gold at 115 V, gives 196 W of 220 W', () => {
    // Computed with Python from the published table: 195.977 W, 0.890805; by the 80 % rule it should be rated 244.971 W.
    const state = supplyAt(220, { kind: 'tier', tier: supplyTiers['115 V'].gold, rating: 300 });
    expect(state.output).toBeCloseTo(195.977, 3);
    expect(state.efficiency).toBeCloseTo(0.890805, 6);
    expect(ratingNeeded(state.output)).toBeCloseTo(244.971, 3);
    expect(tierEfficiency(supplyTiers['115 V'].gold, state.output / 300)).toBeCloseTo(state.efficiency, 9);
  });

  it.each([
    // Derived: loss and output of 220 W.
    [0.9, 198, 22],
    [0.92, 202.4, 17.6],
    [0.87, 191.4, 28.6],
  ])('of an efficiency of %d gives %d W and loses %d W', (efficiency, output, loss) => {
    const state = supplyAt(220, { kind: 'number', efficiency });
    expect(state.output).toBeCloseTo(output, 9);
    expect(state.loss).toBeCloseTo(loss, 9);
    expect(state.output + state.loss).toBeCloseTo(220, 9);
  });

  it('outside leaves the box the output only, inside all of it', () => {
    // Derived: 198 W with a brick of 90 %, 220 W with the supply in the box; what is useful leaves either way.
    const state = supplyAt(220, { kind: 'number', efficiency: 0.9 });
    expect(heatOfLoads(state, 0)).toBeCloseTo(198, 9);
    expect(heatOfLoads(state, 20)).toBeCloseTo(178, 9);
    expect(heatOfLoads(state, 0) + state.loss).toBeCloseTo(220, 9);
  });

  it('works far below and above its rating', () => {
    for (const wall of [1e-3, 5, 60, 300, 900]) {
      for (const tiers of Object.values(supplyTiers)) {
        for (const tier of Object.values(tiers)) {
          const { output, efficiency } = supplyAt(wall, { kind: 'tier', tier, rating: 300 });
          expect(output).toBeGreaterThan(0);
          expect(Math.abs(tierEfficiency(tier, output / 300) - efficiency)).toBeLessThan(1e-8);
        }
      }
    }
  });
});
