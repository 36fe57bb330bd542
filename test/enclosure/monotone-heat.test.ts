import { describe, expect, it } from 'vitest';
import { curveFromBox } from '../../src/fan/box-figures.ts';
import { curvePool, elementFrom, elementPool } from '../airway/element-pool.ts';
import { between, chance, logBetween, oneOf, type Random, seededRandom } from '../airway/seeded-random.ts';
import {
  type Drawing,
  type DrawnPart,
  elementPlace,
  fans,
  fanWith,
  flowOf,
  lossOfForm,
  machineOf,
  passOf,
  ZERO,
} from './hand-made.ts';
import { STACK } from './plain-box.ts';

const SEED = 303;
const stacks = elementPool.filter(({ finResistance }) => finResistance !== undefined);
const passage = (random: Random) => elementPlace(oneOf(random, elementPool));

/** One path through two chambers with one fan, parts on fins and in both chambers, some of its exhaust drawn in again. */
function onePath(random: Random): Drawing {
  const stack = elementPlace(oneOf(random, stacks));
  const power = chance(random, 0.5) ? logBetween(random, 0.3, 5) : 0;
  const fan = fans(fanWith({ curve: oneOf(random, curvePool), power }));
  const slope = () => oneOf(random, [0, 0.003, 0.006]);
  const parts: DrawnPart[] = [
    { power: logBetween(random, 3, 60), on: stack, resistance: between(random, 0, 0.3), slope: slope() },
    { power: logBetween(random, 1, 20), on: stack, resistance: between(random, 0, 0.5), slope: slope() },
    { power: logBetween(random, 0.5, 15), in: 1, resistance: between(random, 0, 2), slope: slope() },
    { power: logBetween(random, 0.5, 15), in: 2, resistance: between(random, 0, 2), slope: slope() },
  ];
  return {
    inner: 2,
    legs: [
      { from: 0, to: 1, through: [passage(random)], recirculation: chance(random, 0.5) ? 0.2 : 0 },
      { from: 1, to: 2, through: [fan, stack] },
      { from: 2, to: 0, through: chance(random, 0.5) ? [passage(random)] : [] },
    ],
    parts,
    room: between(random, 283, 313),
    pressure: between(random, 80_000, 102_000),
  };
}

/** Temperatures of all parts [K]; undefined if there is no answer or one too hot to be of use. */
function hotness(drawing: Drawing, speed = 1): readonly number[] | undefined {
  const { failure, state } = passOf(machineOf(drawing), [speed]);
  const calm = !failure && Math.max(...state.partTemperatures) < 420;
  return calm ? [...state.partTemperatures] : undefined;
}

/** Least and most difference of any part in all drawings that have an answer both ways. */
function differences(change: (drawing: Drawing) => readonly [Drawing, number?]) {
  const random = seededRandom(SEED);
  const found = Array.from({ length: 120 }).flatMap(() => {
    const drawing = onePath(random);
    const before = hotness(drawing);
    const after = hotness(...change(drawing));
    return before && after ? before.map((value, index) => (after[index] ?? Number.NaN) - value) : [];
  });
  expect(found.length).toBeGreaterThan(240);
  return { least: Math.min(...found), most: Math.max(...found) };
}

describe('one path through a box', () => {
  it('has all parts hotter in a warmer room', () => {
    // Derived: less mass moves, the air starts warmer, powers do not fall; fins resist at most some per cent less.
    const { least } = differences((drawing) => [{ ...drawing, room: (drawing.room ?? Number.NaN) + 7 }]);
    expect(least).toBeGreaterThan(3.5);
  });

  it('has all parts hotter in thinner air', () => {
    // Derived: mass flow falls with density, and nothing makes up for it.
    const { least } = differences((drawing) => [
      { ...drawing, pressure: 0.9 * (drawing.pressure ?? Number.NaN) },
    ]);
    expect(least).toBeGreaterThan(0);
  });

  it('has all parts hotter if one of them gets more heat', () => {
    // Derived: the path is a chain, and what comes back by the exhaust warms everything.
    const { least } = differences((drawing) => [
      {
        ...drawing,
        parts: (drawing.parts ?? []).map((part, index) =>
          index === 2 ? { ...part, power: part.power + 3 } : part,
        ),
      },
    ]);
    expect(least).toBeGreaterThan(0);
  });

  it('has all parts cooler at a higher speed, if the fan itself makes no heat', () => {
    // Derived: more mass moves, and the resistance of fins falls.
    const cold = (drawing: Drawing) => ({
      ...drawing,
      legs: drawing.legs.map((leg, index) =>
        index === 1 ? { ...leg, through: [fans(fanWith()), ...leg.through.slice(1)] } : leg,
      ),
    });
    const random = seededRandom(SEED + 1);
    let compared = 0;
    for (let trial = 0; trial < 80; trial++) {
      const drawing = cold(onePath(random));
      const slow = hotness(drawing, 0.7);
      const fast = hotness(drawing, 0.8);
      if (!slow || !fast) continue;
      compared += 1;
      slow.forEach((value, index) => {
        expect(fast[index]).toBeLessThan(value);
      });
    }
    expect(compared).toBeGreaterThan(40);
  });
});

