import { describe, expect, it } from 'vitest';
import { readCatalogs, readScenario } from '../../src/index.ts';
import { spaceSize } from '../../src/search/space.ts';
import { implausible } from '../catalog/plausible-bounds.ts';
import { familyOf } from '../catalog/written-fan.ts';
import { inventCatalog } from './invented-catalog.ts';
import { filesOf, ladder, largeSpaces, type SpacePlan, spaceOf } from './spaces.ts';

function read(plan: SpacePlan) {
  const files = filesOf(plan);
  const { scenario } = spaceOf(plan);
  const catalog = readCatalogs(
    [...files].filter(([path]) => path !== scenario).map(([file, text]) => ({ file, text })),
  );
  if (!catalog.ok) throw new Error(catalog.problems[0]?.message);
  const outcome = readScenario(scenario, files.get(scenario) ?? '', catalog.fans);
  if (!outcome.ok) throw new Error(outcome.problems[0]?.message);
  return outcome.enclosure;
}

const smaller = [...ladder.filter(({ builds }) => builds < 1e9), ...largeSpaces.slice(0, 1)];

describe('generated spaces', () => {
  // Derived: options of the places, multiplied by hand in the plan.
  it.each(smaller.map((plan) => ({ name: plan.name, plan })))(
    '$name reads and is as large as planned',
    ({ plan }) => {
      expect(spaceSize(read(plan))).toBe(plan.builds);
    },
  );

  it('have the sizes they are named for', () => {
    ladder.forEach(({ builds }, index) => {
      expect(Math.log10(builds), String(index + 3)).toBeCloseTo(index + 3, 0);
    });
    expect(largeSpaces.map(({ builds }) => Math.round(Math.log10(builds)))).toEqual([7, 10, 12]);
  });

  // The same bounds as for the shipped fans; their sources stand beside them.
  it('hold plausible fans only, and say that they are invented', () => {
    const files = inventCatalog({ seed: 7, sizes: { 80: 90, 92: 90 }, strangers: 20 });
    for (const { name, text } of files) {
      expect(text.startsWith('# Every figure in this file is invented')).toBe(true);
      for (const fan of familyOf(name, text).fans) expect(implausible(fan), fan.id).toEqual([]);
    }
  });

  it('are the same every time, and larger catalogs hold the smaller ones', () => {
    const entries = (fans: number): readonly string[] =>
      inventCatalog({ seed: 7, sizes: { 80: fans }, strangers: 0 }).flatMap(({ text }) =>
        text
          .split('\n  - ')
          .slice(1)
          .map((entry) => entry.trim()),
      );
    const [few, many] = [entries(20), entries(60)];
    expect(few).toHaveLength(20);
    expect(many).toEqual(expect.arrayContaining([...few]));
  });
});
