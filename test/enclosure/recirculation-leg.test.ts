import { describe, expect, it } from 'vitest';
import { elementPlace, fans, fanWith, flowOf, lossOfForm, machineOf, passOf, ZERO } from './hand-made.ts';

const ROOM = 25 + ZERO;
const CP = 1006;

/**
 * Fans draw from an intake chamber through the heat into an exhaust chamber, of which some air returns to the intake
 * through a leg of its own.
 */
function withLeg(back: number) {
  return passOf(
    machineOf({
      inner: 2,
      legs: [
        { from: 0, to: 1, through: [elementPlace(lossOfForm(0, 5e4))] },
        { from: 1, to: 2, through: [fans(fanWith())] },
        { from: 2, to: 0, through: [elementPlace(lossOfForm(0, 2e4))] },
        { from: 2, to: 1, through: [elementPlace(lossOfForm(0, back))] },
      ],
      parts: [{ power: 120, in: 2 }],
    }),
  );
}

/** The same heat in one chamber that draws in a share of its own exhaust; the loss sets the flow. */
function withShare(recirculation: number, loss: number) {
  return passOf(
    machineOf({
      inner: 1,
      legs: [
        { from: 0, to: 1, through: [elementPlace(lossOfForm(0, loss)), fans(fanWith())], recirculation },
        { from: 1, to: 0, through: [] },
      ],
      parts: [{ power: 120, in: 1 }],
    }),
  );
}

describe('a leg that brings exhaust back to the intake', () => {
  it.each([2e5, 5e5, 2e6])('warms the inlet by f/(1 − f) of the rise, return loss %d', (back) => {
    // Derived: mixing at the intake; f is the returned share of what the fans draw. Definition of the share as in the
    // Open DCME model (published).
    const passed = withLeg(back);
    const through = flowOf(passed, 1);
    const share = flowOf(passed, 3) / through;
    expect(share).toBeGreaterThan(0.05);
    expect(share).toBeLessThan(0.6);
    const rise = 120 / (CP * through);
    const [, intake = Number.NaN, exhaust = Number.NaN] = passed.state.chambers;
    expect((intake - ROOM) / ((share / (1 - share)) * rise)).toBeCloseTo(1, 5);
    expect((exhaust - ROOM) / (rise / (1 - share))).toBeCloseTo(1, 5);
  });

  it('does what a share of recirculation does at the same flow', () => {
    // Another route: the share as a number, the loss chosen so that the fans draw as much.
    const leg = withLeg(5e5);
    const through = flowOf(leg, 1);
    const share = flowOf(leg, 3) / through;
    let loss = 5e4;
    let found = withShare(share, loss);
    // Square laws: the loss that brings the flow there, in a few steps.
    for (let step = 0; step < 60; step++) {
      loss *= (flowOf(found, 0) / through) ** 2;
      found = withShare(share, loss);
    }
    expect(flowOf(found, 0) / through).toBeCloseTo(1, 6);
    const [, exhaust = Number.NaN] = found.state.chambers;
    const inlet = found.state.stages[0]?.[0] ?? Number.NaN;
    expect(exhaust).toBeCloseTo(leg.state.chambers[2] ?? Number.NaN, 4);
    expect(inlet).toBeCloseTo(leg.state.chambers[1] ?? Number.NaN, 4);
  });
});
