import { describe, expect, it } from 'vitest';
import { finNusselt, finState, laminarNusselt, oneSidedNusselt } from '../../src/elements/fin-heat.ts';
import { finHeat, fins } from '../../src/elements/fins.ts';
import { AIR_AT_25, off } from './loss-of.ts';

/**
 * Nusselt number far down a slot of parallel flow, one plate warm and the other insulated, on twice the gap: the least
 * λ² of d²T/dy² + λ²·u·T = 0, T(0) = 0, T′(1) = 0, found by shooting with Runge-Kutta and halving; Nu is λ²/2·2 of the
 * mixed mean. Derived: separation of variables; the flow is the developed parabola.
 */
function oneSidedLimit(): number {
  const steps = 2000;
  const slopeAtWall = (square: number): number => {
    const h = 1 / steps;
    const bend = (y: number, t: number) => -square * 6 * y * (1 - y) * t;
    let t = 0;
    let slope = 1;
    for (let step = 0; step < steps; step++) {
      const y = step * h;
      const [k1, l1] = [slope, bend(y, t)];
      const [k2, l2] = [slope + (h / 2) * l1, bend(y + h / 2, t + (h / 2) * k1)];
      const [k3, l3] = [slope + (h / 2) * l2, bend(y + h / 2, t + (h / 2) * k2)];
      const [k4, l4] = [slope + h * l3, bend(y + h, t + h * k3)];
      t += (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
      slope += (h / 6) * (l1 + 2 * l2 + 2 * l3 + l4);
    }
    return slope;
  };
  let [low, high] = [0.1, 6];
  for (let round = 0; round < 60; round++) {
    const middle = (low + high) / 2;
    if (slopeAtWall(middle) > 0) low = middle;
    else high = middle;
  }
  // The mean excess decays as exp(−λ²·x/(b²·u/α)); its balance with the wall gives h·b/k = λ², and Nu on 2b is twice that.
  return 2 * low;
}

describe('laminar heat transfer from one of two plates', () => {
  it('ends at the value of developed flow', () => {
    // Computed here; published: 4.861 (VDI Heat Atlas, section Gb).
    expect(off(oneSidedLimit(), 4.861)).toBeLessThan(1e-3);
    expect(off(oneSidedNusselt(1e6, 0.71), oneSidedLimit())).toBeLessThan(2e-3);
  });

  it('near the entry is that of a flat plate, whatever the other one does', () => {
    // From memory: mean of Blasius' plate, 0.664·Re^½·Pr^⅓; the composite is an interpolation for air, hence 8 %.
    const [reynolds, prandtl, relativeDepth] = [2000, 0.71, 0.01];
    const plate = (0.664 * Math.sqrt(reynolds * relativeDepth) * Math.cbrt(prandtl)) / relativeDepth;
    const distance = relativeDepth / (reynolds * prandtl);
    expect(off(oneSidedNusselt(distance, prandtl), plate)).toBeLessThan(0.08);
    expect(oneSidedNusselt(distance, prandtl)).toBeGreaterThan(0.95 * laminarNusselt(distance, prandtl));
  });

  it('is less than between two warm plates where the flow is developed', () => {
    for (const distance of [0.03, 0.1, 1, 10]) {
      expect(oneSidedNusselt(distance, 0.71)).toBeLessThan(laminarNusselt(distance, 0.71));
    }
  });
});

describe('a flat base without fins', () => {
  const flat = { fins: 'flat' as const, face: { width: 0.08, height: 0.01 }, depth: 0.1 };
  const element = fins.make({ fins: 'flat', face: '80 x 10 mm', depth: '100 mm' });
  const state = (velocity: number) => finState(finHeat(flat), velocity * 8e-4, AIR_AT_25);

  it('gives its heat off on one side', () => {
    // Derived: 1/((1 − exp(−h·A/C))·C) with the area of the base alone.
    const { heatTransfer, resistance, efficiency } = state(1);
    const capacity = AIR_AT_25.density * 8e-4 * 1006;
    const expected = 1 / ((1 - Math.exp((-heatTransfer * 0.008) / capacity)) * capacity);
    expect(off(resistance, expected)).toBeLessThan(1e-12);
    expect(efficiency).toBe(1);
    expect(element.finResistance?.(8e-4, AIR_AT_25)).toBe(resistance);
  });

  it('resists some ten times as much as a low stack of fins on the same base', () => {
    // Plausibility: 26 channels of 20 mm height against one side.
    const low = fins.make({ fins: 'low', face: '80 x 20 mm', depth: '100 mm', count: 27, fin: '0.8 mm' });
    const ratio =
      (element.finResistance?.(1.6e-3, AIR_AT_25) ?? 0) / (low.finResistance?.(1.6e-3, AIR_AT_25) ?? 1);
    expect(ratio).toBeGreaterThan(4);
    expect(ratio).toBeLessThan(20);
  });

  it('cools better the faster the air, and never beats its heat balance', () => {
    for (let velocity = 0.01; velocity < 20; velocity *= 1.1) {
      const { resistance } = state(velocity);
      expect(state(1.1 * velocity).resistance).toBeLessThan(resistance);
      expect(resistance).toBeGreaterThanOrEqual(1 / (AIR_AT_25.density * velocity * 8e-4 * 1006));
    }
  });

  it('loses pressure as a duct of its section, without entry and exit', () => {
    expect(element.inertial).toBe(0);
    expect(off(element.freeArea ?? 0, 8e-4)).toBeLessThan(1e-12);
    expect(element.remarks).toEqual([]);
  });

  it('knows turbulent flow like any other channel', () => {
    const beyond = finNusselt(5000, 0.71, 5, oneSidedNusselt);
    expect(off(beyond, finNusselt(5000, 0.71, 5))).toBeLessThan(1e-12);
  });
});
