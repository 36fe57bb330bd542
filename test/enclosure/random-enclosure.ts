import type { BankPlace, Place } from '../../src/enclosure/enclosure.ts';
import { curvePool, elementPool } from '../airway/element-pool.ts';
import { between, chance, logBetween, oneOf, type Random, wholeBetween } from '../airway/seeded-random.ts';
import {
  bankPlace,
  type Drawing,
  type DrawnLeg,
  type DrawnPart,
  elementPlace,
  fanWith,
} from './hand-made.ts';

const stacks = elementPool.filter(({ finResistance }) => finResistance !== undefined);

function randomBank(random: Random): BankPlace {
  const fan = fanWith({ curve: oneOf(random, curvePool), power: logBetween(random, 0.3, 6) });
  const empty = chance(random, 0.2);
  return bankPlace([empty ? null : { fan, count: wholeBetween(random, 1, 3) }]);
}

function randomPlaces(random: Random): readonly Place[] {
  return Array.from({ length: wholeBetween(random, 0, 4) }, () =>
    chance(random, 0.35) ? randomBank(random) : elementPlace(oneOf(random, elementPool)),
  );
}

function randomLeg(random: Random, one: number, other: number): DrawnLeg {
  const [from, to] = chance(random, 0.5) ? [one, other] : [other, one];
  const share = from === 0 && chance(random, 0.3) ? between(random, 0, 0.4) : 0;
  return { from, to, through: randomPlaces(random), recirculation: share };
}

function randomPart(random: Random, inner: number, fins: readonly Place[]): DrawnPart {
  const seated = fins.length > 0 && chance(random, 0.5);
  return {
    power: logBetween(random, 1, 120),
    ...(seated ? { on: oneOf(random, fins) } : { in: wholeBetween(random, 1, inner) }),
    resistance: between(random, 0, 0.5),
    slope: oneOf(random, [0, 0, 0.004, 0.008]),
  };
}

/** An invented enclosure of one to four chambers, all joined to the room, with fans and heat anywhere. */
export function randomDrawing(random: Random): Drawing {
  const inner = wholeBetween(random, 1, 4);
  const legs: DrawnLeg[] = [];
  for (let chamber = 1; chamber <= inner; chamber++) {
    legs.push(randomLeg(random, chamber, wholeBetween(random, 0, chamber - 1)));
  }
  for (let extra = wholeBetween(random, 1, inner + 2); extra > 0; extra--) {
    const one = wholeBetween(random, 0, inner);
    legs.push(randomLeg(random, one, (one + wholeBetween(random, 1, inner)) % (inner + 1)));
  }
  const driven = elementPlace(oneOf(random, stacks));
  const driver = fanWith({ curve: oneOf(random, curvePool), power: 2 });
  legs.push({ from: 0, to: 1, through: [bankPlace([{ fan: driver, count: 1 }]), driven] });
  const fins = legs
    .flatMap(({ through }) => through)
    .filter((place) => place.kind === 'element' && place.options[0]?.element.finResistance !== undefined);
  return {
    inner,
    legs,
    parts: Array.from({ length: wholeBetween(random, 1, 4) }, () => randomPart(random, inner, fins)),
    room: between(random, 283, 318),
    pressure: between(random, 75_000, 102_000),
    relativeHumidity: between(random, 0, 0.9),
  };
}
