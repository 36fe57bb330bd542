import { describe, expect, it } from 'vitest';
import type { Enclosure } from '../../src/enclosure/enclosure.ts';
import { plantOf } from '../../src/enclosure/machine.ts';
import { fasterIsCooler } from '../../src/search/monotone-airway.ts';
import { overclaims } from './bound-checks.ts';
import { QUICK } from './brute-force.ts';
import { compare, inWords } from './comparison.ts';
import { seeded } from './random.ts';
import { randomEnclosure, type Size } from './random-enclosure.ts';

/** An enclosure whose places lie at random distances from the listener, some with directivity, some extremely near. */
function scattered(seed: number, size: Size): Enclosure {
  const enclosure = randomEnclosure(seed, size);
  const random = seeded(seed + 77);
  const places = enclosure.places.map((place) => {
    const distance = random.chance(0.1) ? 0.02 : random.spread(0.3, 4);
    const directivity = random.chance(0.5) ? random.between(-6, 6) : 0;
    return random.chance(0.8) ? { ...place, heard: { distance, directivity } } : place;
  });
  const { sound } = enclosure.assumptions;
  const attenuation = random.chance(0.3) ? random.between(0, 5) : 0;
  const assumptions = { ...enclosure.assumptions, sound: { ...sound, attenuation } };
  return { ...enclosure, places, assumptions };
}

const SIZES: readonly Size[] = [
  { banks: 1, mostBuilds: 4, mostDuties: 2 },
  { banks: 2, mostBuilds: 3, mostDuties: 1, simple: true },
  { banks: 2, mostBuilds: 2, mostDuties: 1 },
];

const seeds = (first: number, count: number) => Array.from({ length: count }, (_, index) => first + index);
const sizeOf = (seed: number) => SIZES[seed % SIZES.length] as Size;

describe('sources at distances of their own', () => {
  // Reference: brute force on lattices of speeds, which can only be louder than the truth.
  it.each(seeds(7001, 9))('bounds promise no more than brute force reaches, seed %d', (seed) => {
    const enclosure = scattered(seed, sizeOf(seed));
    const monotone = fasterIsCooler(plantOf(enclosure));
    expect(overclaims(enclosure, monotone, QUICK, seed)).toEqual([]);
  });

  // Reference: as above; the search must find what trying everything finds.
  it.each(seeds(7101, 9))('the quietest builds are those of brute force, seed %d', (seed) => {
    const { disagreements } = compare(scattered(seed, sizeOf(seed)), 2, QUICK);
    expect(disagreements.map(inWords)).toEqual([]);
  });
});
