import type { Bank, BankPlace, Build, Enclosure, Leg } from '../enclosure/enclosure.ts';
import { nearness } from '../enclosure/hearing.ts';
import { bankInstallation } from '../enclosure/installation.ts';
import { bankIn, bankStage } from '../enclosure/stages.ts';
import type { Decibels, Fraction } from '../quantities/dimensions.ts';
import { type BankCloseness, bankCloseness } from './bank-closeness.ts';
import { type PlacedBank, placedBank } from './bank-effort.ts';
import { type FanGrid, fanGrid } from './duals/fan-grid.ts';
import type { LegBank } from './leg-cost.ts';

/** What stands in the bank places of a leg: one list of options per place, in stream order. */
export type LegBanks = readonly (readonly (LegBank | null)[])[];

/** Banks compiled so far. */
export interface BankBook {
  /** By place and installation term, then by option: those that differ only in what stands far from them are the same. */
  readonly placed: Map<string, Map<number, PlacedBank>>;
  /** By place and option. */
  readonly grids: Map<number, Map<number, FanGrid>>;
  /** All of a leg, by the leg and its elements. */
  readonly legs: Map<string, LegBanks>;
}

/** Places of a leg that take fans, in stream order. */
export function bankPlaces(enclosure: Enclosure, leg: Leg): readonly number[] {
  return leg.through.filter((place) => enclosure.places[place]?.kind === 'bank');
}

/** One option of a place for each way in which it is heard and felt by its neighbours: empty, or fans by their turn. */
function kindsThere({ options }: BankPlace): readonly number[] {
  const kinds = new Map<unknown, number>();
  for (const [option, bank] of options.entries()) {
    const kind = bank === null ? null : bank.fan.turns;
    if (!kinds.has(kind)) kinds.set(kind, option);
  }
  return [...kinds.values()];
}

/** Builds that differ from one in what stands in the leg's other bank places, as far as it matters to a bank. */
function fillings(enclosure: Enclosure, build: Build, leg: Leg, place: number): readonly Build[] {
  let variants: Build[] = [build];
  for (const other of bankPlaces(enclosure, leg)) {
    const there = enclosure.places[other];
    if (other === place || there?.kind !== 'bank') continue;
    const choices = kindsThere(there);
    variants = variants.flatMap((variant) => choices.map((option) => variant.with(other, option)));
  }
  return variants;
}

/** Least installation term of a bank over what may stand in the other bank places of its leg [dB]. */
function leastInstallation(
  enclosure: Enclosure,
  build: Build,
  leg: number,
  stage: number,
  place: BankPlace,
  bank: Bank,
): Decibels {
  const plan = enclosure.legs[leg] as Leg;
  const terms = fillings(enclosure, build, plan, plan.through[stage] as number).map((variant) =>
    bankInstallation(enclosure, variant, place, leg, stage, bank),
  );
  return Math.min(...terms);
}

/** Derating of a bank behind another running bank of its leg, the milder of the possible ones [-]. */
function mildestDerating(enclosure: Enclosure, build: Build, leg: Leg, stage: number, bank: Bank): number {
  const own = leg.through[stage] as number;
  const factors = fillings(enclosure, build, leg, own)
    .filter((variant) =>
      leg.through.some((place, at) => at < stage && bankIn(enclosure, variant, place) !== null),
    )
    .map((variant) => bankStage(enclosure, variant, leg, stage, bank).derating);
  return factors.length === 0 ? 1 : Math.max(...factors);
}

/** What banks of as many fans of one size, turning the same way, have in common in a place. */
interface RowTerms {
  readonly installation: Decibels;
  readonly closeness: BankCloseness;
  readonly derating: Fraction;
}

/** Finds an entry, or makes it. */
function entryOf<Key, Value>(map: Map<Key, Value>, key: Key, make: () => Value): Value {
  let found = map.get(key);
  if (found === undefined) {
    found = make();
    map.set(key, found);
  }
  return found;
}

function compiledPlace(
  enclosure: Enclosure,
  elements: Build,
  leg: number,
  index: number,
  book: BankBook,
): LegBanks[number] {
  const plan = enclosure.legs[leg] as Leg;
  const { sound } = enclosure.assumptions;
  const place = enclosure.places[index] as BankPlace;
  const stage = plan.through.indexOf(index);
  const near = nearness(enclosure, index);
  const rows = new Map<string, RowTerms>();
  const grids = entryOf(book.grids, index, () => new Map<number, FanGrid>());
  return place.options.map((bank, option): LegBank | null => {
    if (bank === null) return null;
    const { fan, count, lost } = bank;
    const row = `${fan.size} ${count} ${fan.turns} ${lost?.dead} ${lost?.missing}`;
    const { installation, closeness, derating } = entryOf(rows, row, () => ({
      installation: leastInstallation(enclosure, elements, leg, stage, place, bank),
      closeness: bankCloseness(enclosure, elements, plan, stage, bank),
      derating: mildestDerating(enclosure, elements, plan, stage, bank),
    }));
    const known = entryOf(book.placed, `${index}/${installation}`, () => new Map<number, PlacedBank>());
    const grid = entryOf(grids, option, () => fanGrid(bank, sound));
    return {
      closeness,
      derating,
      placed: entryOf(known, option, () => placedBank(bank, installation, near, sound, grid)),
    };
  });
}

function compiledBanks(enclosure: Enclosure, elements: Build, leg: number, book: BankBook): LegBanks {
  const places = bankPlaces(enclosure, enclosure.legs[leg] as Leg);
  return places.map((index) => compiledPlace(enclosure, elements, leg, index, book));
}

/**
 * Every option of every bank place of a leg, ready for bounds; `null` for an empty place.
 *
 * @param enclosure the scenario
 * @param elements build of which only the elements of the leg matter
 * @param leg index of the leg
 * @param book banks compiled so far
 * @returns one list of options per bank place of the leg, in stream order
 */
export function legBanks(enclosure: Enclosure, elements: Build, leg: number, book: BankBook): LegBanks {
  const own = (enclosure.legs[leg] as Leg).through.map((place) =>
    enclosure.places[place]?.kind === 'element' ? elements[place] : '',
  );
  const key = `${leg}: ${own.join(' ')}`;
  const found = book.legs.get(key) ?? compiledBanks(enclosure, elements, leg, book);
  book.legs.set(key, found);
  return found;
}
