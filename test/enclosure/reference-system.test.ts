import { describe, expect, it } from 'vitest';
import { curveFromBox } from '../../src/fan/box-figures.ts';
import { elementFrom } from '../airway/element-pool.ts';
import { asWritten, tower } from '../elements/sample-stacks.ts';
import {
  elementPlace,
  fans,
  fanWith,
  flowOf,
  lossOfForm,
  machineOf,
  type Passed,
  passOf,
  ZERO,
} from './hand-made.ts';

const CP = 1006;

/** Pressure at 2000 m. Source: ISA closed form, 101 325 (1 − 2.25577e-5 h)^5.25588 (from memory). */
const HIGH = 79_495.2;

/** A fan, a square loss and a fin stack in one path, all in air of the room; the exhaust is open. */
function reference(pressure: number, room: number): Passed {
  const stack = elementPlace(elementFrom('fins', asWritten(tower(0.025))), 'stack');
  const fan = fans(fanWith({ curve: curveFromBox(0.04, 30, 0), size: 0.12 }));
  const machine = machineOf({
    inner: 1,
    legs: [
      { from: 0, to: 1, through: [fan, elementPlace(lossOfForm(0, 3e4)), stack] },
      { from: 1, to: 0, through: [] },
    ],
    parts: [{ power: 220, on: stack }],
    room,
    pressure,
  });
  return passOf(machine);
}

function figures(passed: Passed, pressure: number, room: number) {
  const { state } = passed;
  // Density of dry air, R = 287.05287 J/(kg·K), US Standard Atmosphere 1976.
  const flow = flowOf(passed, 0) / (pressure / (287.05287 * room));
  return {
    flow,
    airRise: (state.chambers[1] ?? Number.NaN) - room,
    resistance: state.finResistances[0] ?? Number.NaN,
    base: (state.partTemperatures[0] ?? Number.NaN) - ZERO,
  };
}

describe('a fan, a loss and a fin stack with 220 W', () => {
  // Computed with Python from the same published formulas by an independent script: fan 30·(1 − (Q/0.04)²) Pa and loss
  // 3.0e4 Pa·s²/m⁶ at 1.2 kg/m³, invented tower of 60 fins 25 mm deep; air of the room throughout. The accuracy is
  // that of the figures.
  it.each([
    ['at sea level, 25 °C', 101_325, 25, 0.0220486, 8.3777, 0.063711, 39.0164],
    ['at sea level, 35 °C', 101_325, 35, 0.0219422, 8.70066, 0.0638906, 49.0559],
    ['at 2000 m, 25 °C', HIGH, 25, 0.0215707, 10.9148, 0.0724538, 40.9398],
    ['at 2000 m, 35 °C', HIGH, 35, 0.0214412, 11.349, 0.0729989, 51.0598],
  ])('%s', (_, pressure, celsius, flow, airRise, resistance, base) => {
    const room = celsius + ZERO;
    const passed = reference(pressure, room);
    expect(passed.failure).toBeNull();
    const found = figures(passed, pressure, room);
    expect(found.flow / flow).toBeCloseTo(1, 4);
    expect(found.airRise / airRise).toBeCloseTo(1, 4);
    expect(found.resistance / resistance).toBeCloseTo(1, 4);
    expect(found.base / base).toBeCloseTo(1, 4);
  });

  it('carries at 2000 m what altitude rules let expect', () => {
    // Computed as above: 14.0164/15.9398 = 0.879333. Published: capacity factor 1 − h/17500 = 0.885714, within 3 %.
    const rise = (pressure: number) => figures(reference(pressure, 25 + ZERO), pressure, 25 + ZERO).base - 25;
    const ratio = rise(101_325) / rise(HIGH);
    expect(ratio).toBeCloseTo(0.879333, 4);
    expect(Math.abs(ratio / 0.885714 - 1)).toBeLessThan(0.03);
  });

  it('adds a warmer room to the base almost degree by degree', () => {
    // Computed as above: 10 K warmer room, 10.04 K warmer base.
    const base = (celsius: number) =>
      figures(reference(101_325, celsius + ZERO), 101_325, celsius + ZERO).base;
    expect(base(35) - base(25)).toBeCloseTo(49.0559 - 39.0164, 2);
  });
});

describe('a part under its junction, in preheated air', () => {
  // Computed with Python by an independent script: tower 25 mm at 1.5 m/s (0.0216 m³/s), 180 W, air of 25 °C preheated
  // by 2.07556 K (35 W in 30 CFM); 0.0643153 K/W of the fins, 0.05 of the pipes, 0.0125 of the paste, 0.1 inside.
  // Here the fins see the preheated air, which moves their resistance by a thousandth: hence 0.05 K.
  const room = 25 + ZERO;
  const flow = 1.5 * 0.12 * 0.12;
  const capacity = (101_325 / (287.05287 * room)) * flow * CP;

  function heated(resistance: number): number {
    const stackElement = elementFrom('fins', asWritten(tower(0.025)));
    const stack = elementPlace(stackElement, 'stack');
    const warm = room + 2.07556;
    const density = 101_325 / (287.05287 * warm);
    const viscosity = (1.458e-6 * warm ** 1.5) / (warm + 110.4);
    const volume = capacity / CP / density;
    const stackLoss =
      stackElement.inertial * density * volume ** 2 +
      (stackElement.law?.loss(volume, density, viscosity) ?? 0);
    // The fan is throttled to that flow.
    const fanRise = (30 * density) / 1.2 - ((30 / 0.04 ** 2) * density * volume ** 2) / 1.2;
    const throttle = elementPlace(lossOfForm(0, ((fanRise - stackLoss) * 1.2) / (density * volume ** 2)));
    const machine = machineOf({
      inner: 2,
      legs: [
        { from: 0, to: 1, through: [] },
        {
          from: 1,
          to: 2,
          through: [fans(fanWith({ curve: curveFromBox(0.04, 30, 0), size: 0.12 })), throttle, stack],
        },
        { from: 2, to: 0, through: [] },
      ],
      parts: [
        { power: 2.07556 * capacity, in: 1 },
        { power: 180, on: stack, resistance },
      ],
      room,
    });
    const { state, failure } = passOf(machine);
    expect(failure).toBeNull();
    expect((state.network.flows[1] ?? Number.NaN) * CP).toBeCloseTo(capacity, 3);
    expect((state.partAir[1] ?? Number.NaN) - room).toBeCloseTo(2.07556, 3);
    return (state.partTemperatures[1] ?? Number.NaN) - ZERO;
  }

  it('has its junction at 67.9 °C', () => {
    expect(Math.abs(heated(0.05 + 0.0125 + 0.1) - 67.9023)).toBeLessThan(0.05);
  });

  it('has a probe in the base at 47.7 °C', () => {
    expect(Math.abs(heated(0.05) - 47.6523)).toBeLessThan(0.05);
  });
});
