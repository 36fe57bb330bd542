import { describe, expect, it } from 'vitest';
import { type CatalogOutcome, readCatalog, readCatalogs } from '../../src/reading/catalog-file.ts';
import { SOUND_ASSUMPTIONS } from '../../src/sound/sound-assumptions.ts';
import { changed } from './marked.ts';
import { FAMILY } from './samples.ts';

function fansIn(outcome: CatalogOutcome) {
  return outcome.ok ? outcome.fans : [];
}

function lineOf(piece: string): number {
  return FAMILY.split('\n').findIndex((line) => line.includes(piece)) + 1;
}

function problemsIn(outcome: CatalogOutcome) {
  return outcome.ok ? [] : outcome.problems;
}

describe('a good family', () => {
  const fans = fansIn(readCatalog('slim.yaml', FAMILY));
  const [slim, box, quiet] = fans;

  it('gives its fans in SI, in order', () => {
    expect(fans.map(({ id }) => id)).toEqual(['s92-15-a', 'f80-25-b', 's92-16-c']);
    expect(slim).toMatchObject({
      size: 0.092,
      depth: 0.015,
      holdFloor: 0.25,
      startFloor: 0.3,
      power: 1.4,
      price: 12,
      blades: 7,
      provenance: 'invented',
    });
    // 2200 revolutions in 60 s; 52 m³ in 3600 s.
    expect(slim?.fullSpeed).toBeCloseTo(2200 / 60, 12);
    expect(slim?.curve.freeDelivery).toBeCloseTo(52 / 3600, 12);
    expect(slim?.curve.shutOff).toBe(24);
    expect(slim?.curve.synthesised).toBe(false);
    expect(box?.curve.synthesised).toBe(true);
  });

  it('fills in what is not said', () => {
    expect(box).toMatchObject({ provenance: 'box', holdFloor: 0.2 });
    expect(box?.startFloor).toBeCloseTo(0.3, 12);
    expect(box).not.toHaveProperty('price');
    expect(box).not.toHaveProperty('blades');
  });

  it('reduces every rating to 1 m in the free field, in order of speed', () => {
    expect(slim?.ratings.map(({ speed, basisStated }) => [speed, basisStated])).toEqual([
      [1500 / 60, false],
      [2200 / 60, true],
    ]);
    // Derived: spherical spreading, 10·lg(4π·1²) = 10.9921 dB; declared values are 3 dB above the mean.
    expect(box?.ratings[0]?.level).toBeCloseTo(41 - 3 - 10.9921, 4);
    expect(quiet?.ratings[0]).toMatchObject({ level: 20, speed: 30, basisStated: false });
    // Derived: half a metre away is 20·lg 2 = 6.0206 dB louder.
    const near = fansIn(readCatalog('f', changed(FAMILY, 'rpm, distance: 1 m', 'rpm, distance: 0.5 m')));
    expect(near[0]?.ratings[1]?.level).toBeCloseTo(24 - 6.0206, 4);
  });

  it('takes the sound assumptions it is given', () => {
    const assumptions = { ...SOUND_ASSUMPTIONS, declaredAllowance: 0 };
    expect(fansIn(readCatalog('f', FAMILY, assumptions))[1]?.ratings[0]?.level).toBeCloseTo(41 - 10.9921, 4);
  });

  it('allows the dip of a stalling fan and a curve that ends a little early', () => {
    const dip = changed(FAMILY, '24 20 15.5 13 9 0 Pa', '24 18 19.5 17 9 0 Pa');
    expect(readCatalog('f', dip).ok).toBe(true);
    // Derived: from (40 m³/h, 9 Pa) and (52 m³/h, 3 Pa) straight on to 0 Pa at 58 m³/h.
    const early = changed(FAMILY, '24 20 15.5 13 9 0 Pa', '24 20 15.5 13 9 3 Pa');
    expect(fansIn(readCatalog('f', early))[0]?.curve.freeDelivery).toBeCloseTo(58 / 3600, 12);
  });
});

describe('several families', () => {
  it('are read in order', () => {
    const other = FAMILY.replaceAll('- fan: ', '- fan: x');
    const fans = fansIn(
      readCatalogs([
        { file: 'a', text: FAMILY },
        { file: 'b', text: other },
      ]),
    );
    expect(fans.map(({ id }) => id)).toEqual([
      's92-15-a',
      'f80-25-b',
      's92-16-c',
      'xs92-15-a',
      'xf80-25-b',
      'xs92-16-c',
    ]);
  });

  it('share no id', () => {
    const problems = problemsIn(
      readCatalogs([
        { file: 'a', text: FAMILY },
        { file: 'b', text: FAMILY },
      ]),
    );
    expect(problems).toMatchObject([
      {
        code: 'duplicate-name',
        file: 'b',
        line: 6,
        column: 10,
        message: expect.stringContaining('a is called "s92-15-a"'),
      },
      { code: 'duplicate-name', file: 'b', line: lineOf('fan: f80-25-b') },
      { code: 'duplicate-name', file: 'b', line: lineOf('fan: s92-16-c') },
    ]);
  });

  it('are all checked, whatever is wrong with the first', () => {
    const problems = problemsIn(
      readCatalogs([
        { file: 'a', text: '' },
        { file: 'b', text: 'fans: [' },
      ]),
    );
    expect(problems).toMatchObject([
      { code: 'empty-file', file: 'a' },
      { code: 'syntax', file: 'b' },
    ]);
  });
});
