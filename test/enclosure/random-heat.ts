import type { Machine } from '../../src/enclosure/machine.ts';
import { elementPool } from '../airway/element-pool.ts';
import { between, chance, logBetween, oneOf, type Random } from '../airway/seeded-random.ts';
import { dressed } from './dressed.ts';
import { type Drawing, type DrawnLeg, elementPlace, fans, fanWith } from './hand-made.ts';
import { randomDress } from './random-dress.ts';
import { randomDrawing } from './random-enclosure.ts';

const stacks = elementPool.filter(({ finResistance }) => finResistance !== undefined);

/** Intake chamber, fan and fins, exhaust chamber; a bypass round the fins, and a leg that brings exhaust back. */
function comingBack(random: Random): Drawing {
  const stack = elementPlace(oneOf(random, stacks));
  const passage = () => elementPlace(oneOf(random, elementPool));
  const legs: DrawnLeg[] = [
    { from: 0, to: 1, through: [passage()] },
    { from: 1, to: 2, through: [fans(fanWith({ power: logBetween(random, 0.3, 6) })), stack] },
    { from: 2, to: 0, through: chance(random, 0.5) ? [fans(fanWith({ power: 1 }))] : [] },
    { from: 2, to: 1, through: [passage()] },
    { from: 1, to: 2, through: [passage()] },
  ];
  return {
    inner: 2,
    legs,
    parts: [
      { power: logBetween(random, 5, 150), on: stack, resistance: between(random, 0, 0.3), slope: 0.004 },
      { power: logBetween(random, 1, 40), on: stack, resistance: between(random, 0, 0.5) },
      { power: logBetween(random, 1, 30), in: 1, resistance: between(random, 0, 2) },
    ],
    room: between(random, 283, 318),
    pressure: between(random, 75_000, 102_000),
    relativeHumidity: between(random, 0, 0.9),
  };
}

/** The same with some of its legs leading up or down; none that lets air through without loss, which would have no end. */
function withSlopes(random: Random, drawing: Drawing): Drawing {
  const legs = drawing.legs.map((leg) =>
    chance(random, 0.3) && leg.through.some(({ kind }) => kind === 'element')
      ? { ...leg, rise: between(random, -0.4, 0.4) }
      : leg,
  );
  return { ...drawing, legs };
}

/** A machine of an invented enclosure with everything that heat may meet, and a speed for each of its banks. */
export function randomHeated(random: Random): { readonly machine: Machine; readonly ratios: Float64Array } {
  const plain = chance(random, 0.2) ? comingBack(random) : randomDrawing(random);
  const drawing = chance(random, 0.3) ? withSlopes(random, plain) : plain;
  const machine = dressed(drawing, randomDress(random, drawing));
  const ratios = Float64Array.from(machine.banks, () => oneOf(random, [0, 0.3, 1, between(random, 0.2, 1)]));
  return { machine, ratios };
}
