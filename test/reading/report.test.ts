import { describe, expect, it } from 'vitest';
import { formatProblem } from '../../src/reading/problem.ts';
import { changed } from './marked.ts';
import { SCENARIO } from './samples.ts';
import { problemsOf } from './scenario-cases.ts';

describe('a report', () => {
  it('has all problems of a file in the order of the text', () => {
    const bad = SCENARIO.replace('26 °C', '26')
      .replace('hole: 4 mm', 'hol: 4 mm')
      .replace('share: 70 %', 'share: 50 %');
    expect(problemsOf(bad).map(formatProblem).join('\n')).toBe(
      [
        'scanner.yaml:2:15: site.room: this does not fit here',
        '  found     26 without a unit',
        '  expected  a temperature such as 26 °C',
        '  write     26 °C',
        '    2 | site: { room: 26, altitude: 300 m }',
        '      |               ^',
        'scanner.yaml:14:36: elements.front.hol: there is no key "hol", did you mean "hole"?',
        '  write     hole',
        '   14 |   front: { perforated: 95 x 95 mm, hol: 4 mm, web: 1.5 mm, sheet: 1.5 mm, facing: shroud }',
        '      |                                    ^',
        'scanner.yaml:27:1: duties: the shares of the duties do not make up the whole time',
        '  found     80 % in sum',
        '  expected  100 % in sum',
        '   27 | duties:',
        '      | ^',
      ].join('\n'),
    );
  });

  it.each([
    ['an empty file', '', 'empty-file'],
    ['a wrong indentation', SCENARIO.replace('  chambers:', ' chambers:'), 'syntax'],
    ['a list', '- a\n- b', 'wrong-value'],
    ['a text', 'x'.repeat(900_000), 'wrong-value'],
    ['binary junk', '\0\u0001\u0002', 'not-text'],
    ['a cyclic alias', 'heat: &x [*x]', 'alias'],
    ['a list of many thousand things', `heat: [${'1, '.repeat(50_000)}]`, 'too-large'],
  ])('on %s has one problem', (_, bad, code) => {
    expect(problemsOf(bad)).toMatchObject([{ code, file: 'scanner.yaml' }]);
  });

  it('does not take long on thousands of wrong things', () => {
    const legs = Array.from(
      { length: 700 },
      (_, i) => `    - { leg: l${i}, from: a${i}, to: b${i}, through: [q${i}] }\n`,
    );
    const bad = changed(SCENARIO, '  legs:\n', `  legs:\n${legs.join('')}`);
    const begin = performance.now();
    expect(problemsOf(bad).length).toBe(2100);
    expect(performance.now() - begin).toBeLessThan(5000);
  });
});
