import { describe, expect, it } from 'vitest';
import type { Rating } from '../../src/fan/fan-model.ts';
import { readCatalog } from '../../src/reading/catalog-file.ts';
import { readScenario } from '../../src/reading/scenario-file.ts';
import { place, scenario } from './good-scenario.ts';
import { changed } from './marked.ts';
import { FAMILY, SCENARIO } from './samples.ts';
import { describeProblems, text } from './scenario-cases.ts';

const RATING = 'noise: [{ level: 20 dB(A) }]';

function ratingOf(written: string): Rating {
  const outcome = readCatalog('slim.yaml', changed(FAMILY, RATING, `noise: [${written}]`));
  const rating = outcome.ok ? outcome.fans[2]?.ratings[0] : undefined;
  if (!rating) throw new Error(JSON.stringify(outcome));
  return rating;
}

describe('how a fan was mounted when it was rated', () => {
  it('takes the panel off a rating in a panel, by pressure and by power', () => {
    // Model assumption, no source: 2 dB. Derived: 10 lg 4π = 10.9921 dB from power to pressure.
    expect(ratingOf('{ level: 30 dB(A), distance: 1 m, mounted: panel }').level).toBeCloseTo(28, 12);
    expect(ratingOf('{ level: 30 dB(A), distance: 2 m, mounted: panel }').level).toBeCloseTo(34.0206, 4);
    expect(ratingOf('{ power-level: 41 dB(A), mounted: panel }').level).toBeCloseTo(28.0079, 4);
    expect(ratingOf('{ level: 30 dB(A), distance: 1 m, mounted: free }').level).toBe(30);
  });

  it('moves its octaves along', () => {
    const rating = ratingOf('{ octaves: 24 27 29 28 24 19 13 6 dB, distance: 1 m, mounted: panel }');
    expect(rating.octaves?.[0]).toBeCloseTo(22, 12);
  });
});

describe('assumptions about ratings', () => {
  const FANS = `family: rated in many ways
provenance: invented
fans:
${[
  '{ level: 30 dB(A), distance: 1 m }',
  '{ power-level: 4.1 B }',
  '{ power-level: 4.1 B, declared: true }',
  '{ power-level: 41 dB(A), mounted: panel, octaves: 38 40 42 40 36 30 24 18 dB }',
]
  .map((noise, index) => {
    const curve = '{ flow: 0 40 80 m³/h, pressure: 30 20 0 Pa }';
    return `  - { fan: r${index}, size: 92 mm, depth: 25 mm, speed: 2000 rpm, curve: ${curve}, noise: [${noise}], power: 1 W }`;
  })
  .join('\n')}
`;
  const BOX = `title: One fan
site: { room: 25 °C }
listener: { distance: 1 m }
heat: [{ part: lamp, power: 1 W, in: box, limit: { air: 60 °C } }]
airway:
  chambers: [box]
  legs:
    - { leg: in, from: outside, to: box, through: [bank] }
    - { leg: out, from: box, to: outside, through: [] }
elements: { bank: { bank: fans, face: 92 mm, depth: 25 mm } }
`;
  const levelsIn = (assume: string): readonly number[] => {
    const catalog = readCatalog('fans.yaml', FANS);
    if (!catalog.ok) throw new Error(JSON.stringify(catalog.problems));
    const read = readScenario('box.yaml', BOX + assume, catalog.fans);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const [bank] = read.enclosure.places;
    if (bank?.kind !== 'bank') throw new Error('the only place is a bank');
    return bank.options.map((option) => option?.fan.ratings[0]?.level ?? Number.NaN);
  };
  // Derived: 10 lg 4π = 10.9921 dB and 10 lg 2π = 7.9818 dB from power to pressure; 3 and 2 dB are assumptions.
  it.each([
    ['', [30, 30.0079, 27.0079, 28.0079]],
    ['assume: { sound: { power-field: half } }\n', [30, 33.0182, 30.0182, 31.0182]],
    ['assume: { sound: { declared-allowance: 1 } }\n', [30, 30.0079, 29.0079, 28.0079]],
    ['assume: { sound: { panel-mounting: 0 } }\n', [30, 30.0079, 27.0079, 30.0079]],
  ])('of a scenario count for a catalog that was read before: %s', (assume, levels) => {
    levelsIn(assume).forEach((level, index) => {
      expect(level).toBeCloseTo(levels[index] ?? Number.NaN, 4);
    });
  });
});

describe('fans that turn, and bars before them', () => {
  it('are read', () => {
    // Contract of the file.
    const turning = readCatalog('slim.yaml', changed(FAMILY, RATING, `${RATING}\n    turns: anticlockwise`));
    expect(turning.ok && turning.fans.map(({ turns }) => turns)).toEqual([
      undefined,
      undefined,
      'anticlockwise',
    ]);
    const barred = changed(SCENARIO, 'depth: 26 mm }', 'depth: 26 mm, inlet-bar: 0 mm, outlet-bar: 2 cm }');
    expect(place(scenario(barred).enclosure, 'exit')).toMatchObject({ inletBar: 0, outletBar: 0.02 });
    expect(place(scenario(SCENARIO).enclosure, 'exit')).not.toHaveProperty('inletBar');
  });
});

const ASSUME = 'fan-floor: 12';
const KNOT = (share: number) => `{ flow-share: ${share}, rise: 1, uncertainty: 1 }`;

describeProblems('problems of assumptions about sound', [
  [
    'a neighbour that makes a fan quieter',
    'inlet: { panel: 3 }',
    'inlet: { panel: ¦-3 }',
    { code: 'out-of-range', expected: text('from 0 to 100') },
  ],
  ['stall that makes a fan quieter', ASSUME, 'stall: { rise: ¦-1 }', { code: 'out-of-range' }],
  ['a ramp of stall without width', ASSUME, 'stall: { ramp: ¦0 }', { code: 'out-of-range' }],
  [
    'a working point that makes a fan quieter',
    ASSUME,
    'working-point: [{ flow-share: 0.5, rise: ¦-2, uncertainty: 1 }]',
    { code: 'out-of-range' },
  ],
  [
    'working points out of order',
    ASSUME,
    `working-point: ¦[${KNOT(0.5)}, ${KNOT(0.2)}]`,
    { code: 'conflict', found: '0.5, 0.2' },
  ],
  [
    'a level that falls with speed',
    ASSUME,
    'speed-exponent-range: { least: ¦-5, most: 10 }',
    { code: 'out-of-range' },
  ],
  [
    'a range the wrong way round',
    ASSUME,
    'speed-exponent-range: ¦{ least: 60, most: 50 }',
    { code: 'conflict' },
  ],
]);
