import { describe, expect, it } from 'vitest';
import { elementFrom } from '../airway/element-pool.ts';
import {
  type Drawing,
  elementPlace,
  fans,
  fanWith,
  flowOf,
  heatBalance,
  lossOfForm,
  machineOf,
  type Passed,
  passOf,
  ZERO,
} from './hand-made.ts';
import { plainBox, STACK } from './plain-box.ts';

const CP = 1006;

/** Density of dry air at sea level, R = 287.053 J/(kg·K): US Standard Atmosphere 1976. */
function density(celsius: number): number {
  return 101_325 / (287.053 * (celsius + ZERO));
}

describe('a fan on the hot and on the cold side', () => {
  // Derived: fan 40·(1 − (Q/0.03)²) and loss 5e4 at 1.2 kg/m³, loss in the cold air of 20 °C, box at 40 °C; computed
  // with mpmath 1.3: 0.0247802915 kg/s with the fan at the intake, 0.0236000585 kg/s at the exhaust, 5.00097 % more.
  const INTAKE = 0.02478029153;
  const EXHAUST = 0.0236000585;

  function box(hot: boolean): Passed {
    const fan = fans(fanWith());
    const loss = elementPlace(lossOfForm(0, 5e4));
    const drawing: Drawing = {
      inner: 1,
      legs: [
        { from: 0, to: 1, through: hot ? [loss] : [fan, loss] },
        { from: 1, to: 0, through: hot ? [fan] : [] },
      ],
      parts: [{ power: (hot ? EXHAUST : INTAKE) * CP * 20, in: 1 }],
      room: 20 + ZERO,
    };
    return passOf(machineOf(drawing));
  }

  it('moves 5 % more air at the intake', () => {
    const intake = box(false);
    const exhaust = box(true);
    expect(flowOf(intake, 0) / INTAKE).toBeCloseTo(1, 7);
    expect(flowOf(exhaust, 0) / EXHAUST).toBeCloseTo(1, 7);
    expect(flowOf(intake, 0) / flowOf(exhaust, 0)).toBeCloseTo(1.0500097, 6);
    for (const { state } of [intake, exhaust]) expect(state.chambers[1]).toBeCloseTo(40 + ZERO, 5);
  });

  it('turns it into more volume at the exhaust', () => {
    // Derived: the same air takes 313.15/293.15 of the room.
    const exhaust = box(true);
    const [leg] = exhaust.machine.legs.slice(1);
    expect(leg?.densities[0]).toBeCloseTo(density(40), 6);
    expect(flowOf(exhaust, 1) / (leg?.densities[0] ?? Number.NaN)).toBeCloseTo(0.0209368, 6);
  });
});

