import { describe, expect, it } from 'vitest';
import { channelLoss, type FinChannels } from '../../src/elements/fin-channels.ts';
import { finHeat } from '../../src/elements/fins.ts';
import { AIR_AT_25, flowAt, off } from './loss-of.ts';
import { otherRoutes } from './other-heat-routes.ts';
import { heatAt, lossAt, low, tower } from './sample-stacks.ts';

const VELOCITIES = [0.5, 1, 2, 3, 4] as const;

describe('a tower 25 mm deep by two other published routes', () => {
  // Computed with Python by an independent script: Teertstra, Yovanovich & Culham taken back to the mean difference, and
  // the VDI Heat Atlas (as in the Modelica Standard Library).
  it.each([
    [0.5, 0.131467, 0.12591],
    [1, 0.0809265, 0.0779914],
    [2, 0.0565364, 0.0548954],
    [3, 0.0473803, 0.0461709],
    [4, 0.0420678, 0.041094],
  ])('at %d m/s', (velocity, teertstra, atlas) => {
    const found = otherRoutes(tower(0.025), velocity);
    expect(off(found.teertstra, teertstra)).toBeLessThan(1e-4);
    expect(off(found.atlas, atlas)).toBeLessThan(1e-4);
  });
});

describe('towers 15 and 40 mm deep', () => {
  // Computed by finite differences, simultaneously developing laminar flow between isothermal plates; 0.5, 1, 2, 4 m/s.
  it.each([
    [0.015, [0.14664, 0.101738, 0.076236, 0.0578423], 0.042],
    [0.04, [0.11872, 0.0666771, 0.0437788, 0.0320921], 0.015],
  ] as const)('%d m deep are near a finite-difference solution', (depth, solved, within) => {
    ([0.5, 1, 2, 4] as const).forEach((velocity, index) => {
      expect(off(heatAt(tower(depth), velocity).resistance, solved[index] ?? 0)).toBeLessThan(within);
    });
  });
});

describe('pitches', () => {
  // Computed with Python: whole channels that fill 120 mm nearly, 2 m/s before 120 x 120 mm. Here the face is as high as
  // the channels, which moves entry and exit a little.
  it.each([
    [0.0018, 67, 0.0496343, 10.9727],
    [0.0022, 55, 0.063856, 7.18066],
  ])('of %d m, %d channels', (pitch, channels, resistance, loss) => {
    const face = { width: 0.12, height: channels * pitch };
    const stack = { ...tower(0.025, pitch), face };
    const velocity = (2 * 0.12) / face.height;
    expect(off(heatAt(stack, velocity).resistance, resistance)).toBeLessThan(1e-4);
    expect(off(lossAt(stack, velocity), loss)).toBeLessThan(0.005);
  });
});

describe('curves fitted to stacks', () => {
  // Computed with Python (least squares, 0.5 to 4 m/s): R = R∞ + c·U^−m, a·U + d·U² and B·U^n, each with its largest miss.
  it.each([
    [
      'tower 15',
      tower(0.015),
      [0.0364975, 0.0665228, 0.718228, 0.016],
      [1.84808, 0.63847, 0.034],
      [2.53914, 1.3566],
    ],
    [
      'tower 25',
      tower(0.025),
      [0.0320599, 0.0475634, 0.978818, 0.018],
      [2.91004, 0.722582, 0.023],
      [3.69502, 1.2885],
    ],
    [
      'tower 40',
      tower(0.04),
      [0.0239952, 0.0429996, 1.13552, 0.015],
      [4.50877, 0.79541, 0.014],
      [5.37622, 1.22615],
    ],
    ['low', low, [0.186096, 0.388765, 1.16316, 0.012], [6.65905, 1.14803, 0.013], [7.91193, 1.22218]],
  ] as const)(
    '%s',
    (_, stack, [rest, factor, exponent, miss], [linear, square, lossMiss], [scale, power]) => {
      for (const velocity of VELOCITIES) {
        const { resistance } = heatAt(stack, velocity);
        expect(off(rest + factor * velocity ** -exponent, resistance)).toBeLessThan(miss);
        const loss = lossAt(stack, velocity);
        expect(off(linear * velocity + square * velocity ** 2, loss)).toBeLessThan(lossMiss);
        expect(off(scale * velocity ** power, loss)).toBeLessThan(0.056);
      }
    },
  );

  it('are no square law', () => {
    // Computed with Python: the loss at 1 m/s is 0.238 of that at 3 m/s; a square law has 0.111.
    expect(lossAt(tower(0.025), 1) / lossAt(tower(0.025), 3)).toBeCloseTo(0.238, 3);
  });
});

describe('a low stack with a gap above it in one duct', () => {
  const { density, viscosity } = AIR_AT_25;
  const total = 3.2e-3;

  /** Pressure over stack and gap, which is the same for both. */
  function pressureAt(gap: number): number {
    const face = 0.08 * (0.02 + gap);
    const loss = (channels: FinChannels, flow: number) => {
      const { inertial, law } = channelLoss(channels);
      return inertial * density * flow * Math.abs(flow) + law.loss(flow, density, viscosity);
    };
    const stack: FinChannels = { ...finHeat(low).channels, face };
    const beside: FinChannels = { count: 1, gap, height: 0.08, depth: 0.1, face };
    const share = flowAt((part) => loss(stack, part * total) - loss(beside, (1 - part) * total), 0);
    return loss(stack, share * total);
  }

  it('loses what two streams at one pressure lose', () => {
    // Computed with Python: gap over fin height, 3.2e-3 m³/s in all. The narrowest gap raises the loss by a hair, since
    // the face it adds to widens the fins' own exit.
    const losses = [
      [0.025, 18.0492],
      [0.05, 17.7474],
      [0.1, 16.0739],
      [0.25, 10.7216],
      [0.5, 5.36229],
      [1, 1.60477],
    ] as const;
    for (const [relative, loss] of losses) expect(off(pressureAt(relative * 0.02), loss)).toBeLessThan(0.01);
    expect(off(lossAt(low, 2), 18.0297)).toBeLessThan(1e-3);
  });
});
