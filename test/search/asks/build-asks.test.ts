import { describe, expect, it } from 'vitest';
import type { Asks } from '../../../src/enclosure/asks.ts';
import type { Build, Enclosure } from '../../../src/enclosure/enclosure.ts';
import { assemble, plantOf } from '../../../src/enclosure/machine.ts';
import type { SearchOptions } from '../../../src/search/hunt.ts';
import { rank } from '../../../src/search/rank.ts';
import { levelOf } from '../../../src/sound/levels.ts';
import { type Found, QUICK, quietestByForce, rankedByForce, survives } from '../brute-force.ts';
import { buildsOf } from '../builds.ts';
import { type Probe, probeOf } from '../probe.ts';
import { asking, bankPlacesOf, banksOf, onOneHeader, pricedEnclosure } from './priced.ts';

/** Gap of the search and rounding of both [dB]. */
const AGREED = 0.02;
const ALL = 1000;

const enclosures = [12, 21, 24, 1003, 2005].map((seed) => {
  const banks = seed > 1000 ? 2 : 1;
  const enclosure = pricedEnclosure(seed, { banks, mostBuilds: 6, mostDuties: 2, simple: seed > 2000 });
  return { seed, enclosure, forced: rankedByForce(enclosure, ALL, QUICK) };
});

const price = (enclosure: Enclosure, build: Build): number =>
  banksOf(enclosure, build).reduce((sum, { fan, count }) => sum + count * (fan.price ?? 1e9), 0);
const power = (enclosure: Enclosure, build: Build): number =>
  banksOf(enclosure, build).reduce((sum, { fan, count }) => sum + count * fan.power, 0);
const models = (enclosure: Enclosure, build: Build): number =>
  new Set(banksOf(enclosure, build).map(({ fan }) => fan.id)).size;
const depth = (enclosure: Enclosure, build: Build): number =>
  Math.max(
    ...enclosure.legs.map(({ through }) =>
      through.reduce((sum, index) => {
        const place = enclosure.places[index];
        const bank = place?.kind === 'bank' ? place.options[build[index] as number] : null;
        return sum + (bank?.fan.depth ?? 0);
      }, 0),
    ),
  );

/** Middle of what the adequate builds have. */
function middle(forced: readonly Found[], of: (build: Build) => number): number {
  const values = forced.map(({ build }) => of(build)).sort((a, b) => a - b);
  return values[values.length >> 1] ?? 0;
}

/** The levels of the list, and those of the adequate builds that do what is asked by their own arithmetic. */
function levels(
  enclosure: Enclosure,
  forced: readonly Found[],
  keeps: (found: Found) => boolean,
  options: Partial<SearchOptions> = {},
) {
  const ranking = rank(enclosure, { top: ALL, gap: 0.01, ...options });
  const total = ranking.count.ruledOut.reduce((sum, { builds }) => sum + builds, 0);
  expect(ranking.count.solved + total).toBe(ranking.count.space);
  const found = ranking.rows.map(({ outcome }) => outcome.level).sort((a, b) => a - b);
  return { found, expected: forced.filter(keeps).map(({ energy }) => levelOf(energy)) };
}

function expectAlike({ found, expected }: ReturnType<typeof levels>): void {
  expect(found.length).toBe(expected.length);
  found.forEach((level, index) => {
    expect(Math.abs(level - (expected[index] as number))).toBeLessThan(AGREED);
  });
}

