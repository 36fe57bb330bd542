import { describe, expect, it } from 'vitest';
import { compareProblems, formatProblem, type Problem } from '../../src/reading/problem.ts';

const problem: Problem = {
  code: 'wrong-value',
  file: 'scanner.yaml',
  line: 12,
  column: 9,
  path: ['heat', 0, 'power'],
  message: 'this does not fit here',
  found: '40 CFN',
  expected: 'a flow such as 40 m³/h',
  suggestion: '40 CFM',
  sourceLine: '  power: 40 CFN',
};

describe('a problem as text', () => {
  it('says where, what, and what to write, and points at it', () => {
    expect(formatProblem(problem).split('\n')).toEqual([
      'scanner.yaml:12:9: heat[0].power: this does not fit here',
      '  found     40 CFN',
      '  expected  a flow such as 40 m³/h',
      '  write     40 CFM',
      '   12 |   power: 40 CFN',
      '      |         ^',
    ]);
  });

  it('leaves out what is not known', () => {
    const { found, expected, suggestion, sourceLine, ...bare } = problem;
    expect([found, expected, suggestion, sourceLine]).not.toContain(undefined);
    expect(formatProblem({ ...bare, path: [] })).toBe('scanner.yaml:12:9: this does not fit here');
  });

  it('keeps tabs, so that the mark stands under its letter', () => {
    const lines = formatProblem({ ...problem, column: 3, sourceLine: '\ta\tb' }).split('\n');
    expect(lines.slice(-2)).toEqual(['   12 | \ta\tb', '      | \t ^']);
  });

  it('cuts a line that is too wide around the place', () => {
    const lines = formatProblem({
      ...problem,
      column: 1001,
      sourceLine: `${'a'.repeat(1000)}B${'c'.repeat(1000)}`,
    }).split('\n');
    const [source = '', mark = ''] = lines.slice(-2);
    expect(source.length).toBeLessThan(140);
    expect(source[mark.indexOf('^')]).toBe('B');
  });

  it('shows no character that steers a terminal', () => {
    const steering = {
      ...problem,
      found: '\u001b[31mred',
      sourceLine: 'a\u001b[2J\u202e',
      path: ['a\u001b'],
    };
    const shown = formatProblem(steering);
    expect(shown).not.toContain('\u001b');
    expect(shown).not.toContain('\u202e');
    expect(shown).toContain('a\uFFFD[2J\uFFFD');
  });
});

describe('the order of problems', () => {
  it('is that of the text', () => {
    const places = [
      [2, 1, 'b'],
      [1, 9, 'a'],
      [2, 1, 'a'],
      [1, 2, 'c'],
    ] as const;
    const sorted = places
      .map(([line, column, message]) => ({ ...problem, line, column, message }))
      .sort(compareProblems);
    expect(sorted.map(({ line, column, message }) => [line, column, message])).toEqual([
      [1, 2, 'c'],
      [1, 9, 'a'],
      [2, 1, 'a'],
      [2, 1, 'b'],
    ]);
  });
});
