import { describeProblems, text } from './scenario-cases.ts';

const PROCESSOR = 'on: stack, fixed: 0.16 K/W, slope: 0.4 %/K, limit: 85 °C';
const BOARD = '{ part: board, power: 22 W, in: core, limit: { air: 50 °C } }';
const PLATE = 'plate: 90 x 90 mm, thickness: 3 mm';
/** Both parts make 117 W. */
const SUPPLY = '  - { part: supply, in: core, wall: ';

describeProblems('problems of the way of the heat', [
  [
    'a footprint larger than its plate',
    PROCESSOR,
    `on: stack, base: { footprint: ¦25 x 95 mm, ${PLATE} }`,
    { code: 'wrong-value', message: text('larger than the plate') },
  ],
  [
    'a base without thickness',
    PROCESSOR,
    'on: stack, ¦base: { footprint: 25 mm, plate: 90 mm }',
    { code: 'missing-key', message: '"thickness" is missing' },
  ],
  [
    'a misspelt field of the paste',
    PROCESSOR,
    'on: stack, paste: { thickness: 30 um, conductivity: 8 W/(m K), ¦aera: 3 cm² }',
    { code: 'misspelt-key', suggestion: 'area' },
  ],
  [
    'paste without its unit',
    PROCESSOR,
    'on: stack, paste: { thickness: ¦30, conductivity: 8 W/(m K), area: 3 cm² }',
    { code: 'wrong-value', suggestion: '30 mm' },
  ],
  [
    'half a heat pipe',
    PROCESSOR,
    'on: stack, pipes: { count: ¦2.5, capacity: 40 W }',
    { code: 'wrong-value', expected: 'a whole number, 1 or more' },
  ],
  [
    'a probe in no base',
    PROCESSOR,
    'on: stack, probe: ¦120 %',
    { code: 'out-of-range', expected: 'from 0 % to 100 %' },
  ],
  [
    'heat pipes without fins',
    BOARD,
    '{ part: board, power: 22 W, in: core, pipes: ¦{ count: 2, capacity: 40 W } }',
    { code: 'wrong-value', message: text('only where a part sits on fins') },
  ],
  [
    'a probe limit without fins',
    BOARD,
    '{ part: board, power: 22 W, in: core, limit: { probe: ¦60 °C } }',
    { code: 'wrong-value', message: text('only where a part sits on fins') },
  ],
  [
    'a probe limit below the hottest room',
    PROCESSOR,
    'on: stack, limit: { probe: ¦30 °C }',
    { code: 'out-of-range', found: '30 °C' },
  ],
]);

describeProblems('problems of leakage', [
  [
    'more leakage than power',
    PROCESSOR,
    'on: stack, leakage: { power: ¦100 W, growth: 2 %/K }',
    { code: 'wrong-value', message: text('share of the power') },
  ],
  [
    'leakage and slope',
    PROCESSOR,
    'on: stack, slope: 0.4 %/K, leakage: ¦{ power: 20 W, growth: 2 %/K }',
    { code: 'wrong-value', message: text('not both') },
  ],
  [
    'leakage that falls',
    PROCESSOR,
    'on: stack, leakage: { power: 20 W, growth: ¦-2 %/K }',
    { code: 'out-of-range', expected: 'more than 0 %/K, at most 10 %/K' },
  ],
]);

describeProblems('problems of a wall reading', [
  [
    'parts that do not make up for it',
    'airway:',
    `${SUPPLY}{ reading: ¦160 W, efficiency: 90 % } }\nairway:`,
    {
      code: 'conflict',
      message: 'the parts beside the supply do not make the heat that this reading stands for',
      found: '117 W of all parts',
      expected: '144 W, within 10 %',
    },
  ],
  [
    'a tier without its rating',
    'airway:',
    `${SUPPLY}{ reading: 130 W, tier: ¦gold } }\nairway:`,
    { code: 'wrong-value', message: text('give the rating') },
  ],
  [
    'a tier and an efficiency',
    'airway:',
    `${SUPPLY}{ reading: 130 W, efficiency: 90 %, rating: 300 W, tier: ¦gold } }\nairway:`,
    { code: 'wrong-value', message: text('not both') },
  ],
  [
    'a tier that does not exist',
    'airway:',
    `${SUPPLY}{ reading: 130 W, rating: 300 W, tier: ¦glod } }\nairway:`,
    { code: 'wrong-value', suggestion: 'gold' },
  ],
  [
    'a tier that these mains do not have',
    'airway:',
    `${SUPPLY}{ reading: 130 W, rating: 300 W, mains: 230 V redundant, tier: ¦base } }\nairway:`,
    { code: 'wrong-value', message: text('no tier "base" at 230 V redundant') },
  ],
  [
    'more useful output than there is',
    'airway:',
    `${SUPPLY}{ reading: 130 W, useful: ¦140 W } }\nairway:`,
    { code: 'wrong-value', message: text('more leaves') },
  ],
  [
    'two supplies',
    'airway:',
    `${SUPPLY}{ reading: 133 W } }\n  - { part: other, in: core, ¦wall: { reading: 133 W } }\nairway:`,
    { code: 'conflict', message: 'only one part can be the supply' },
  ],
  [
    'a supply with a power as well',
    'airway:',
    `  - { part: supply, in: core, ¦power: 12 W, wall: { reading: 133 W } }\nairway:`,
    { code: 'unknown-key' },
  ],
  [
    'a supply nowhere',
    'airway:',
    '  - ¦{ part: supply, wall: { reading: 133 W } }\nairway:',
    { code: 'wrong-value', message: text('give one of the two') },
  ],
  [
    'a supply in an unknown chamber',
    'airway:',
    '  - { part: supply, in: ¦outsid, wall: { reading: 133 W } }\nairway:',
    { code: 'unknown-name', suggestion: 'outside' },
  ],
]);

describeProblems('problems of walls', [
  [
    'a wall of an unknown chamber',
    'airway:',
    'skin: { ¦cor: { conductance: 1.2 W/K } }\nairway:',
    { code: 'unknown-name', suggestion: 'core' },
  ],
  [
    'a wall of the room',
    'airway:',
    'skin: { ¦outside: { conductance: 1.2 W/K } }\nairway:',
    { code: 'unknown-name' },
  ],
  [
    'a wall without a conductance',
    'airway:',
    'skin: { core: ¦{ material: metal } }\nairway:',
    { code: 'wrong-value', message: text('give the conductance') },
  ],
  [
    'a wall with both',
    'airway:',
    'skin: { core: ¦{ conductance: 1 W/K, box: { base: 260 x 250 mm, height: 100 mm } } }\nairway:',
    { code: 'wrong-value', message: text('give the conductance') },
  ],
  [
    'a wall that takes heat in',
    'airway:',
    'skin: { core: { conductance: ¦-1 W/K } }\nairway:',
    { code: 'out-of-range', expected: '0 or more' },
  ],
  [
    'a panel colder than the room',
    'airway:',
    'skin: { core: { conductance: 1 W/K, limit: ¦34 °C } }\nairway:',
    { code: 'out-of-range', expected: 'more than 35 °C' },
  ],
  [
    'an unknown material',
    'airway:',
    'skin: { core: { conductance: 1 W/K, material: ¦metl } }\nairway:',
    { code: 'wrong-value', suggestion: 'metal' },
  ],
]);