// Reference: brute force on lattices of speeds, then the sums of each build by themselves.
describe('builds of which something is asked beside their limits', () => {
  it('are few of many', () => {
    expect(enclosures.filter(({ forced }) => forced.length > 2).length).toBeGreaterThan(2);
  });

  const sums = [
    ['price', price, (most: number): Asks => ({ price: most })],
    ['power at full speed', power, (most: number): Asks => ({ ratedPower: most })],
    ['number of models', models, (most: number): Asks => ({ models: most })],
  ] as const;

  it.each(sums)('are those of brute force whose %s is no more', (_, of, asks) => {
    for (const { enclosure, forced } of enclosures) {
      const most = middle(forced, (build) => of(enclosure, build));
      expectAlike(
        levels(asking(enclosure, asks(most)), forced, ({ build }) => of(enclosure, build) <= most + 1e-9),
      );
    }
  });

  it('are those of brute force whose fans are no deeper in any leg', () => {
    for (const { enclosure, forced } of enclosures) {
      const most = middle(forced, (build) => depth(enclosure, build));
      const depths = enclosure.legs.map((_, leg) => ({ leg, most }));
      const keeps = ({ build }: Found): boolean => depth(enclosure, build) <= most + 1e-9;
      expectAlike(levels(asking(enclosure, { depths }), forced, keeps));
    }
  });

  it('are those of brute force with no more current than a header gives', () => {
    for (const { enclosure, forced } of enclosures.filter(
      ({ enclosure }) => bankPlacesOf(enclosure).length === 1,
    )) {
      const most = middle(forced, (build) => power(enclosure, build));
      const there = onOneHeader(enclosure, { most: most / 12, voltage: 12 });
      expectAlike(levels(there, forced, ({ build }) => power(enclosure, build) <= most + 1e-9));
    }
  });

  it('are those of brute force that are no louder', () => {
    for (const { enclosure, forced } of enclosures) {
      const level = levelOf(forced[forced.length >> 1]?.energy ?? 1) + 0.1;
      const keeps = ({ energy }: Found): boolean => levelOf(energy) <= level;
      expectAlike(levels(asking(enclosure, { level }), forced, keeps));
    }
  });
});

describe('a ranking by price or depth', () => {
  const goals = [
    ['price', price],
    ['depth', depth],
  ] as const;

  // Reference: brute force on lattices of speeds, sorted by the sums of each build.
  it.each(goals)('has the builds of least %s under a cap on the level, ties by level', (by, of) => {
    for (const { enclosure, forced } of enclosures) {
      const level = levelOf(forced[Math.floor(forced.length * 0.7)]?.energy ?? 1) + 0.1;
      const expected = forced
        .filter(({ energy, build }) => levelOf(energy) <= level && of(enclosure, build) < 1e8)
        .map(({ build, energy }) => ({ cost: of(enclosure, build), level: levelOf(energy) }))
        .sort((a, b) => a.cost - b.cost || a.level - b.level);
      const top = 3;
      const ranking = rank(asking(enclosure, { level }), { top, gap: 0.01, by });
      const found = ranking.rows.filter(({ outcome }) => Number.isFinite(outcome.build.price ?? 0));
      expect(
        found.slice(0, expected.length).map(({ outcome }) => of(enclosure, outcome.build.options)),
      ).toEqual(expected.slice(0, top).map(({ cost }) => cost));
      found.slice(0, expected.length).forEach(({ outcome }, index) => {
        expect(Math.abs(outcome.level - (expected[index]?.level ?? 0))).toBeLessThan(AGREED);
      });
    }
  });
});

describe('a ranking by the level in one duty', () => {
  // Reference: brute force on lattices of speeds, duty by duty.
  it('has the quietest builds there of those that all duties leave', () => {
    const cases = [51, 52, 53, 54, 55, 56]
      .map((seed) => ({ enclosure: pricedEnclosure(seed, { banks: 1, mostBuilds: 3, mostDuties: 2 }) }))
      .filter(({ enclosure }) => enclosure.duties.length === 2);
    expect(cases.length).toBeGreaterThan(1);
    for (const { enclosure } of cases) {
      const plant = plantOf(enclosure);
      for (const [index, duty] of enclosure.duties.entries()) {
        const ranking = rank(enclosure, { top: 2, gap: 0.01, duty: duty.id });
        const levels = buildsOf(enclosure).flatMap((build) => {
          const probes = enclosure.duties.map((each) => probeOf(assemble(plant, build), each));
          const lasts = probes.every((probe, at) => at === index || survives(probe, QUICK));
          const best = quietestByForce(probes[index] as Probe, QUICK, Number.POSITIVE_INFINITY);
          return best && lasts ? [levelOf(best.energy)] : [];
        });
        levels.sort((a, b) => a - b);
        const found = ranking.rows.map(({ outcome }) => outcome.duties[index]?.level ?? 0);
        expect(found.length).toBe(Math.min(2, levels.length));
        found
          .toSorted((a, b) => a - b)
          .forEach((level, at) => {
            expect(level).toBeLessThan((levels[at] as number) + AGREED);
            expect(level).toBeGreaterThan((levels[at] as number) - 0.1);
          });
      }
    }
  });
});
