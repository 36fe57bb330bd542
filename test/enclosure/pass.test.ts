import { describe, expect, it } from 'vitest';
import { createPass } from '../../src/enclosure/pass.ts';
import { conditionsOf, newPassState } from '../../src/enclosure/pass-state.ts';
import { HOPELESS } from '../../src/heat/part-temperature.ts';
import { elementFrom } from '../airway/element-pool.ts';
import { between, seededRandom } from '../airway/seeded-random.ts';
import {
  bankPlace,
  type Drawing,
  dutyOf,
  elementPlace,
  fans,
  fanWith,
  flowOf,
  machineOf,
  passOf,
  ZERO,
} from './hand-made.ts';
import { numbersOf, plainBox, plainBoxWith, STACK } from './plain-box.ts';

const SEED = 1905;

describe('a pass', () => {
  const machine = machineOf(plainBox());
  const conditions = conditionsOf(machine.plant.enclosure, dutyOf(machine));

  it('ends where it would from nothing, whatever came before', () => {
    // Theory: the answer is a fixed point, not a history.
    const run = createPass(machine);
    const warm = newPassState(machine);
    const random = seededRandom(SEED);
    for (let trial = 0; trial < 60; trial++) {
      const heat = [between(random, 0, 1.2), between(random, 0, 1.2)];
      const trialConditions = { ...conditions, room: between(random, 288, 313), heat };
      const ratios = Float64Array.of(between(random, 0.2, 1));
      expect(run(trialConditions, ratios, warm, 1e-9)).toBeNull();
      const cold = newPassState(machine);
      expect(run(trialConditions, ratios, cold, 1e-9)).toBeNull();
      const coldNumbers = numbersOf(cold);
      numbersOf(warm).forEach((value, index) => {
        expect(Math.abs(value - (coldNumbers[index] ?? Number.NaN))).toBeLessThan(1e-7);
      });
    }
  });

  it('is quicker from a neighbour', () => {
    // Regression: a search makes millions of these.
    const run = createPass(machine);
    const state = newPassState(machine);
    run(conditions, Float64Array.of(0.6), state, 1e-6);
    const cold = { rounds: state.rounds, steps: state.steps };
    run(conditions, Float64Array.of(0.601), state, 1e-6);
    expect(state.rounds).toBeLessThan(cold.rounds);
    expect(state.steps).toBeLessThan(cold.steps);
  });

  it('follows the heat and the room of its conditions', () => {
    // Derived: without slope and recirculation every rise goes with the heat, but for the density.
    const still = machineOf(plainBox({ parts: [{ power: 20, in: 1, resistance: 1 }] }, 0));
    const at = (heat: number, room: number) => {
      const state = newPassState(still);
      const given = { ...conditionsOf(still.plant.enclosure, dutyOf(still)), heat: [heat], room };
      expect(createPass(still)(given, Float64Array.of(1), state, 1e-9)).toBeNull();
      return (state.partTemperatures[0] ?? Number.NaN) - room;
    };
    expect(at(0, 300)).toBeCloseTo(0, 6);
    expect(at(0.5, 300) / at(1, 300)).toBeCloseTo(0.5, 2);
    expect(at(1, 310) / at(1, 300)).toBeCloseTo(1, 1);
  });

  it('leaves out the heat of the fans if asked', () => {
    // Contract of the conditions.
    const run = createPass(machine);
    const [withFans, without] = [1, 0].map((fanHeat) => {
      const state = newPassState(machine);
      expect(run({ ...conditions, fanHeat, heat: [0, 0] }, Float64Array.of(1), state, 1e-9)).toBeNull();
      return (state.chambers[1] ?? Number.NaN) - conditions.room;
    });
    expect(without).toBeCloseTo(0, 9);
    expect(withFans).toBeGreaterThan(0.01);
  });
});

describe('a box without moving air', () => {
  it.each([
    ['all places for fans empty', plainBoxWith(bankPlace([null])), []],
    ['its fan stopped', plainBoxWith(fans(fanWith({ power: 2 }))), [0]],
  ])('%s is hopeless but has numbers', (_, drawing, speeds) => {
    // Common sense: some limit fails, and nothing else does.
    const passed = passOf(machineOf(drawing), speeds, 1e-6);
    expect(passed.failure).toBeNull();
    expect(numbersOf(passed.state).every((value) => Number.isFinite(value))).toBe(true);
    expect(Math.min(...passed.state.partTemperatures)).toBeGreaterThan(1000);
    expect(Math.max(...passed.state.partTemperatures)).toBeLessThanOrEqual(HOPELESS);
    expect(Math.abs(flowOf(passed, 0))).toBeLessThan(1e-6);
  });

  it('and without heat stays at the temperature of the room', () => {
    const drawing = { ...plainBoxWith(bankPlace([null])), parts: [{ power: 0, in: 1 }] };
    const { state } = passOf(machineOf(drawing));
    expect(state.chambers[1]).toBeCloseTo(25 + ZERO, 9);
    expect(state.partTemperatures[0]).toBeCloseTo(25 + ZERO, 9);
  });
});

describe('a pass that finds no answer says why', () => {
  it('a chamber that nothing joins to the room', () => {
    // Theory: its pressure is undetermined.
    const drawing = plainBox();
    const { failure } = passOf(machineOf({ ...drawing, inner: 2 }));
    expect(failure).toBe('the flows do not balance');
  });

  it('two parts that heat each other faster than their fins can cool', () => {
    // Derived: each alone has a loop gain below 1, together R·ΣP·a = 1.5: no steady state.
    const stack = elementPlace(elementFrom('fins', STACK), 'stack');
    const drawing = (slope: number): Drawing => ({
      inner: 1,
      legs: [
        { from: 0, to: 1, through: [fans(fanWith()), stack] },
        { from: 1, to: 0, through: [] },
      ],
      parts: [0, 1].map(() => ({ power: 100, on: stack, slope, powerAt: 25 + ZERO })),
    });
    const resistance = passOf(machineOf(drawing(0))).state.finResistances[0] ?? Number.NaN;
    const calm = passOf(machineOf(drawing(0.4 / (200 * resistance))));
    expect(calm.failure).toBeNull();
    const wild = passOf(machineOf(drawing(1.5 / (200 * resistance))));
    expect(wild.failure).toBe('air and heat do not settle');
  });

  it('and the next pass starts afresh', () => {
    // Theory: as from nothing.
    const machine = machineOf(plainBox());
    const run = createPass(machine);
    const conditions = conditionsOf(machine.plant.enclosure, dutyOf(machine));
    const state = newPassState(machine);
    expect(run(conditions, Float64Array.of(0.5), state, 1e-9)).toBeNull();
    expect(run({ ...conditions, heat: [Number.NaN, 1] }, Float64Array.of(1), state, 1e-9)).not.toBeNull();
    expect(run(conditions, Float64Array.of(1), state, 1e-9)).toBeNull();
    const fresh = numbersOf(passOf(machine).state);
    numbersOf(state).forEach((value, index) => {
      expect(Math.abs(value - (fresh[index] ?? Number.NaN))).toBeLessThan(1e-7);
    });
  });
});
