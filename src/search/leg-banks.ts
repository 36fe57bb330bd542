import type { Bank, BankPlace, Build, Enclosure, Leg } from '../enclosure/enclosure.ts';
import { nearness } from '../enclosure/hearing.ts';
import { bankInstallation } from '../enclosure/installation.ts';
import { bankIn, bankStage } from '../enclosure/stages.ts';
import type { Decibels } from '../quantities/dimensions.ts';
import { bankCloseness } from './bank-closeness.ts';
import { type PlacedBank, placedBank } from './bank-effort.ts';
import type { LegBank } from './leg-cost.ts';

/** Banks compiled with their surroundings, by place, option and installation term. */
export type BankBook = Map<string, PlacedBank>;

/** Places of a leg that take fans, in stream order. */
export function bankPlaces(enclosure: Enclosure, leg: Leg): readonly number[] {
  return leg.through.filter((place) => enclosure.places[place]?.kind === 'bank');
}

/** Builds that differ from one in which of the leg's other bank places are filled. */
function fillings(enclosure: Enclosure, build: Build, leg: Leg, place: number): readonly Build[] {
  let variants: Build[] = [build];
  for (const other of bankPlaces(enclosure, leg)) {
    const there = enclosure.places[other];
    if (other === place || there?.kind !== 'bank') continue;
    const empty = there.options.indexOf(null);
    const filled = there.options.findIndex((option) => option !== null);
    const choices = [empty, filled].filter((option) => option >= 0);
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

/**
 * Every option of every bank place of a leg, ready for bounds; `null` for an empty place.
 *
 * @param enclosure the scenario
 * @param elements build of which only the elements matter
 * @param leg index of the leg
 * @param book banks compiled so far: those that differ only in what stands far from them are the same
 * @returns one list of options per bank place of the leg, in stream order
 */
export function legBanks(
  enclosure: Enclosure,
  elements: Build,
  leg: number,
  book: BankBook,
): readonly (readonly (LegBank | null)[])[] {
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
      const placed = book.get(key) ?? placedBank(bank, installation, near, sound);
      book.set(key, placed);
      return {
        closeness: bankCloseness(enclosure, elements, plan, stage, bank),
        derating: mildestDerating(enclosure, elements, plan, stage, bank),
        placed,
      };
    });
  });
}
