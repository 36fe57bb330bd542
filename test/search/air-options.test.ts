import { describe, expect, it } from 'vitest';
import type { Bank, Enclosure, Place } from '../../src/enclosure/enclosure.ts';
import { plantOf } from '../../src/enclosure/machine.ts';
import { fasterIsCooler } from '../../src/search/monotone-airway.ts';
import { overclaims } from './bound-checks.ts';
import { QUICK } from './brute-force.ts';
import { type Random, seeded } from './random.ts';
import { randomEnclosure, type Size } from './random-enclosure.ts';

const SIZES: readonly Size[] = [
  { banks: 1, mostBuilds: 4, mostDuties: 1 },
  { banks: 2, mostBuilds: 2, mostDuties: 1, simple: true },
];

/** What is done to a random enclosure. */
type Change = (enclosure: Enclosure, random: Random) => Enclosure;

function withPlaces(enclosure: Enclosure, change: (place: Place) => Place): Enclosure {
  return { ...enclosure, places: enclosure.places.map(change) };
}

/** Walls and neighbours as close as they get. */
const crowded: Change = (enclosure, random) =>
  withPlaces(enclosure, (place) =>
    place.kind === 'bank'
      ? {
          ...place,
          inletGap: random.chance(0.5) ? 0 : place.inletGap,
          outletGap: random.chance(0.5) ? 0 : place.outletGap,
          inletWall: random.between(0.008, 0.05),
          outletWall: random.between(0.008, 0.05),
          ...(random.chance(0.5) ? { inletBar: random.between(0, 0.03) } : {}),
          ...(random.chance(0.5) ? { outletBar: random.between(0, 0.03) } : {}),
        }
      : place,
  );

/** Fans that turn one way, the other way, or nobody knows how, as close as they get. */
const turning: Change = (enclosure, random) => {
  const turned = (bank: Bank | null): Bank | null => {
    const turns = [undefined, 'clockwise', 'anticlockwise'] as const;
    const turn = turns[Math.floor(random.between(0, 3))];
    return bank && turn ? { ...bank, fan: { ...bank.fan, turns: turn } } : bank;
  };
  return withPlaces(enclosure, (place) =>
    place.kind === 'bank'
      ? { ...place, inletGap: 0, outletGap: 0, options: place.options.map(turned) }
      : place,
  );
};

function loseOne(bank: Bank | null, random: Random): Bank | null {
  if (bank === null || bank.count < 2) return bank;
  const dead = random.chance(0.5);
  return { ...bank, count: bank.count - 1, lost: { dead: dead ? 1 : 0, missing: dead ? 0 : 1 } };
}

/** One fan lost in every bank of two. */
const broken: Change = (enclosure, random) =>
  withPlaces(enclosure, (place) =>
    place.kind === 'bank' ? { ...place, options: place.options.map((bank) => loseOne(bank, random)) } : place,
  );

/** Legs that rise and fall. */
const tall: Change = (enclosure, random) => ({
  ...enclosure,
  legs: enclosure.legs.map((leg) => ({ ...leg, rise: random.between(-0.2, 0.4) })),
});

const seeds = Array.from({ length: 9 }, (_, index) => 7001 + index);

describe.each([
  { name: 'with walls, bars and neighbours close to the fans', change: crowded },
  { name: 'with fans that turn either way', change: turning },
  { name: 'with dead and missing fans', change: broken },
  { name: 'with legs that rise and fall', change: tall },
])('the bounds of the search $name', ({ change }) => {
  // Reference: brute force on lattices of speeds, which can only be louder than the truth.
  it.each(seeds)('promise no more than brute force reaches, seed %d', (seed) => {
    const size = SIZES[seed % SIZES.length] as Size;
    const enclosure = change(randomEnclosure(seed, size), seeded(seed));
    const monotone = fasterIsCooler(plantOf(enclosure));
    expect(overclaims(enclosure, monotone, QUICK, seed)).toEqual([]);
  });
});
