import { describe, expect, it } from 'vitest';
import type { Enclosure } from '../../../src/enclosure/enclosure.ts';
import { isFailed } from '../../../src/search/build-outcome.ts';
import { rankingOf } from '../../../src/search/rank.ts';
import { beginSearch } from '../../../src/search/search.ts';
import { whyNot } from '../../../src/search/why/why-not.ts';
import { levelOf } from '../../../src/sound/levels.ts';
import { QUICK, rankedByForce } from '../brute-force.ts';
import { buildsOf } from '../builds.ts';
import { asking, banksOf, pricedEnclosure } from './priced.ts';

const AGREED = 0.02;

function reasonsFor(enclosure: Enclosure) {
  const search = beginSearch(enclosure, { top: 2, gap: 0.01 });
  while (search.step());
  const { rows } = rankingOf(search);
  const told = buildsOf(enclosure).map((options) => whyNot(search, rows, { id: options.join('-'), options }));
  return { rows, told };
}

describe('why a build is not the first', () => {
  const price = 9;
  const cases = [12, 15, 21, 1003].map((seed) => {
    const plain = pricedEnclosure(seed, { banks: seed > 1000 ? 2 : 1, mostBuilds: 6, mostDuties: 1 });
    return { plain, forced: rankedByForce(plain, 1000, QUICK), ...reasonsFor(asking(plain, { price })) };
  });

  // Reference: brute force on lattices of speeds over all builds.
  it('is a limit where brute force finds no adequate speeds, else a level', () => {
    let inadequate = 0;
    for (const { told, forced } of cases) {
      for (const { name, build, level } of told) {
        const found = forced.find((each) => each.build.join('-') === name);
        expect(level !== undefined).toBe(found !== undefined);
        if (found && level !== undefined) {
          expect(Math.abs(level - levelOf(found.energy))).toBeLessThan(AGREED);
        } else if (!isFailed(build)) {
          const broken = build.duties.some(
            ({ tightest, failures }) => failures.length > 0 || (tightest && tightest.margin < 1e-3),
          );
          expect(broken).toBe(true);
          inadequate += 1;
        }
      }
    }
    expect(inadequate).toBeGreaterThan(0);
  });

  it('is told with what is asked and not so', () => {
    let broken = 0;
    for (const { told, plain } of cases) {
      for (const { broken: found, build } of told) {
        if (isFailed(build)) continue;
        const sum = banksOf(plain, build.build.options).reduce(
          (total, { fan, count }) => total + count * (fan.price ?? Number.POSITIVE_INFINITY),
          0,
        );
        const expected = sum > price ? [{ reason: 'dearer than asked', found: sum, most: price }] : [];
        expect(found).toEqual(expected);
        broken += expected.length;
      }
    }
    expect(broken).toBeGreaterThan(0);
  });

  it('is nothing for the first itself, and a difference for the others', () => {
    for (const { rows, told } of cases) {
      const [first] = rows;
      if (!first) continue;
      const winner = told.find(({ name }) => name === first.outcome.build.options.join('-'));
      expect(winner?.row).toBe(1);
      expect(Math.abs(winner?.more?.level ?? 1)).toBeLessThan(1e-3);
      for (const { level, more } of told) {
        if (level === undefined) continue;
        expect(more?.level).toBeCloseTo(level - first.outcome.level, 9);
      }
    }
  });
});
