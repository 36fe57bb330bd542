import { describeProblems, text } from './scenario-cases.ts';

describeProblems('problems of values', [
  [
    'a number without its unit',
    'hole: 4 mm',
    'hole: ¦4',
    { code: 'wrong-value', found: '4 without a unit', suggestion: '4 mm' },
  ],
  [
    'a length where a power is wanted',
    'power: 95 W',
    'power: ¦95 mm',
    { code: 'wrong-value', found: '95 mm, a length', expected: 'a power such as 95 W' },
  ],
  [
    'negative watts',
    'power: 95 W',
    'power: ¦-95 W',
    { code: 'out-of-range', found: '-95 W', expected: 'more than 0' },
  ],
  ['no watts', 'power: 95 W', 'power: ¦0 W', { code: 'out-of-range' }],
  ['no area', 'screen: 95 x 95 mm', 'screen: ¦0 x 95 mm', { code: 'out-of-range', found: '0 x 95 mm' }],
  ['no speed', 'speed: 100 %', 'speed: ¦0 %', { code: 'out-of-range', found: '0 %' }],
  ['too much speed', 'speed: 100 %', 'speed: ¦110 %', { code: 'out-of-range' }],
  [
    'a wrong word',
    'facing: shroud',
    'facing: ¦shroudd',
    { code: 'wrong-value', suggestion: 'shroud', expected: text('vent') },
  ],
  [
    'a wrong word that tells a kind',
    'fins: tower',
    'fins: ¦towr',
    { code: 'wrong-value', suggestion: 'tower' },
  ],
  [
    'what parts bear in degrees instead of kelvins',
    'assume: { ',
    'assume: { heat: { hottest-part: ¦217 }, ',
    { code: 'out-of-range', expected: 'from 300 to 3000' },
  ],
  ['a room too hot to be one', 'room: 26 °C', 'room: ¦260 °C', { code: 'out-of-range' }],
  [
    'altitude and pressure',
    'altitude: 300 m',
    'altitude: 300 m, pressure: ¦98 kPa',
    { code: 'wrong-value', message: text('not both') },
  ],
  ['all of the exhaust', 'recirculation: 5 %', 'recirculation: ¦100 %', { code: 'out-of-range' }],
  ['a negative margin', 'margin: 2 K', 'margin: ¦-2 K', { code: 'out-of-range' }],
  [
    'a list that should be a map',
    'elements:\n',
    'elements: ¦[]\n¦x:\n',
    { code: 'wrong-value', found: 'a list' },
    { code: 'unknown-key' },
  ],
]);
