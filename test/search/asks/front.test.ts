import { describe, expect, it } from 'vitest';
import { front } from '../../../src/search/front/front.ts';
import { levelOf } from '../../../src/sound/levels.ts';
import { QUICK, rankedByForce } from '../brute-force.ts';
import { banksOf, pricedEnclosure } from './priced.ts';

/** Gap of the search and rounding of both [dB]. */
const AGREED = 0.02;

const enclosures = [12, 1003, 2005].map((seed) => {
  const banks = seed > 1000 ? 2 : 1;
  const enclosure = pricedEnclosure(seed, { banks, mostBuilds: 6, mostDuties: 1, simple: seed > 2000 });
  return { seed, enclosure };
});

const options = { gap: 0.01, most: 50, step: 1.5 } as const;

describe('how noise trades against price', () => {
  // Reference: brute force on lattices of speeds over all builds, and the sums of their prices.
  it('has the builds that none beats in both, and all of them', () => {
    let rows = 0;
    for (const { enclosure } of enclosures) {
      const found = front(enclosure, { ...options, against: 'price' });
      const all = rankedByForce(enclosure, 1000, QUICK)
        .map(({ build, energy }) => ({
          level: levelOf(energy),
          price: banksOf(enclosure, build).reduce(
            (sum, { fan, count }) => sum + count * (fan.price ?? 1e9),
            0,
          ),
        }))
        .filter(({ price }) => price < 1e8);
      expect(found.complete).toBe(true);
      for (const row of found.rows) {
        const beaten = all.filter(({ level, price }) => price <= row.value && level < row.level - AGREED);
        expect(beaten).toEqual([]);
      }
      for (const { level, price } of all) {
        const by = found.rows.filter((row) => row.value <= price && row.level <= level + AGREED);
        expect(by.length).toBeGreaterThan(0);
      }
      found.rows.slice(1).forEach((row, index) => {
        expect(row.value).toBeLessThan(found.rows[index]?.value ?? 0);
        expect(row.level).toBeGreaterThan(found.rows[index]?.level ?? 0);
      });
      rows += found.rows.length;
    }
    expect(rows).toBeGreaterThan(enclosures.length);
  });

  it('is cut where asked, and says so', () => {
    const long = enclosures.find(
      ({ enclosure }) => front(enclosure, { ...options, against: 'price' }).rows.length > 1,
    );
    if (!long) throw new Error('no front has two rows');
    const cut = front(long.enclosure, { ...options, against: 'price', most: 1 });
    expect(cut.rows.length).toBe(1);
    expect(cut.complete).toBe(false);
  });
});

describe('a front of what is free', () => {
  it('has one row and ends', () => {
    const [{ enclosure }] = enclosures as [(typeof enclosures)[number]];
    const places = enclosure.places.map((place) =>
      place.kind === 'bank'
        ? {
            ...place,
            options: place.options.map((bank) => bank && { ...bank, fan: { ...bank.fan, price: 0 } }),
          }
        : place,
    );
    const found = front({ ...enclosure, places }, { ...options, against: 'price' });
    expect(found.rows.map(({ value }) => value)).toEqual([0]);
    expect(found.complete).toBe(true);
  });
});

describe('how noise trades against margin', () => {
  // Reference: brute force on lattices of speeds with the margin of each row asked of every limit.
  it('has the quietest build for the margin of each row', () => {
    let rows = 0;
    for (const { enclosure } of enclosures.slice(0, 2)) {
      const found = front(enclosure, { ...options, against: 'margin', most: 3 });
      for (const { level, value } of found.rows.filter((row) => Number.isFinite(row.value))) {
        const [best] = rankedByForce({ ...enclosure, margin: value - 1e-4 }, 1, QUICK);
        expect(Math.abs(levelOf(best?.energy ?? 0) - level)).toBeLessThan(AGREED);
        rows += 1;
      }
      found.rows.slice(1).forEach((row, index) => {
        expect(row.value).toBeGreaterThanOrEqual((found.rows[index]?.value ?? 0) + options.step - 1e-3);
        expect(row.level).toBeGreaterThan(found.rows[index]?.level ?? 0);
      });
    }
    expect(rows).toBeGreaterThan(2);
  });
});
