import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readCatalog } from '../../src/reading/catalog-file.ts';
import { formatProblem } from '../../src/reading/problem.ts';
import { readScenario } from '../../src/reading/scenario-file.ts';
import { findPath } from '../../src/reading/variants/dotted-path.ts';
import { parseYaml } from '../../src/reading/yaml-source.ts';
import { changed, unmarked } from './marked.ts';
import { FAMILY, SCENARIO } from './samples.ts';
import { describeProblems } from './scenario-cases.ts';

// The places are counted in the marked text, not by the reader; the words are what a user is to read.

describeProblems('words about elements and choices', [
  [
    'a bank that is no square',
    'face: 80 mm, depth: 26 mm',
    'face: ¦80 x 70 mm, depth: 26 mm',
    { message: 'the face of a bank is the square frame of one fan' },
  ],
  [
    'a band of speeds that is upside down',
    'depth: 26 mm }',
    'depth: 26 mm, avoid: [¦[900 rpm, 800 rpm]] }',
    { message: 'a band of speeds goes from a lower to a higher one' },
  ],
  [
    'a size no fan has',
    'face: 80 mm, depth: 26 mm',
    'face: ¦81.5 mm, depth: 26 mm',
    { message: 'the catalog has no fan of this size', expected: 'room for one of these: 80, 92 mm' },
  ],
  [
    'a fan that does not fit',
    '[s92-15-a]',
    '[¦f80-25-b]',
    { message: 'the fan "f80-25-b" does not fit "pull"', found: 'size 80 mm and depth 25 mm' },
  ],
  ['a text for an element', '{ slot: 90 x 2 mm }', '¦slot', { message: 'this is no element', found: 'slot' }],
  [
    'two kinds at once',
    '{ slot: 90 x 2 mm }',
    '{ slot: 90 x 2 mm, ¦screen: 90 mm }',
    { message: 'an element cannot be "slot" and "screen" at once' },
  ],
  [
    'no kind',
    'side-gap: { slot: 90 x 2 mm }',
    '¦side-gap: {}',
    { message: 'nothing tells what kind of element this is' },
  ],
  [
    'too many combinations',
    'rear: { hole: [4 mm, 5 mm, 6 mm] }',
    `rear: { hole: [4 mm, 5 mm, 6 mm], ¦web: [${Array.from({ length: 700 }, (_, at) => `${at + 1} mm`).join(', ')}] }`,
    { message: 'these lists have more than 2000 combinations' },
  ],
  [
    'a bank as an option',
    'rear: { hole: [4 mm, 5 mm, 6 mm] }',
    'rear: { element: [¦{ bank: fans, face: 80 mm, depth: 26 mm }] }',
    { message: 'a bank of fans cannot be chosen as an element' },
  ],
  [
    'a choice of a part',
    '  rear: { hole: [4 mm, 5 mm, 6 mm] }',
    '  rear: { hole: [4 mm, 5 mm, 6 mm] }\n  ¦board: { hole: [4 mm] }',
    { message: '"board" is a part: only what stands under "elements" can be chosen' },
  ],
  [
    'a distance of what makes no noise',
    'conductivity: 200 W/(m K) }',
    'conductivity: 200 W/(m K), ¦distance: 1 m }',
    { message: 'this makes no noise of its own, so there is nothing to say of its distance' },
  ],
  [
    'a build that names what has no choice',
    'rear: 5 mm }\nreadings',
    'rear: 5 mm, ¦front: 4 mm }\nreadings',
    { message: 'there is no choice for "front", so a build need not name it' },
  ],
  [
    'a key nobody knows',
    'wire: 0.2 mm }',
    'wire: 0.2 mm, ¦colour: red }',
    { message: 'there is no key "colour" here' },
  ],
  ['a word nobody knows', 'facing: shroud', 'facing: ¦ceiling', { message: 'this word is not known here' }],
]);

