import { describe, expect, it } from 'vitest';
import type { Enclosure, Part } from '../../src/enclosure/enclosure.ts';
import { plantOf } from '../../src/enclosure/machine.ts';
import { fasterIsCooler } from '../../src/search/monotone-airway.ts';
import { overclaims, worstWarming } from './bound-checks.ts';
import { QUICK } from './brute-force.ts';
import { type Random, seeded } from './random.ts';
import { randomEnclosure, type Size } from './random-enclosure.ts';

const SIZES: readonly Size[] = [
  { banks: 1, mostBuilds: 4, mostDuties: 2 },
  { banks: 2, mostBuilds: 2, mostDuties: 1, simple: true },
];

/** Warming below this is rounding of the flows and temperatures [K]. */
const ROUNDING = 1e-6;

/** Limits were drawn for bare parts: a base and leakage make them warmer by some such amount [K]. */
const WARMER = 12;

function dressed(random: Random, part: Part): Part {
  const onFins = part.seat.kind === 'fins';
  const base = {
    footprint: { width: 0.02, height: 0.02 },
    plate: { width: 0.06, height: 0.05 },
    thickness: random.between(0.001, 0.006),
    conductivity: 200,
  };
  return {
    ...part,
    ...(random.chance(0.5)
      ? { slope: 0, leakage: { power: part.power * random.between(0.05, 0.4), growth: 0.02 } }
      : {}),
    ...(onFins && random.chance(0.6) ? { base } : {}),
    ...(random.chance(0.4) ? { paste: { thickness: 5e-5, conductivity: 4, area: 3e-4 } } : {}),
    limits: part.limits.map(({ of, temperature }) => ({ of, temperature: temperature + WARMER })),
  };
}

/** A random enclosure with bases, paste, leakage and walls that let heat through. */
function dressedEnclosure(seed: number): Enclosure {
  const random = seeded(seed);
  const bare = randomEnclosure(seed, SIZES[seed % SIZES.length] as Size);
  const skins = bare.chambers
    .slice(1)
    .map((_, index) => ({ chamber: index + 1, conductance: random.between(0, 2), share: 0.5 }));
  return { ...bare, parts: bare.parts.map((part) => dressed(random, part)), skins };
}

const enclosures = Array.from({ length: 30 }, (_, index) => ({
  seed: 7001 + index,
  enclosure: dressedEnclosure(7001 + index),
}));

describe('with bases, paste, leakage and walls', () => {
  // Reference: brute force on lattices of speeds, which can only be louder than the truth.
  it.each(enclosures)(
    'bounds promise no more than brute force reaches, seed $seed',
    ({ seed, enclosure }) => {
      expect(overclaims(enclosure, fasterIsCooler(plantOf(enclosure)), QUICK, seed)).toEqual([]);
    },
  );

  // Reference: passes at random speeds with one speed raised, no heat of the fans and no recirculation.
  it('a faster fan never warms a part where that is claimed', () => {
    const claimed = enclosures.filter(({ enclosure }) => fasterIsCooler(plantOf(enclosure)));
    expect(claimed.length).toBeGreaterThan(5);
    const broken = claimed.flatMap(({ seed, enclosure }) => {
      const warming = worstWarming(enclosure, seed, 12);
      return warming && warming.by > ROUNDING ? [{ seed, warming }] : [];
    });
    expect(broken).toEqual([]);
  });
});
