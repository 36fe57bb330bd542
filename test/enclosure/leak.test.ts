import { describe, expect, it } from 'vitest';
import { elementFrom } from '../airway/element-pool.ts';
import { elementPlace, fans, fanWith, flowOf, lossOfForm, machineOf, passOf } from './hand-made.ts';

/** A gasket of 1 mm is missing round a fan frame of 120 mm. */
const gasket = elementFrom('slot', { slot: '480 x 1 mm', discharge: 0.6 });

describe('a missing gasket', () => {
  it('leaks between two chambers by their pressures', () => {
    // Derived: Q = Cd·A·√(2Δp/ρ), Cd 0.6 (from memory), dry air of 25 °C; the small linear part is below 0.1 %.
    const passed = passOf(
      machineOf({
        inner: 2,
        legs: [
          { from: 0, to: 1, through: [fans(fanWith())] },
          { from: 1, to: 2, through: [elementPlace(lossOfForm(0, 8e4))] },
          { from: 1, to: 2, through: [elementPlace(gasket)] },
          { from: 2, to: 0, through: [elementPlace(lossOfForm(0, 1e4))] },
        ],
      }),
    );
    const [, before = Number.NaN, behind = Number.NaN] = passed.state.network.pressures;
    const density = 101_325 / (287.053 * 298.15);
    const flow = flowOf(passed, 2) / density;
    expect(before - behind).toBeGreaterThan(5);
    expect(flow / (0.6 * 0.48e-3 * Math.sqrt((2 * (before - behind)) / density))).toBeCloseTo(1, 3);
  });

  it('round a fan takes from what the fan moves through the box', () => {
    // Derived: a leg from the chamber back to the room beside the fan that presses air in; Q = Cd·A·√(2Δp/ρ).
    const box = (leaks: boolean) =>
      passOf(
        machineOf({
          inner: 1,
          legs: [
            { from: 0, to: 1, through: [fans(fanWith())] },
            { from: 1, to: 0, through: [elementPlace(lossOfForm(0, 8e4))] },
            ...(leaks ? [{ from: 1, to: 0, through: [elementPlace(gasket)] }] : []),
          ],
        }),
      );
    const leaky = box(true);
    expect(flowOf(leaky, 0)).toBeCloseTo(flowOf(leaky, 1) + flowOf(leaky, 2), 9);
    expect(flowOf(leaky, 1)).toBeLessThan(0.98 * flowOf(box(false), 1));
  });
});
