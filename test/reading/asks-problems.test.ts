import { describeProblems, text } from './scenario-cases.ts';

const before = 'duties:\n  - { duty: idle, share: 70 %';

describeProblems('problems of what is asked and of headers', [
  ['a negative price', before, `ask: { price: ¦-3 }\n${before}`, { code: 'wrong-value' }],
  [
    'power without a unit',
    before,
    `ask: { fan-power: ¦6 }\n${before}`,
    { code: 'wrong-value', suggestion: '6 W' },
  ],
  ['half a model', before, `ask: { models: ¦1.5 }\n${before}`, { code: 'wrong-value' }],
  [
    'a misspelt demand',
    before,
    `ask: { ¦pryce: 3 }\n${before}`,
    { code: 'misspelt-key', suggestion: 'price' },
  ],
  [
    'a leg without fans',
    before,
    `ask: { depth: { ¦intak: 25 mm } }\n${before}`,
    { code: 'unknown-name', suggestion: 'intake' },
  ],
  ['a word that says nothing', before, `ask: { stall: ¦no }\n${before}`, { code: 'wrong-value' }],
  [
    'more points than there are',
    before,
    `ask: { tone-points: ¦9 }\n${before}`,
    { code: 'out-of-range', expected: text('from 0 to 6') },
  ],
  [
    'a header of no place for fans',
    before,
    `headers: { cpu: { banks: [push, ¦stack] } }\n${before}`,
    { code: 'unknown-name' },
  ],
  [
    'a bank on two headers',
    before,
    `headers: { one: { banks: [push] }, two: { banks: [pull, ¦push] } }\n${before}`,
    { code: 'conflict', message: text('on a header already') },
  ],
  [
    'a current without a voltage',
    before,
    `headers: { one: ¦{ banks: [push], current: 1 A } }\n${before}`,
    { code: 'wrong-value', message: text('together with its voltage') },
  ],
]);
