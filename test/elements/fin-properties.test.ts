import { describe, expect, it } from 'vitest';
import { channelLoss, type FinChannels } from '../../src/elements/fin-channels.ts';
import { finState } from '../../src/elements/fin-heat.ts';
import { finHeat, type Low, type Tower } from '../../src/elements/fins.ts';
import { AIR_AT_25, flowAt, off } from './loss-of.ts';
import { flowInto, low, tower } from './sample-stacks.ts';

const { density, viscosity } = AIR_AT_25;

/** Share of a flow [m³/s] that passes the low stack when a gap [m] lies above it in the same duct [-]. */
function shareThroughFins(gap: number, total: number): number {
  if (gap === 0) return 1;
  const face = 0.08 * (0.02 + gap);
  const stack: FinChannels = { ...finHeat(low).channels, face };
  const bypass: FinChannels = { count: 1, gap, height: 0.08, depth: 0.1, face };
  const pressure = (channels: FinChannels, flow: number) => {
    const { inertial, law } = channelLoss(channels);
    return inertial * density * flow * Math.abs(flow) + law.loss(flow, density, viscosity);
  };
  return flowAt((share) => pressure(stack, share * total) - pressure(bypass, (1 - share) * total), 0);
}

function resistanceWithGap(gap: number, total: number): number {
  return finState(finHeat(low), shareThroughFins(gap, total) * total, AIR_AT_25).resistance;
}

describe('a gap beside the fins', () => {
  it('raises the resistance as the flow it draws off', () => {
    // Computed with Python by an independent script: low stack, 3.2e-3 m³/s in all, gap over fin height.
    const ratios = { 0.05: 1.011, 0.1: 1.061, 0.25: 1.321, 0.5: 2.136, 1: 6.244 };
    for (const [relative, ratio] of Object.entries(ratios)) {
      const found = resistanceWithGap(Number(relative) * 0.02, 3.2e-3) / resistanceWithGap(0, 3.2e-3);
      expect(off(found, ratio)).toBeLessThan(0.01);
    }
  });

  it('never cools: sealing it never raises the resistance at the same total flow', () => {
    // Physics: all of the flow passes the fins then.
    for (const total of [3e-4, 1e-3, 4e-3, 1e-2]) {
      let before = resistanceWithGap(0.02, total);
      for (const gap of [0.01, 0.004, 0.002, 0.001, 5e-4, 0]) {
        const here = resistanceWithGap(gap, total);
        expect(here).toBeLessThanOrEqual(before * (1 + 1e-9));
        before = here;
      }
    }
  });
});

describe('stacks side by side and behind each other', () => {
  const stacks: readonly (Tower | Low)[] = [tower(0.025), tower(0.04), low];

  it('n of them with n times the flow resist an nth', () => {
    // Symmetry; towers may have any number of channels.
    for (const count of [2, 3, 7]) {
      const one = tower(0.025);
      const many = { ...one, face: { width: 0.12, height: count * 0.12 } };
      for (const velocity of [0.3, 1, 4]) {
        const single = finState(finHeat(one), flowInto(one, velocity), AIR_AT_25).resistance;
        const all = finState(finHeat(many), flowInto(many, velocity), AIR_AT_25).resistance;
        expect(off(all, single / count)).toBeLessThan(1e-12);
      }
    }
  });

  it('cut in two along the stream, at the same heat transfer, they are the whole', () => {
    // Derived: each half with half of the transfer units on one base, the second in the air the first has warmed.
    for (const stack of stacks) {
      for (const velocity of [0.3, 1, 4]) {
        const flow = flowInto(stack, velocity);
        const { transferUnits, resistance } = finState(finHeat(stack), flow, AIR_AT_25);
        const capacity = density * flow * 1006;
        const half = 1 - Math.exp(-transferUnits / 2);
        const first = half * capacity;
        const second = half * capacity * (1 - first / capacity);
        expect(off(resistance, 1 / (first + second))).toBeLessThan(1e-9);
      }
    }
  });
});
