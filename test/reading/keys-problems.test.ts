import { describeProblems, text } from './scenario-cases.ts';

describeProblems('problems of keys', [
  ['a misspelt section', 'heat:\n', '¦hest:\n', { code: 'misspelt-key', suggestion: 'heat' }],
  [
    'a section left out',
    'title: Film scanner, desk side, 7 litre\nsite: { room: 26 °C, altitude: 300 m }',
    '¦title: Film scanner',
    { code: 'missing-key', path: ['site'] },
  ],
  [
    'a section of the wrong kind',
    'site: { room: 26 °C, altitude: 300 m }',
    'site: ¦26 °C',
    { code: 'wrong-value' },
  ],
  [
    'an empty section',
    'listener: { distance: 1 m, background: 25 dB(A) }',
    '¦listener:',
    { code: 'wrong-value', found: 'nothing' },
  ],
  ['an unknown section', 'margin: 2 K', '¦colour: red', { code: 'unknown-key', expected: text('site') }],
  ['a misspelt optional key', 'fixed: 0.16', '¦fixd: 0.16', { code: 'misspelt-key', suggestion: 'fixed' }],
  ['a misspelt needed key', 'hole: 4 mm', '¦hol: 4 mm', { code: 'misspelt-key', suggestion: 'hole' }],
  [
    'an unknown key',
    'hole: 4 mm',
    '¦colour: red, hole: 4 mm',
    { code: 'unknown-key', expected: text('hole, web') },
  ],
  [
    'a missing key',
    'dust: { screen: 95 x 95 mm, open: 55 %, wire: 0.2 mm }',
    '¦dust: { screen: 95 x 95 mm, open: 55 % }',
    { code: 'missing-key', path: ['elements', 'dust', 'wire'], expected: text('a length') },
  ],
  ['a key called __proto__', 'margin: 2 K', '¦__proto__: { margin: 2 K }', { code: 'unknown-key' }],
  [
    'a decimal comma in braces',
    'heat: 30 %',
    'heat: ¦1,¦5 %',
    { code: 'wrong-value' },
    { code: 'unknown-key', message: text('comma') },
  ],
]);
