import { describeProblems, text } from './scenario-cases.ts';

describeProblems('problems of the airway', [
  [
    'a leg to a missing chamber',
    'to: core, through: [side-gap]',
    'to: ¦coer, through: [side-gap]',
    { code: 'unknown-name', suggestion: 'core', expected: 'one of outside, core' },
  ],
  ['a leg from a missing chamber', 'from: core, to', 'from: ¦loft, to', { code: 'unknown-name' }],
  [
    'a leg from a chamber to itself',
    'from: core, to: outside',
    'from: core, to: ¦core',
    { code: 'conflict' },
  ],
  ['a second leg of one name', 'leg: exhaust', 'leg: ¦intake', { code: 'duplicate-name' }],
  [
    'an element that is not defined',
    '[side-gap]',
    '[¦side-gop]',
    { code: 'unknown-name', suggestion: 'side-gap' },
  ],
  [
    'an element no leg uses',
    'elements:\n',
    'elements:\n  ¦spare: { slot: 9 x 9 mm }\n',
    { code: 'unused', path: ['elements', 'spare'] },
  ],
  [
    'an element two legs use',
    '[exit, rear]',
    '[exit, rear, ¦front]',
    { code: 'used-twice', message: text('"intake"') },
  ],
  ['an element one leg uses twice', '[exit, rear]', '[exit, rear, ¦exit]', { code: 'used-twice' }],
  ['a chamber no leg touches', '[core]', '[core, ¦loft]', { code: 'unused' }],
  ['a chamber called outside', '[core]', '[core, ¦outside]', { code: 'conflict' }],
  ['a chamber twice', '[core]', '[core, ¦core]', { code: 'duplicate-name' }],
  ['no chamber', '[core]', '¦[]', { code: 'out-of-range' }],
  [
    'chambers without a way out',
    'chambers: [core]\n  legs:\n',
    'chambers: [core, ¦loft, ¦attic]\n  legs:\n    - { leg: stairs, from: loft, to: attic, through: [] }\n',
    { code: 'unreachable' },
    { code: 'unreachable' },
  ],
  [
    'recirculation far from outside',
    'chambers: [core]\n  legs:\n',
    'chambers: [core, loft]\n  legs:\n    - { leg: stairs, from: core, to: loft, through: [], recirculation: ¦5 % }\n',
    { code: 'conflict' },
  ],
  [
    'an element of no kind',
    'side-gap: { slot: 90 x 2 mm }',
    '¦side-gap: { wide: 90 x 2 mm }',
    { code: 'missing-key', expected: text('perforated') },
  ],
  [
    'an element of a misspelt kind',
    'slot: 90 x 2 mm',
    '¦slott: 90 x 2 mm',
    { code: 'misspelt-key', suggestion: 'slot' },
  ],
  [
    'an element whose fields tell its kind',
    'stack: { fins: tower, ',
    '¦stack: { ',
    { code: 'missing-key', expected: 'one of the keys fins' },
  ],
  [
    'an element of two kinds',
    'slot: 90 x 2 mm',
    'slot: 90 x 2 mm, ¦guard: 80 x 80 mm',
    { code: 'conflict', message: text('"slot" and "guard"') },
  ],
  [
    'an element that is a text',
    'side-gap: { slot: 90 x 2 mm }',
    'side-gap: ¦a slot',
    { code: 'wrong-value', found: 'a slot' },
  ],
]);
