import { describe, expect, it } from 'vitest';
import { channelFriction } from '../../src/elements/channel-friction.ts';
import {
  channelArea,
  channelLoss,
  entryAndExitLoss,
  type FinChannels,
} from '../../src/elements/fin-channels.ts';
import { finHeat, fins } from '../../src/elements/fins.ts';
import { entranceGrowth, rectangularFriction } from '../../src/elements/laminar-friction.ts';
import { AIR_AT_25, flowAt, lossOf, off } from './loss-of.ts';
import { asWritten, lossAt, low, tower } from './sample-stacks.ts';

const { density, viscosity } = AIR_AT_25;

describe('friction in developing laminar flow', () => {
  it('has the Fanning value of the composite', () => {
    // Published: Muzychka & Yovanovich, √[(3.44/√L⁺)² + fRe²] at L⁺ 0.0311228, fRe 23.5745: 30.5939.
    const relativeLength = 0.0311228 * 254.368;
    const { value } = channelFriction(entranceGrowth(relativeLength), 4 * 23.5745);
    expect(off(value(254.368) / 4, 30.5939)).toBeLessThan(1e-4);
  });

  it('gives way to Blasius where that is larger', () => {
    // From memory: Blasius (1913), f = 0.3164·Re^-1/4; in a long channel between plates it overtakes at Re 2039.
    const long = channelFriction(0, 96);
    expect(long.value(1500)).toBe(96);
    expect(off(long.value(5000), 0.3164 * 5000 ** 0.75)).toBeLessThan(1e-12);
    const seam = (96 / 0.3164) ** (4 / 3);
    expect(off(long.value(seam), 96)).toBeLessThan(0.04);
    expect(long.value(seam)).toBeGreaterThanOrEqual(96);
  });
});

describe('the loss of fin stacks', () => {
  it('of towers and a low stack is as computed', () => {
    // Computed with Python from the same published formulas, at 0.5, 1, 2 and 4 m/s.
    const cases = [
      { stack: tower(0.025), losses: [1.60103, 3.63745, 8.81365, 22.824] },
      { stack: tower(0.015), losses: [1.0491, 2.49743, 6.35865, 17.1982] },
      { stack: tower(0.04), losses: [2.42119, 5.30406, 12.2902, 30.4364] },
      { stack: low, losses: [3.57443, 7.80632, 18.0297, 44.5766] },
    ];
    for (const { stack, losses } of cases) {
      [0.5, 1, 2, 4].forEach((velocity, index) => {
        expect(off(lossAt(stack, velocity), losses[index] ?? 0)).toBeLessThan(1e-3);
      });
    }
  });

  it('has the friction of a finite-difference solution', () => {
    // Computed by finite differences between wide plates: 25 mm at 0.5, 1, 2, 3, 4 m/s; side walls add some 2 %.
    const solved = [1.5006, 3.3112, 7.8457, 13.487, 20.061];
    const { law } = channelLoss(finHeat(tower(0.025)).channels);
    [0.5, 1, 2, 3, 4].forEach((velocity, index) => {
      const friction = law.loss(velocity * 0.12 ** 2, density, viscosity);
      expect(off(friction, solved[index] ?? 0)).toBeLessThan(0.075);
      expect(friction).toBeGreaterThan(solved[index] ?? 0);
    });
  });

  it('becomes linear as the flow fades', () => {
    const element = fins.make(asWritten(low));
    expect(off(lossOf(element, 2e-9) / lossOf(element, 1e-9), 2)).toBeLessThan(1e-5);
  });

  it('is near a quadratic and its fitted sink', () => {
    // Derived: least squares of the values above, 0.5 to 4 m/s: 2.91004·U + 0.722582·U².
    for (const velocity of [0.5, 1, 2, 3, 4]) {
      const fitted = 2.91004 * velocity + 0.722582 * velocity ** 2;
      expect(off(lossAt(tower(0.025), velocity), fitted)).toBeLessThan(0.023);
    }
  });
});

describe('copying errors in circulation', () => {
  const { channels } = finHeat(low);
  const share = channelArea(channels) / channels.face;
  const velocity = 2 / share;
  const head = (density * velocity ** 2) / 2;
  const diameter = (2 * channels.gap * channels.height) / (channels.gap + channels.height);
  const developed = rectangularFriction(channels.gap / channels.height) / 4;

  /** Loss of the low stack at 2 m/s as the formula has it, with parts that may be replaced by mistakes. */
  function written(mistake: {
    diameter?: number;
    ends?: number;
    factor?: number;
    velocity?: number;
  }): number {
    const size = mistake.diameter ?? diameter;
    const speed = mistake.velocity ?? velocity;
    const reynolds = (density * speed * size) / viscosity;
    const entrance = 3.44 / Math.sqrt(channels.depth / size / reynolds);
    const friction = Math.hypot(entrance, developed) / reynolds;
    const ends = mistake.ends ?? 0.42 * (1 - share) + (1 - share) ** 2;
    return (
      ((head * speed ** 2) / velocity ** 2) *
      (ends + (mistake.factor ?? 4) * friction * (channels.depth / size))
    );
  }

  it('are told apart from the right loss', () => {
    const right = lossAt(low, 2);
    expect(off(written({}), right)).toBeLessThan(1e-9);
    expect(off(written({ diameter: 2 * channels.gap }), 15.4369)).toBeLessThan(1e-3);
    const mistakes = [
      { diameter: 2 * channels.gap },
      { ends: 0.42 * (1 - share ** 2) + (1 - share ** 2) ** 2 },
      { factor: 1 },
      { velocity: 2 / (1 - share) },
    ];
    for (const mistake of mistakes) expect(off(written(mistake), right)).toBeGreaterThan(0.02);
  });

  it('do not touch entry and exit, whose ratio is one of areas', () => {
    // Derived: σ 0.5: 0.21 + 0.25; with σ squared 0.315 + 0.5625.
    expect(entryAndExitLoss(0.5)).toBeCloseTo(0.46, 12);
    expect(entryAndExitLoss(1)).toBe(0);
  });
});

describe('a stack with a gap beside it', () => {
  it('keeps the share of the flow that equal pressure leaves it', () => {
    // Computed with Python: low stack, gap above the fins of c/H, 3.2e-3 m³/s in all; published: below 5 % of the
    // fin height a gap hardly matters (bypass experiments of 2014, abstract).
    const shares = {
      0.025: 0.99746,
      0.05: 0.980928,
      0.1: 0.900892,
      0.25: 0.63932,
      0.5: 0.350629,
      1: 0.116232,
    };
    for (const [relative, share] of Object.entries(shares)) {
      expect(off(shareThroughFins(Number(relative) * 0.02), share)).toBeLessThan(0.01);
    }
  });
});

/** Share of 3.2e-3 m³/s that passes the low stack when a gap of this height lies above it in the same duct [-]. */
function shareThroughFins(gap: number): number {
  const face = 0.08 * (0.02 + gap);
  const stack: FinChannels = { ...finHeat(low).channels, face };
  const bypass: FinChannels = { count: 1, gap, height: 0.08, depth: 0.1, face };
  const total = 3.2e-3;
  const pressure = (channels: FinChannels, flow: number) => {
    const { inertial, law } = channelLoss(channels);
    return inertial * density * flow * Math.abs(flow) + law.loss(flow, density, viscosity);
  };
  return flowAt((share) => pressure(stack, share * total) - pressure(bypass, (1 - share) * total), 0);
}