describe('heat', () => {
  it('of a fan warms the air behind it, not the air it works in', () => {
    // Derived: p/(η·ρ·cp) = 0.0839619 K for 20 Pa at an efficiency of 0.2 and 25 °C.
    const scale = density(25) / 1.2;
    const flow = 0.03 * Math.sqrt(1 - 20 / scale / 40);
    const fan = fanWith({ power: (20 * flow) / 0.2 / scale });
    const machine = machineOf({
      inner: 1,
      legs: [
        { from: 0, to: 1, through: [elementPlace(lossOfForm(0, 20 / scale / flow ** 2)), fans(fan)] },
        { from: 1, to: 0, through: [] },
      ],
    });
    const { state } = passOf(machine);
    expect(state.network.pressures[1]).toBeCloseTo(0, 9);
    expect(machine.legs[0]?.stageLoss(1, state.network.flows[0] ?? 0)).toBeCloseTo(-20, 6);
    expect([...(state.stages[0] ?? [])]).toEqual([25 + ZERO, 25 + ZERO]);
    expect((state.chambers[1] ?? Number.NaN) - 25 - ZERO).toBeCloseTo(0.0839619, 5);
  });

  it('of a fan goes with the cube of its speed and with the density', () => {
    // Fan laws; ASHRAE Handbook HVAC Systems and Equipment, chapter on fans (from memory).
    const machine = machineOf(plainBox({ parts: [] }, 2));
    expect(passOf(machine, [1]).state.fanPowers[0]).toBeCloseTo((2 * density(25)) / 1.2, 2);
    const slow = passOf(machine, [0.5]).state;
    expect(slow.fanPowers[0]).toBeCloseTo((0.25 * (machine.legs[0]?.densities[0] ?? 0)) / 1.2, 9);
  });

  it('of several parts on one stack adds up in its base, each with its own way to it', () => {
    // Derived: base = air + R·ΣP, part = base + its own resistance times its own power.
    const stack = elementPlace(elementFrom('fins', STACK), 'stack');
    const { state } = passOf(
      machineOf({
        inner: 1,
        legs: [
          { from: 0, to: 1, through: [fans(fanWith()), stack] },
          { from: 1, to: 0, through: [] },
        ],
        parts: [
          { power: 60, on: stack, resistance: 0.1 },
          { power: 25, on: stack, resistance: 0.3 },
        ],
      }),
    );
    const base = 25 + ZERO + 85 * (state.finResistances[0] ?? Number.NaN);
    expect(state.finResistances[0]).toBeGreaterThan(1 / (CP * (state.network.flows[0] ?? 0)));
    expect(state.finResistances[1]).toBe(state.finResistances[0]);
    expect(state.partTemperatures[0]).toBeCloseTo(base + 6, 8);
    expect(state.partTemperatures[1]).toBeCloseTo(base + 7.5, 8);
    expect(state.chambers[1]).toBeCloseTo(25 + ZERO + 85 / (CP * (state.network.flows[0] ?? 0)), 5);
  });

  it('of what lies upstream preheats what lies downstream', () => {
    // Derived: the second stack takes in air warmed by the first.
    const [first, second] = ['one', 'two'].map((id) => elementPlace(elementFrom('fins', STACK), id));
    const { state } = passOf(
      machineOf({
        inner: 1,
        legs: [
          { from: 0, to: 1, through: [fans(fanWith()), ...(first && second ? [first, second] : [])] },
          { from: 1, to: 0, through: [] },
        ],
        parts:
          first && second
            ? [
                { power: 50, on: first },
                { power: 50, on: second },
              ]
            : [],
      }),
    );
    const rise = 50 / (CP * (state.network.flows[0] ?? Number.NaN));
    expect((state.partAir[1] ?? Number.NaN) - (state.partAir[0] ?? Number.NaN)).toBeCloseTo(rise, 8);
    expect(state.partTemperatures[1]).toBeGreaterThan(state.partTemperatures[0] ?? Number.NaN);
  });

  it('comes back with the exhaust that is drawn in again', () => {
    // Derived: the intake is (1 − f) room and f exhaust.
    const { state } = passOf(machineOf(plainBox()));
    const intake = state.stages[0]?.[0] ?? Number.NaN;
    const exhaust = state.chambers[2] ?? Number.NaN;
    expect(intake - 25 - ZERO).toBeCloseTo(0.1 * (exhaust - 25 - ZERO), 9);
    expect(exhaust).toBeCloseTo(state.chambers[1] ?? Number.NaN, 6);
  });

  it('of a part follows its temperature', () => {
    // Derived: P = P0·(1 + a·(T − T0)).
    const { state } = passOf(machineOf(plainBox()));
    const expected = 80 * (1 + 0.004 * ((state.partTemperatures[0] ?? Number.NaN) - 50 - ZERO));
    expect(state.partPowers[0]).toBeCloseTo(expected, 9);
  });

  it('is carried out by the air, all of it', () => {
    // Conservation of energy.
    const { carried, given } = heatBalance(passOf(machineOf(plainBox())));
    expect(given).toBeGreaterThan(90);
    expect(Math.abs(carried / given - 1)).toBeLessThan(1e-6);
  });
});
