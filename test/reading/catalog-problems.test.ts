import { describe, expect, it } from 'vitest';
import { type CatalogOutcome, readCatalog } from '../../src/reading/catalog-file.ts';
import { changed, unmarked } from './marked.ts';
import { FAMILY } from './samples.ts';

function problemsIn(outcome: CatalogOutcome) {
  return outcome.ok ? [] : outcome.problems;
}

describe('a bad family', () => {
  /** What is replaced, by what, with a mark before each expected place, and the problems in order. */
  const cases: readonly (readonly [string, string, string, readonly object[]])[] = [
    [
      'a fan without a size',
      '- fan: s92-15-a\n    size: 92 mm',
      '- ¦fan: s92-15-a',
      [{ code: 'missing-key', path: ['fans', 0, 'size'] }],
    ],
    ['a misspelt key', '    size: 80 mm', '    ¦siez: 80 mm', [{ code: 'misspelt-key', suggestion: 'size' }]],
    ['an unknown key', '    size: 80 mm', '    ¦colour: red\n    size: 80 mm', [{ code: 'unknown-key' }]],
    [
      'a number for an id',
      's92-16-c',
      '¦9216',
      [{ code: 'wrong-value', found: '9216', suggestion: '"9216"' }],
    ],
    ['an id with a space', 's92-16-c', '¦s92 16', [{ code: 'wrong-value', found: 's92 16' }]],
    ['an id used twice', 's92-16-c', '¦s92-15-a', [{ code: 'duplicate-name' }]],
    [
      'a length where a flow is wanted',
      '0 15 30 45 m³/h',
      '¦0 15 30 45 mm',
      [{ code: 'wrong-value', found: '45 mm, a length' }],
    ],
    [
      'flows in disorder',
      '0 15 30 45 m³/h',
      '¦0 30 15 45 m³/h',
      [{ code: 'fan-curve', found: 'flow number 3 is not above the one before it' }],
    ],
    ['a flow twice', '0 15 30 45 m³/h', '¦0 15 15 45 m³/h', [{ code: 'fan-curve' }]],
    [
      'flows that do not begin at zero',
      '0 15 30 45 m³/h',
      '¦5 15 30 45 m³/h',
      [{ code: 'fan-curve', expected: 'a first flow of 0' }],
    ],
    ['a negative flow', '0 15 30 45 m³/h', '¦-5 15 30 45 m³/h', [{ code: 'out-of-range' }]],
    [
      'a negative pressure',
      '16 13 8 0 Pa',
      '¦16 13 8 -1 Pa',
      [{ code: 'out-of-range', expected: '0 or more' }],
    ],
    [
      'a curve that rises',
      '16 13 8 0 Pa',
      '¦3 8 13 16 Pa',
      [{ code: 'fan-curve', message: expect.stringContaining('rises') }],
    ],
    [
      'a peak in the middle',
      '16 13 8 0 Pa',
      '¦10 12 16 0 Pa',
      [{ code: 'fan-curve', message: expect.stringContaining('rises') }],
    ],
    ['no pressure at shut-off', '16 13 8 0 Pa', '¦0 0 0 0 Pa', [{ code: 'fan-curve' }]],
    [
      'a curve that ends long before free delivery',
      '16 13 8 0 Pa',
      '¦16 13 8 7 Pa',
      [
        {
          code: 'fan-curve',
          found: '44 % of the first pressure at the last point',
          suggestion: expect.any(String),
        },
      ],
    ],
    [
      'fewer pressures than flows',
      '16 13 8 0 Pa',
      '¦16 13 0 Pa',
      [{ code: 'fan-curve', found: '4 flows and 3 pressures' }],
    ],
    [
      'two points',
      '0 15 30 45 m³/h\n      pressure: 16 13 8 0 Pa',
      '¦0 45 m³/h\n      pressure: 16 0 Pa',
      [{ code: 'fan-curve', expected: expect.stringContaining('box') }],
    ],
    [
      'both a curve and box figures',
      'box: { flow',
      'curve: { flow: 0 10 20 m³/h, pressure: 9 8 0 Pa }\n    box: ¦{ flow',
      [{ code: 'wrong-value' }],
    ],
    [
      'neither a curve nor box figures',
      '  - fan: f80-25-b\n    size: 80 mm\n    depth: 25 mm\n    speed: 2000 rpm\n    box: { flow: 45 m³/h, pressure: 22 Pa }',
      '  - ¦fan: f80-25-b\n    size: 80 mm\n    depth: 25 mm\n    speed: 2000 rpm',
      [{ code: 'wrong-value' }],
    ],
    ['a start below the hold', 'start: 30 %', 'start: ¦20 %', [{ code: 'conflict' }]],
    ['a hold of nothing', 'hold: 25 %', 'hold: ¦0 %', [{ code: 'out-of-range', found: '0 %' }]],
    ['a speed of nothing', 'speed: 1800 rpm', 'speed: ¦0 rpm', [{ code: 'out-of-range' }]],
    [
      'no rating',
      'noise: [{ level: 20 dB(A) }]',
      'noise: ¦[]',
      [{ code: 'out-of-range', expected: 'at least 1 item' }],
    ],
    [
      'a level without its weighting',
      'level: 20 dB(A)',
      'level: ¦20 dB',
      [{ code: 'wrong-value', suggestion: '20 dB(A)' }],
    ],
    [
      'a misspelt rating',
      'level: 20 dB(A)',
      '¦levl: 20 dB(A)',
      [{ code: 'misspelt-key', suggestion: 'level' }],
    ],
    ['a rating beyond full speed', 'speed: 1500 rpm', 'speed: ¦2500 rpm', [{ code: 'conflict' }]],
    ['two ratings at one speed', 'speed: 1500 rpm', 'speed: ¦2200 rpm', [{ code: 'conflict' }]],
    [
      'a guess for provenance',
      'provenance: invented',
      'provenance: ¦guessed',
      [{ code: 'wrong-value', expected: 'one of measured, datasheet, box, invented' }],
    ],
    ['a price with a currency', 'price: 12', 'price: ¦12 EUR', [{ code: 'wrong-value', found: '12 EUR' }]],
    [
      'two things at once',
      'price: 12\n    blades: 7',
      'price: ¦-12\n    blades: ¦7.5',
      [{ code: 'wrong-value' }, { code: 'wrong-value' }],
    ],
  ];

  it.each(cases)('%s', (_, from, to, expected) => {
    const { text, places } = unmarked(changed(FAMILY, from, to));
    const problems = problemsIn(readCatalog('slim.yaml', text));
    expect(problems).toMatchObject(expected);
    expect(problems.length).toBe(expected.length);
    expect(problems.map(({ line, column }) => [line, column])).toEqual(places);
  });

  it.each([
    ['text', '¦just words', [{ code: 'wrong-value', found: 'just words' }]],
    ['a list', '¦[1, 2]', [{ code: 'wrong-value', found: 'a list' }]],
    [
      'no fans',
      'family: x\nprovenance: box\n¦fans:',
      [{ code: 'wrong-value', found: 'nothing', expected: 'a list' }],
    ],
    ['no family', '¦fans: [{}]', [{ code: 'missing-key', path: ['family'] }]],
  ])('a file that is %s', (_, marked, expected) => {
    const { text, places } = unmarked(marked);
    const problems = problemsIn(readCatalog('slim.yaml', text));
    expect(problems[0]).toMatchObject(expected[0] ?? {});
    expect([problems[0]?.line, problems[0]?.column]).toEqual(places[0]);
  });
});