describe('where it is not so', () => {
  /** A weak fan behind fins and a strong one behind a long narrow filter, against each other in one chamber. */
  function rivals(room: number, pressure: number) {
    const stack = elementPlace(elementFrom('fins', STACK), 'stack');
    const weak = fans(fanWith({ curve: curveFromBox(0.03, 20, 0) }));
    const strong = fans(fanWith({ curve: curveFromBox(0.03, 80, 0) }));
    const passed = passOf(
      machineOf({
        inner: 1,
        legs: [
          { from: 0, to: 1, through: [weak, stack] },
          { from: 0, to: 1, through: [strong, elementPlace(lossOfForm(4000, 0))] },
          { from: 1, to: 0, through: [elementPlace(lossOfForm(0, 1.4e5))] },
        ],
        parts: [{ power: 20, on: stack }],
        room,
        pressure,
      }),
    );
    expect(passed.failure).toBeNull();
    return { flow: flowOf(passed, 0), part: passed.state.partTemperatures[0] ?? Number.NaN };
  }

  // Derived: what warm or thin air takes from the strong fan, whose loss is laminar and goes with viscosity over density,
  // gives the weak one room to breathe.
  it('a warmer room may cool a part whose fan is held down by another', () => {
    const cool = rivals(25 + ZERO, 101_325);
    const warm = rivals(35 + ZERO, 101_325);
    expect(warm.flow).toBeGreaterThan(2 * cool.flow);
    expect(warm.part).toBeLessThan(cool.part - 20);
  });

  it('thinner air may cool it as well', () => {
    const dense = rivals(25 + ZERO, 101_325);
    const thin = rivals(25 + ZERO, 90_000);
    expect(thin.flow).toBeGreaterThan(2 * dense.flow);
    expect(thin.part).toBeLessThan(dense.part - 20);
  });

  it('a faster fan may warm the air it moves more than it cools', () => {
    // Derived: the heat of a fan goes with the cube of its speed, the flow with the speed itself.
    const drawing: Drawing = {
      inner: 1,
      legs: [
        { from: 0, to: 1, through: [fans(fanWith({ power: 40 })), elementPlace(lossOfForm(0, 5e4))] },
        { from: 1, to: 0, through: [] },
      ],
      parts: [{ power: 1, in: 1 }],
    };
    const [slow] = hotness(drawing, 0.5) ?? [];
    const [fast] = hotness(drawing, 1) ?? [];
    expect((fast ?? Number.NaN) - 25 - ZERO).toBeGreaterThan(3 * ((slow ?? Number.NaN) - 25 - ZERO));
  });

  it('hot fins may resist a little less in warmer air of the same mass flow', () => {
    // Derived: the conductivity of air rises with its temperature.
    const element = elementFrom('fins', STACK);
    const of = (kelvin: number) => {
      const density = 101_325 / (287.05287 * kelvin);
      const air = {
        temperature: kelvin,
        pressure: 101_325,
        density,
        viscosity: (1.458e-6 * kelvin ** 1.5) / (kelvin + 110.4),
        conductivity: (2.64638e-3 * kelvin ** 1.5) / (kelvin + 245.4 * 10 ** (-12 / kelvin)),
        specificHeat: 1006,
      };
      return element.finResistance?.(0.02 / density, air) ?? Number.NaN;
    };
    expect(of(340)).toBeLessThan(of(300));
    expect(of(340)).toBeGreaterThan(0.9 * of(300));
  });
});
