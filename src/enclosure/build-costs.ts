import type { Amperes, Metres, Watts } from '../quantities/dimensions.ts';
import type { Header } from './asks.ts';
import type { Bank, Build, Enclosure } from './enclosure.ts';
import { bankIn } from './stages.ts';

/** Fans of a bank that are there, dead ones among them. */
export function fansThere({ count, lost }: Bank): number {
  return count + (lost?.dead ?? 0);
}

/** What the fans of a bank cost; infinite if nobody knows. */
export function bankPrice(bank: Bank | null): number {
  const fans = bank ? fansThere(bank) : 0;
  return bank && fans > 0 ? fans * (bank.fan.price ?? Number.POSITIVE_INFINITY) : 0;
}

/** Electrical power of a bank at full speed [W]. */
export function bankPower(bank: Bank | null): Watts {
  return bank ? fansThere(bank) * bank.fan.power : 0;
}

/** Depth of a bank along the stream [m]; 0 if there is none. */
export function bankDepth(bank: Bank | null): Metres {
  return bank ? bank.fan.depth : 0;
}

function sumOver(
  enclosure: Enclosure,
  build: Build,
  places: readonly number[],
  of: (bank: Bank | null) => number,
): number {
  return places.reduce((sum, place) => sum + of(bankIn(enclosure, build, place)), 0);
}

/** What all fans of a build cost; infinite if the price of one is unknown. */
export function priceOf(enclosure: Enclosure, build: Build): number {
  return sumOver(enclosure, build, [...enclosure.places.keys()], bankPrice);
}

/** Electrical power of all fans of a build at full speed [W]. */
export function ratedPowerOf(enclosure: Enclosure, build: Build): Watts {
  return sumOver(enclosure, build, [...enclosure.places.keys()], bankPower);
}

/** Depth that the fans of one leg have together [m]. */
export function legDepth(enclosure: Enclosure, build: Build, leg: number): Metres {
  return sumOver(enclosure, build, enclosure.legs[leg]?.through ?? [], bankDepth);
}

/** Depth that the fans of a leg have together [m], of the leg where that is most. */
export function depthOf(enclosure: Enclosure, build: Build): Metres {
  return enclosure.legs.reduce((most, _, leg) => Math.max(most, legDepth(enclosure, build, leg)), 0);
}

/** Different models of fans in a build [-]. */
export function modelsOf(enclosure: Enclosure, build: Build): number {
  return new Set(enclosure.places.flatMap((_, place) => bankIn(enclosure, build, place)?.fan.id ?? [])).size;
}

/** Current that a header gives with all its fans at full speed [A]; 0 if its voltage is not known. */
export function currentOf(enclosure: Enclosure, build: Build, { places, current }: Header): Amperes {
  return current ? sumOver(enclosure, build, places, bankPower) / current.voltage : 0;
}
