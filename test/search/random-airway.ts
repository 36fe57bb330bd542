import type { Element } from '../../src/elements/element.ts';
import { elementKinds } from '../../src/elements/kinds.ts';
import type { Bank, ElementOption, Leg, Place } from '../../src/enclosure/enclosure.ts';
import type { FanModel } from '../../src/fan/fan-model.ts';
import { plansWith } from './airway-plans.ts';
import type { Random } from './random.ts';
import { randomFan } from './random-fan.ts';

/** The airway of an enclosure: what may stand where. */
export interface Airway {
  readonly chambers: readonly string[];
  readonly places: readonly Place[];
  readonly legs: readonly Leg[];
}

function elementOf(key: string, fields: object): Element {
  const kind = elementKinds.find((candidate) => candidate.key === key);
  if (!kind) throw new RangeError(`no kind of element is called ${key}`);
  return kind.make(fields);
}

const millimetres = (value: number): string => `${value.toFixed(2)} mm`;
const sides = (width: number, height: number): string => `${width.toFixed(1)} x ${millimetres(height)}`;

function perforated(random: Random): Element {
  return elementOf('perforated', {
    perforated: sides(random.between(50, 120), random.between(50, 100)),
    hole: millimetres(random.between(3, 6)),
    web: millimetres(random.between(1.2, 4)),
    sheet: '1.5 mm',
    facing: random.pick(['vent', 'shroud', 'wall']),
  });
}

function stack(random: Random): Element {
  const face = sides(random.between(60, 110), random.between(60, 110));
  const depth = millimetres(random.between(20, 45));
  if (random.chance(0.7)) {
    const pitch = millimetres(random.between(1.6, 3.2));
    return elementOf('fins', { fins: 'tower', face, depth, pitch, fin: '0.4 mm' });
  }
  const low = sides(random.between(60, 110), random.between(12, 30));
  return elementOf('fins', { fins: 'low', face: low, depth, count: random.whole(16, 26), fin: '0.8 mm' });
}

/** What each letter of a plan may stand for, beside B for a bank. */
const makers: Readonly<Record<string, (random: Random) => Element>> = {
  V: perforated,
  F: stack,
  S: (random) => elementOf('slot', { slot: sides(random.between(30, 120), random.spread(0.7, 6)) }),
  M: (random) =>
    elementOf('screen', { screen: sides(80, random.between(60, 90)), open: '50 %', wire: '0.25 mm' }),
  K: (random) =>
    elementOf('given', {
      given: 'loss',
      K: random.between(0.5, 4),
      area: `${random.between(20, 60).toFixed(1)} cm²`,
    }),
};

/** Different fillings of a place; some places may stay empty. */
function bankPlace(random: Random, id: string, fans: readonly FanModel[], most: number): Place {
  const all = fans.flatMap((fan) => [1, 2].map((count): Bank => ({ fan, count })));
  const options: (Bank | null)[] = random.chance(0.35) ? [null] : [];
  for (let count = random.whole(2, most); options.length < count && all.length > 0; ) {
    options.push(...all.splice(random.whole(0, all.length - 1), 1));
  }
  const gap = () => random.between(0, 0.03);
  return { kind: 'bank', id, options, depth: 0.026, inletGap: gap(), outletGap: gap() };
}

function elementPlace(random: Random, id: string, letter: string): Place {
  const make = makers[letter];
  if (!make) throw new RangeError(`a plan holds an unknown letter ${letter}`);
  const count = letter === 'V' && random.chance(0.3) ? random.whole(2, 3) : 1;
  const options = Array.from(
    { length: count },
    (_, index): ElementOption => ({ label: count > 1 ? `choice ${index + 1}` : '', element: make(random) }),
  );
  return { kind: 'element', id, options };
}

/** Takes options away until there are no more builds than asked, the longest choices first. */
function trimmed(places: readonly Place[], mostBuilds: number): readonly Place[] {
  const kept = places.map((place) => place.options.length);
  while (kept.reduce((size, count) => size * count, 1) > mostBuilds) {
    const longest = kept.indexOf(Math.max(...kept));
    kept[longest] = (kept[longest] as number) - 1;
  }
  return places.map((place, index): Place => {
    const count = kept[index] as number;
    return place.kind === 'bank'
      ? { ...place, options: place.options.slice(-count) }
      : { ...place, options: place.options.slice(0, count) };
  });
}

/**
 * A random airway with a given number of places for fans: a plan drawn from the list or at random, filled with
 * random elements and invented fans.
 *
 * @param random source of numbers
 * @param banks places for fans, 1 to 3
 * @param mostBuilds most combinations of options
 * @param simple only one chamber with fans in one leg into it and one out of it at most
 */
export function randomAirway(random: Random, banks: number, mostBuilds: number, simple: boolean): Airway {
  const plan = random.pick(plansWith(random, banks, simple));
  const fans = Array.from({ length: random.whole(2, 4) }, (_, index) =>
    randomFan(random, `fan-${index + 1}`),
  );
  const places: Place[] = [];
  const recirculates = random.chance(0.35);
  const legs = plan.map(({ from, to, letters }, index): Leg => {
    const through = [...letters].map((letter) => {
      const id = `${letter}${places.length}`;
      places.push(letter === 'B' ? bankPlace(random, id, fans, 6 - banks) : elementPlace(random, id, letter));
      return places.length - 1;
    });
    const recirculation = recirculates && from === 0 && random.chance(0.7) ? random.between(0, 0.3) : 0;
    return { id: `leg-${index + 1}`, from, to, through, recirculation };
  });
  const last = Math.max(...plan.flatMap(({ from, to }) => [from, to]));
  const chambers = Array.from({ length: last + 1 }, (_, index) =>
    index === 0 ? 'outside' : `chamber-${index}`,
  );
  return { chambers, places: trimmed(places, mostBuilds), legs };
}
