import type { Asks, Header } from '../../../src/enclosure/asks.ts';
import type { Bank, Build, Enclosure } from '../../../src/enclosure/enclosure.ts';
import { randomEnclosure, type Size } from '../random-enclosure.ts';

/** A random enclosure whose fans have prices, some of them equal, and the last of many none. */
export function pricedEnclosure(seed: number, size: Size): Enclosure {
  const enclosure = randomEnclosure(seed, size);
  const priced = (bank: Bank | null): Bank | null => {
    if (!bank) return null;
    const number = Number(bank.fan.id.slice('fan-'.length));
    const price = number === 4 ? undefined : 4 + ((seed * 7 + number * 5) % 4) * 2.5;
    return { ...bank, fan: { ...bank.fan, ...(price === undefined ? {} : { price }) } };
  };
  const places = enclosure.places.map((place) =>
    place.kind === 'bank' ? { ...place, options: place.options.map(priced) } : place,
  );
  return { ...enclosure, places };
}

/** The banks of a build, in the order of their places. */
export function banksOf({ places }: Enclosure, build: Build): readonly Bank[] {
  return places.flatMap((place, index) =>
    place.kind === 'bank' ? (place.options[build[index] as number] ?? []) : [],
  );
}

/** Bank places of an enclosure. */
export function bankPlacesOf({ places }: Enclosure): readonly number[] {
  return places.flatMap((place, index) => (place.kind === 'bank' ? [index] : []));
}

export function asking(enclosure: Enclosure, asks: Asks): Enclosure {
  return { ...enclosure, asks };
}

export function onOneHeader(enclosure: Enclosure, current?: Header['current']): Enclosure {
  const header: Header = {
    id: 'all',
    places: bankPlacesOf(enclosure),
    ...(current ? { current } : {}),
  };
  return { ...enclosure, headers: [header] };
}
