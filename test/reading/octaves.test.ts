import { describe, expect, it } from 'vitest';
import type { Rating } from '../../src/fan/fan-model.ts';
import { readCatalog } from '../../src/reading/catalog-file.ts';
import { compileCatalog, loadCompiled } from '../../src/reading/compiled-catalog.ts';
import { changed, unmarked } from './marked.ts';
import { FAMILY } from './samples.ts';

const RATING = 'noise: [{ level: 20 dB(A) }]';
// Invented. A-weighted sum computed with Python from the table of IEC 61672-1: 29.0777 dB(A).
const OCTAVES = '24 27 29 28 24 19 13 6 dB';
const SUM = 29.0777;

const read = (rating: string) => readCatalog('slim.yaml', changed(FAMILY, RATING, `noise: [${rating}]`));

function ratingOf(written: string): Rating {
  const outcome = read(written);
  const rating = outcome.ok ? outcome.fans[2]?.ratings[0] : undefined;
  if (!rating) throw new Error(JSON.stringify(outcome));
  return rating;
}

describe('octaves of a rating', () => {
  it('are A-weighted and summed where no level is given', () => {
    const rating = ratingOf(`{ octaves: ${OCTAVES} }`);
    expect(rating.level).toBeCloseTo(SUM, 3);
    expect(rating.octaves).toEqual([24, 27, 29, 28, 24, 19, 13, 6]);
  });

  it('stand beside the level given, which counts', () => {
    const rating = ratingOf(`{ level: 28.5 dB(A), octaves: ${OCTAVES} }`);
    expect(rating.level).toBe(28.5);
    expect(rating.octaves).toEqual([24, 27, 29, 28, 24, 19, 13, 6]);
  });

  it('come to 1 m in the free field as the level does', () => {
    // Derived: spherical spreading, 20 lg 0.5 = -6.0206 dB; over a plane 3.0103 dB less again.
    const near = ratingOf(`{ octaves: ${OCTAVES}, distance: 0.5 m }`);
    expect(near.level).toBeCloseTo(SUM - 6.0206, 3);
    expect(near.octaves?.[2]).toBeCloseTo(29 - 6.0206, 4);
    const flat = ratingOf(`{ octaves: ${OCTAVES}, distance: 1 m, field: half }`);
    expect(flat.level).toBeCloseTo(SUM - 3.0103, 3);
    // Derived: 10 lg 4π = 10.9921 dB from power to pressure, 3 dB from declared to mean.
    const power = ratingOf(`{ power-level: 28.3 dB(A), declared: true, octaves: ${OCTAVES} }`);
    expect(power.level).toBeCloseTo(28.3 - 3 - 10.9921, 3);
    expect(power.octaves?.[0]).toBeCloseTo(24 - 3 - 10.9921, 3);
  });

  it('survive the compiled form of a catalog', () => {
    const outcome = read(`{ octaves: ${OCTAVES} }`);
    if (!outcome.ok) throw new Error('the family is right');
    const loaded = loadCompiled(compileCatalog(outcome, 'x'), 'x');
    expect(loaded?.fans[2]?.ratings).toEqual(outcome.fans[2]?.ratings);
  });

  it.each([
    ['seven levels', '{ octaves: ¦24 27 29 28 24 19 13 dB }', { code: 'wrong-value' }],
    ['a ninth level', '{ octaves: ¦24 27 29 28 24 19 13 6 2 dB }', { code: 'wrong-value' }],
    [
      'no unit',
      '{ octaves: ¦24 27 29 28 24 19 13 6 }',
      { code: 'wrong-value', suggestion: '24 27 29 28 24 19 13 6 dB' },
    ],
    ['a level out of this world', '{ octaves: ¦24 27 129 28 24 19 13 6 dB }', { code: 'out-of-range' }],
    [
      'a sum that is not the level',
      `{ level: 26 dB(A), octaves: ¦${OCTAVES} }`,
      { code: 'conflict', found: '29.1 dB(A) in sum', expected: expect.stringContaining('26 dB(A)') },
    ],
    [
      'a sum that is not the power level',
      `{ power-level: 30.5 dB(A), octaves: ¦${OCTAVES} }`,
      { code: 'conflict', found: '29.1 dB(A) in sum' },
    ],
    ['neither level nor octaves', '¦{ speed: 1800 rpm }', { code: 'wrong-value' }],
    ['a field that is none', `{ level: 20 dB(A), field: ¦hall }`, { code: 'wrong-value' }],
  ])('%s is a problem in its place', (_, rating, expected) => {
    const marked = unmarked(changed(FAMILY, RATING, `noise: [${rating}]`));
    const outcome = readCatalog('slim.yaml', marked.text);
    const problems = outcome.ok ? [] : outcome.problems;
    expect(problems).toMatchObject([expected]);
    expect(problems.map(({ line, column }) => [line, column])).toEqual(marked.places);
  });
});
