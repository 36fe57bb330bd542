import type { Bank, Build, Enclosure, LostThere, Place } from './enclosure.ts';

function lose(bank: Bank | null, { dead, missing, place }: LostThere): Bank {
  const turning = (bank?.count ?? 0) - dead - missing;
  const whole = [dead, missing].every((count) => Number.isInteger(count) && count >= 0);
  if (bank === null || turning < 0 || !whole) {
    throw new RangeError(`place ${place} cannot lose ${dead} dead and ${missing} missing fans`);
  }
  const { dead: before = 0, missing: gone = 0 } = bank.lost ?? {};
  const lost = { dead: dead + before, missing: missing + gone };
  return lost.dead + lost.missing > 0 ? { ...bank, count: turning, lost } : bank;
}

function placeWithout(place: Place | undefined, option: number | undefined, lost: LostThere): Place {
  if (place?.kind !== 'bank' || option === undefined) {
    throw new RangeError(`place ${lost.place} takes no fans`);
  }
  return { ...place, options: place.options.with(option, lose(place.options[option] ?? null, lost)) };
}

/**
 * The scenario as it is when fans of a build have died or been taken out: in their places the build's option is the
 * bank with those lost. All other options stay, so the same option numbers hold.
 *
 * @param enclosure the scenario
 * @param build one option index per place
 * @param lost how many fans of which places, dead (they stand still) or missing (their holes are open)
 * @throws RangeError if a place does not hold that many fans in the build
 */
export function withLostFans(enclosure: Enclosure, build: Build, lost: readonly LostThere[]): Enclosure {
  let places = enclosure.places;
  for (const one of lost) {
    places = places.with(one.place, placeWithout(places[one.place], build[one.place], one));
  }
  return { ...enclosure, places };
}