describeProblems('words about air, heat and the site', [
  [
    'a leg that rises with nothing in it',
    'to: core, through: [side-gap] }',
    'to: core, through: [side-gap] }\n    - { leg: up, from: outside, to: core, through: [], rise: ¦1 m }',
    { message: 'nothing in this leg holds back the air that its height moves' },
  ],
  [
    'headers with half a current',
    'margin: 2 K',
    'headers: { one: ¦{ banks: [push], current: 1 A } }\nmargin: 2 K',
    { message: 'give the current of a header together with its voltage' },
  ],
  [
    'a bank on two headers',
    'margin: 2 K',
    'headers: { one: { banks: [push] }, two: { banks: [¦push] } }\nmargin: 2 K',
    { message: '"push" is on a header already' },
  ],
  [
    'no legs',
    'chambers: [core]',
    'chambers: ¦[]',
    { message: 'too small', found: 'a list', expected: 'at least 1 item' },
  ],
  [
    'outside among the chambers',
    'chambers: [core]',
    'chambers: [core, ¦outside]',
    { message: '"outside" is always there and is not listed' },
  ],
  [
    'a leg in a circle',
    'from: core, to: outside',
    'from: outside, to: ¦outside',
    { message: 'the leg "exhaust" begins and ends in "outside"' },
  ],
  [
    'a leg that takes in nothing from outside',
    'chambers: [core]\n  legs:\n',
    'chambers: [core, shed]\n  legs:\n    - { leg: on, from: shed, to: core, through: [], recirculation: ¦5 % }\n',
    { message: 'only a leg from or to outside can take in the exhaust of the box' },
  ],
  [
    'a thing in two legs',
    'through: [exit, rear]',
    'through: [exit, ¦dust, rear]',
    { message: '"dust" stands in the leg "intake" already, and one thing has one place' },
  ],
  [
    'a thing in no leg',
    '  rear: { perforated',
    '  ¦spare: { slot: 9 mm }\n  rear: { perforated',
    { message: '"spare" stands in no leg, so no air passes it' },
  ],
  [
    'a limit of nothing',
    'limit: { air: 50 °C }',
    'limit: ¦{}',
    { message: 'a limit needs a temperature of the part, of the air, or both' },
  ],
  [
    'a limit below the hottest room',
    'limit: { air: 50 °C }',
    'limit: { air: ¦30 °C }',
    { message: 'this limit is not above the hottest room temperature, so nothing can hold it' },
  ],
  [
    'a part on what is no stack',
    'on: stack',
    'on: ¦dust',
    { message: '"dust" is no fin stack, so no part can sit on it' },
  ],
  [
    'a footprint larger than its plate',
    'slope: 0.4 %/K,',
    'slope: 0.4 %/K, base: { footprint: ¦40 mm, plate: 30 mm, thickness: 5 mm },',
    { message: 'found a footprint that is larger than the plate it stands on' },
  ],
  [
    'altitude and pressure',
    'altitude: 300 m }',
    'altitude: 300 m, pressure: ¦100 kPa }',
    { message: 'give the altitude or the pressure, not both' },
  ],
  [
    'a wall without a conductance',
    'airway:\n',
    'skin: { core: ¦{ share: 50 % } }\nairway:\n',
    { message: 'give the conductance of the wall, or the box to take it from' },
  ],
  [
    'a reading of nothing',
    '- { reading: panel off, build: as-built, without: [front, dust], speed: { push: 60 % }, probe: { core: 40 °C } }',
    '- ¦{ reading: panel off, build: as-built }',
    { message: 'nothing was measured: give a probe temperature or the wall power' },
  ],
  [
    'a name of two lines',
    'duty: idle',
    'duty: ¦"id\\nle"',
    { message: 'a name is one line of ordinary letters' },
  ],
  [
    'assumptions that do not rise',
    'fan-floor: 12,',
    'fan-floor: 12, speed-exponent-range: ¦{ least: 70, most: 40 },',
    { message: 'these do not rise from each to the next' },
  ],
]);

/** The first problem of a text, as it is printed. */
function printed(read: { readonly ok: boolean } & object, file: string): string {
  const problems = 'problems' in read ? (read.problems as Parameters<typeof formatProblem>[0][]) : [];
  const own = problems.filter((problem) => problem.file === file);
  return own.map(formatProblem).join('\n');
}

