import { describe, expect, it } from 'vitest';
import { beginSearch } from '../../src/search/search.ts';
import { levelOf } from '../../src/sound/levels.ts';
import { shippedScenario } from '../scenarios/shipped.ts';

// Reference: the finished search, which knows what the stopped one left out.
describe('the gap of a search that is stopped', () => {
  it.each([
    ['open-amplifier', 2],
    ['wall-cabinet', 3],
  ])('is never too small, whenever that is: %s', (name, top) => {
    const options = { top, gap: 0.01 };
    const whole = beginSearch(shippedScenario(name), options);
    while (whole.step());
    const search = beginSearch(shippedScenario(name), options);
    let told = 0;
    while (search.step()) {
      const { gap } = search.counts();
      const found = search.best();
      const last = found[top - 1];
      if (!last || !Number.isFinite(gap)) continue;
      told += 1;
      const known = new Set(found.map(({ build }) => build.join()));
      for (const { build, energy } of whole.best()) {
        if (!known.has(build.join())) expect(levelOf(last.energy) - levelOf(energy)).toBeLessThanOrEqual(gap);
      }
    }
    expect(told).toBeGreaterThan(0);
  });
});
