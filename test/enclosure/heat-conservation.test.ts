import { describe, expect, it } from 'vitest';
import { seededRandom } from '../airway/seeded-random.ts';
import { judge } from './heat-laws.ts';
import { randomHeated } from './random-heat.ts';

const SEED = 20_000;
/** As many as take a second or two; `npm run fuzz:heat` takes 20 000. */
const COUNT = 1500;

describe(`${COUNT} random enclosures with fins, chambers, walls, slopes and exhaust that comes back`, () => {
  const random = seededRandom(SEED);
  const all = Array.from({ length: COUNT }, () => {
    const { machine, ratios } = randomHeated(random);
    return judge(machine, ratios);
  });
  const solved = all.filter(({ failure }) => failure === null);
  const most = (values: readonly number[]) => values.reduce((worst, value) => Math.max(worst, value), 0);

  it('nearly all have an answer; the rest run away, or a little flow turns round with its own heat', () => {
    // Found by running, with some room; no source.
    expect(solved.length).toBeGreaterThan(0.88 * COUNT);
  });

  it('keep all mass', () => {
    // Conservation of mass.
    expect(most(solved.map(({ missed }) => missed.mass))).toBeLessThan(1e-10);
  });

  it('keep all energy, also where hardly anything moves', () => {
    // Conservation of energy.
    expect(most(solved.map(({ missed }) => missed.energy))).toBeLessThan(1e-6);
    // Beyond 1000 K the rounding of a flow that hardly moves is watts (assumption); how many stay below was found by running.
    const sane = solved.filter(({ hottest }) => hottest < 1000);
    expect(sane.length).toBeGreaterThan(0.4 * COUNT);
    expect(most(sane.map(({ missed }) => missed.budget))).toBeLessThan(1e-6);
  });

  it('make no entropy vanish where air mixes', () => {
    // Second law.
    expect(most(solved.map(({ missed }) => missed.entropy))).toBeLessThan(1e-8);
  });

  it('have no part or probe colder than the air that enters its fins or surrounds it', () => {
    // Second law.
    expect(most(solved.map(({ missed }) => missed.cold))).toBeLessThan(1e-12);
  });

  it('have no fins that beat the heat balance of their air', () => {
    // Derived: R ≥ 1/(ṁ·cp), because air cannot leave warmer than the base.
    expect(most(solved.map(({ missed }) => missed.floor))).toBeLessThan(1e-9);
  });
});
