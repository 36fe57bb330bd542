import { describeProblems, text } from './scenario-cases.ts';

describeProblems('problems of parts', [
  [
    'a part on something without fins',
    'on: stack',
    'on: ¦front',
    { code: 'conflict', message: text('no fin stack') },
  ],
  ['a part on a bank', 'on: stack', 'on: ¦push', { code: 'conflict' }],
  ['a part on nothing', 'on: stack', 'on: ¦stak', { code: 'unknown-name', suggestion: 'stack' }],
  ['a part in an unknown chamber', 'in: core', 'in: ¦cor', { code: 'unknown-name', suggestion: 'core' }],
  ['a part outside', 'in: core', 'in: ¦outside', { code: 'unknown-name' }],
  ['a part in two places', 'in: core', 'on: stack, in: ¦core', { code: 'wrong-value' }],
  [
    'a part nowhere',
    '- { part: board, power: 22 W, in: core',
    '- ¦{ part: board, power: 22 W',
    { code: 'wrong-value' },
  ],
  [
    'two parts of one name',
    '  - { part: board',
    '  - { part: ¦processor, power: 1 W, in: core }\n  - { part: board',
    { code: 'duplicate-name' },
  ],
  [
    'a limit below the hottest room',
    'limit: 85 °C',
    'limit: ¦35 °C',
    { code: 'out-of-range', found: '35 °C', expected: 'more than 35 °C' },
  ],
  [
    'an air limit below the hottest room',
    'air: 50 °C',
    'part: 90 °C, air: ¦20 °C',
    { code: 'out-of-range', found: '20 °C' },
  ],
  ['a misspelt limit', 'limit: { air', 'limit: { ¦ait', { code: 'misspelt-key', suggestion: 'air' }],
  ['an empty limit', '{ air: 50 °C }', '¦{}', { code: 'wrong-value', message: text('a limit needs') }],
  [
    'no part at all',
    '  - { part: processor, power: 95 W, on: stack, fixed: 0.16 K/W, slope: 0.4 %/K, limit: 85 °C }\n  - { part: board, power: 22 W, in: core, limit: { air: 50 °C } }',
    '  ¦[]',
    { code: 'out-of-range', expected: 'at least 1 item' },
  ],
]);
