import { describeProblems, text } from './scenario-cases.ts';

const EXIT = 'exit: f80-25-b x2';

describeProblems('problems of what stands close, of heights and of lost fans', [
  [
    'a wall at no distance',
    'depth: 26 mm }',
    'depth: 26 mm, inlet-wall: ¦0 mm }',
    { code: 'out-of-range', expected: 'more than 0' },
  ],
  [
    'a leg higher than a house',
    'through: [side-gap] }',
    'through: [side-gap], rise: ¦25 m }',
    { code: 'out-of-range', expected: text('-10 m to 10 m') },
  ],
  [
    'a leg that rises with nothing in it',
    'chambers: [core]\n  legs:\n',
    'chambers: [core, loft]\n  legs:\n    - { leg: stairs, from: core, to: loft, through: [], rise: ¦1 m }\n',
    { code: 'conflict' },
  ],
  [
    'more fans lost than there are',
    EXIT,
    'exit: ¦f80-25-b x2 with 3 dead',
    { code: 'conflict', message: text('only 2 fans') },
  ],
  [
    'fans lost in an empty place',
    'pull: empty',
    'pull: ¦empty with 1 dead',
    { code: 'conflict', message: text('empty place') },
  ],
  [
    'lost fans of a fan that is no option',
    EXIT,
    'exit: ¦f80-25-c x2 with 1 dead',
    { code: 'unknown-name', suggestion: 'f80-25-b x2' },
  ],
  [
    'a hub as large as the fan',
    'fan: { derating-direct: 0.85 }',
    'fan: { hub: ¦1 }',
    { code: 'out-of-range', expected: 'from 0 to 0.9' },
  ],
]);
