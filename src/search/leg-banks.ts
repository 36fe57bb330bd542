import type { Bank, BankPlace, Build, Enclosure, Leg } from '../enclosure/enclosure.ts';
import { nearness } from '../enclosure/hearing.ts';
import { bankInstallation } from '../enclosure/installation.ts';
import { bankIn, bankStage } from '../enclosure/stages.ts';
import type { Decibels } from '../quantities/dimensions.ts';
import { bankCloseness } from './bank-closeness.ts';
import { type PlacedBank, placedBank } from './bank-effort.ts';
import type { LegBank } from './leg-cost.ts';

/** What stands in the bank places of a leg: one list of options per place, in stream order. */
export type LegBanks = readonly (readonly (LegBank | null)[])[];

/** Banks compiled so far. */
export interface BankBook {
  /** By place, option and installation term: those that differ only in what stands far from them are the same. */
  readonly placed: Map<string, PlacedBank>;
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

function compiledBanks(enclosure: Enclosure, elements: Build, leg: number, book: BankBook): LegBanks {
  const plan = enclosure.legs[leg] as Leg;
  const { sound } = enclosure.assumptions;
  return bankPlaces(enclosure, plan).map((index) => {
    const place = enclosure.places[index] as BankPlace;
    const stage = plan.through.indexOf(index);
    const near = nearness(enclosure, index);
    return place.options.map((bank, option): LegBank | null => {
      if (bank === null) return null;
      const installation = leastInstallation(enclosure, elements, leg, stage, place, bank);
      const key = `${index}/${option}/${installation}`;
      const placed = book.placed.get(key) ?? placedBank(bank, installation, near, sound);
      book.placed.set(key, placed);
      return {
        closeness: bankCloseness(enclosure, elements, plan, stage, bank),
        derating: mildestDerating(enclosure, elements, plan, stage, bank),
        placed,
      };
    });
  });
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