describe('words about fans', () => {
  it.each([
    ['fewer pressures than flows', '16 13 8 0 Pa', '¦16 13 0 Pa', 'a curve has as many pressures as flows'],
    ['points in disorder', '0 15 30 45 m³/h', '¦0 30 15 45 m³/h', 'the points are not in order'],
    ['no pressure at shut-off', '16 13 8 0 Pa', '¦0 0 0 0 Pa', 'a fan makes pressure at shut-off'],
    ['a curve that rises', '16 13 8 0 Pa', '¦3 8 13 16 Pa', 'the curve rises with the flow as a whole'],
    ['a curve that ends early', '16 13 8 0 Pa', '¦16 13 8 7 Pa', 'the curve ends long before free delivery'],
    [
      'a start below the hold',
      'start: 30 %',
      'start: ¦20 %',
      'a fan cannot start at a lower speed than it holds',
    ],
    [
      'seven octaves',
      'noise: [{ level: 20 dB(A) }]',
      'noise: [{ octaves: ¦1 2 3 4 5 6 7 dB }]',
      'octaves are 8 levels, for 63, 125, 250, 500, 1000, 2000, 4000, 8000 Hz',
    ],
    [
      'a rating of nothing',
      'noise: [{ level: 20 dB(A) }]',
      'noise: [¦{ distance: 1 m }]',
      'a rating has a "level", a "power-level" or "octaves"',
    ],
    [
      'a curve and a box',
      'box: { flow',
      'curve: { flow: 0 10 20 m³/h, pressure: 9 8 0 Pa }\n    box: ¦{ flow',
      'a fan has either a curve of points or the two figures on its box: give one of "curve" and "box"',
    ],
    [
      'a rating beyond full speed',
      'speed: 1500 rpm',
      'speed: ¦2500 rpm',
      'this rating is for a speed the fan does not reach',
    ],
    [
      'two ratings at one speed',
      'speed: 1500 rpm',
      'speed: ¦2200 rpm',
      'there is a rating for this speed already',
    ],
    [
      'octaves beside another level',
      'noise: [{ level: 20 dB(A) }]',
      'noise: [{ level: 20 dB(A), octaves: ¦30 30 30 30 30 30 30 30 dB }]',
      'these octaves, A-weighted and summed, are not the level beside them',
    ],
    ['a price below nothing', 'price: 12', 'price: ¦-1', 'this does not fit here'],
  ])('%s', (_, from, to, message) => {
    const { text, places } = unmarked(changed(FAMILY, from, to));
    const [first = '', ...rest] = printed(readCatalog('fans.yaml', text), 'fans.yaml').split('\n');
    const [line = 0, column = 0] = places[0] ?? [];
    expect(first).toMatch(new RegExp(`^fans\\.yaml:${line}:${column}: `));
    expect(first).toContain(message);
    const [source = '', mark = ''] = rest.slice(-2);
    const at = mark.indexOf('^');
    expect(text.split('\n')[line - 1]?.slice(column - 1)).toBe(source.slice(at));
  });
});

describe('words about whole files', () => {
  it('too many keys, before and after they are parsed', () => {
    const many = `a:\n${Array.from({ length: 600 }, (_, at) => `  k${at}: 1`).join('\n')}\n`;
    const [one, other] = [parseYaml('f.yaml', many, 1000), parseYaml('f.yaml', many, 200)];
    expect(one.ok ? '' : formatProblem(one.problem)).toBe(
      'f.yaml:1:1: the file is too large: 1207 keys and values, at most 1000 are read',
    );
    expect(other.ok ? '' : formatProblem(other.problem)).toBe(
      'f.yaml:1:1: the file is too large: 601 lines, commas and brackets, at most 400 are read',
    );
  });

  it('an empty path of a value', () => {
    expect(findPath({}, ' ', [])).toEqual({ ok: false, message: 'the path is empty' });
  });

  it('no elements, and a catalog without fans', () => {
    const empty = SCENARIO.replace(/elements:\n(?: {2}.*\n)+/, 'elements: {}\n');
    const read = readScenario('box.yaml', empty, []);
    expect(printed(read, 'box.yaml')).toMatch(/^box\.yaml:13:1: elements: there are no elements\n/m);
    const bare = readScenario('box.yaml', SCENARIO, []);
    expect(printed(bare, 'box.yaml')).toContain('expected  a catalog with fans in it');
  });
});

/** All source files of the reader. */
function readerFiles(folder: string): readonly string[] {
  return readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.ts'))
    .map((entry) => join(entry.parentPath, entry.name));
}

/** A pattern of what a message comes to, with anything on one line where it holds a value. */
function patternOf(literal: string): RegExp {
  const fixed = literal.split(/\$\{(?:[^{}]|\{[^}]*\})*\}/);
  return new RegExp(fixed.map((piece) => piece.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')).join('.{0,120}?'));
}

describe('every message of the reader', () => {
  it('stands in a test', () => {
    const root = resolve(import.meta.dirname, '../..');
    const tests = readerFiles(join(root, 'test/reading'))
      .map((file) => readFileSync(file, 'utf8'))
      .join('\n');
    const sources = readerFiles(join(root, 'src/reading')).map((file) => readFileSync(file, 'utf8'));
    const literals = sources.flatMap((source) =>
      [...source.matchAll(/(?:message|error)(?::| =)\s*(`[^`]*`|'[^']*')/g)].map(([, text = '']) =>
        text.slice(1, -1),
      ),
    );
    // A message that is all value is told by others; what a form says of a misfit is put in other words.
    const messages = literals.filter(
      (literal) => !/^found \$\{/.test(literal) && literal.replace(/\$\{[^}]*\}/g, '').trim().length > 5,
    );
    expect(messages.length).toBeGreaterThan(60);
    expect(messages.filter((message) => !patternOf(message).test(tests))).toEqual([]);
  });
});
