import { describe, expect, it } from 'vitest';
import { elementFrom } from '../airway/element-pool.ts';
import { dressed, outcomeOf, sumOf } from './dressed.ts';
import { type Drawing, elementPlace, fans, fanWith, lossOfForm, ZERO } from './hand-made.ts';
import { STACK } from './plain-box.ts';

const SHARE = 0.3;
const ROOM = 25 + ZERO;

/** Density of dry air at sea level. Source: ideal gas, R = 287.053 J/(kg·K), US Standard Atmosphere 1976. */
const density = (kelvin: number) => 101_325 / (287.053 * kelvin);

describe('air that is drawn in again through an opening without places', () => {
  const drawing: Drawing = {
    inner: 1,
    legs: [
      { from: 0, to: 1, through: [], recirculation: SHARE },
      { from: 1, to: 0, through: [fans(fanWith({ power: 2 })), elementPlace(lossOfForm(0, 5e4))] },
    ],
    parts: [{ power: 150, in: 1 }],
  };

  it('enters as warm as it is', () => {
    // Derived: (1 − f) room air and f exhaust; the volume follows the density of the mixture.
    const outcome = outcomeOf(dressed(drawing, {}));
    const [inlet] = outcome.legs;
    const entering = ROOM + SHARE * (outcome.exhaustTemperature - ROOM);
    expect(entering).toBeGreaterThan(ROOM + 2);
    expect((inlet?.flow ?? Number.NaN) / ((inlet?.massFlow ?? Number.NaN) / density(entering))).toBeCloseTo(
      1,
      6,
    );
  });

  it('brings its heat back into the budget', () => {
    // Conservation of energy: only what leaves less what comes back is carried out.
    const { heat, heatCarried, throughFlow, exhaustTemperature } = outcomeOf(dressed(drawing, {}));
    expect(heatCarried / sumOf(heat)).toBeCloseTo(1, 9);
    const fresh = (1 - SHARE) * throughFlow * 1006;
    expect((exhaustTemperature - ROOM) * fresh).toBeCloseTo(sumOf(heat), 4);
  });
});

describe('air that hardly moves', () => {
  /** A box with a pocket that one leg leads to, drawn either way; a part on fins in that leg, one in the pocket. */
  function pocket(inward: boolean) {
    const stack = elementPlace(elementFrom('fins', STACK), 'stack');
    const [from, to] = inward ? [1, 2] : [2, 1];
    return outcomeOf(
      dressed(
        {
          inner: 2,
          legs: [
            { from: 0, to: 1, through: [fans(fanWith()), elementPlace(lossOfForm(0, 5e4))] },
            { from: 1, to: 0, through: [] },
            { from, to, through: [stack] },
          ],
          parts: [
            { power: 1e-3, on: stack },
            { power: 2e-3, in: 2 },
          ],
        },
        {},
      ),
    );
  }

  it('counts as running along its leg, and heat that enters it reaches the room', () => {
    // Assumption of the model, named; conservation of energy.
    for (const outcome of [pocket(true), pocket(false)]) {
      expect(Math.abs(outcome.legs[2]?.massFlow ?? Number.NaN)).toBeLessThan(1e-7);
      expect(outcome.legs[2]?.reversed).toBe(false);
      expect(outcome.heatCarried / 3e-3).toBeCloseTo(1, 6);
      for (const { rise, temperature } of outcome.parts) {
        expect(sumOf(rise)).toBeCloseTo(temperature - outcome.room, 6);
      }
    }
  });

  it('gives the heat of its leg to both ends alike, whichever way it is drawn', () => {
    // Derived: the exchange of 1e-7 kg/s carries the 2 mW of the pocket and, by symmetry, half of the 1 mW in the leg.
    for (const inward of [true, false]) {
      const [, box, hole] = pocket(inward).chambers;
      const above = (hole?.temperature ?? Number.NaN) - (box?.temperature ?? Number.NaN);
      expect(above / (2.5e-3 / (1e-7 * 1006))).toBeCloseTo(1, 6);
    }
  });
});
