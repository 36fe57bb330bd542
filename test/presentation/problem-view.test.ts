import { describe, expect, it } from 'vitest';
import { plain } from '../../src/presentation/paint.ts';
import { problemView } from '../../src/presentation/problem-view.ts';
import type { Problem } from '../../src/reading/problem.ts';

const problem: Problem = {
  code: 'wrong-value',
  file: 'box.yaml',
  line: 4,
  column: 12,
  path: ['heat', 0, 'power'],
  message: 'not a power',
  found: '95 V, a voltage',
  expected: 'a power such as 95 W',
  suggestion: '95 W',
  sourceLine: '  - power: 95 V',
};

const tags = {
  good: (text: string): string => `<good>${text}</good>`,
  bad: (text: string): string => `<bad>${text}</bad>`,
  faint: (text: string): string => `<faint>${text}</faint>`,
  strong: (text: string): string => `<strong>${text}</strong>`,
};

describe('problems as text', () => {
  it('stand with the line of the file, and are counted', () => {
    expect(problemView([problem], { paint: plain })).toBe(`box.yaml:4:12: heat[0].power: not a power
  found     95 V, a voltage
  expected  a power such as 95 W
  write     95 W
    4 |   - power: 95 V
      |            ^

1 problem in box.yaml
`);
  });

  it('make what is wrong and what is right stand out', () => {
    expect(problemView([problem], { paint: tags }).split('\n')).toEqual([
      '<strong>box.yaml:4:12: heat[0].power: not a power</strong>',
      '  found     95 V, a voltage',
      '  expected  a power such as 95 W',
      '<good>  write     95 W</good>',
      '    4 |   - power: 95 V',
      '<bad>      |            ^</bad>',
      '',
      '<strong>1 problem in box.yaml</strong>',
      '',
    ]);
  });

  it.each([
    [['box.yaml', 'box.yaml', 'box.yaml'], '3 problems in box.yaml'],
    [['box.yaml', 'fans.yaml'], '2 problems in box.yaml and fans.yaml'],
    [['c.yaml', 'b.yaml', 'a.yaml'], '3 problems in c.yaml, b.yaml and a.yaml'],
  ])('of %j end with a count', (files, last) => {
    const text = problemView(
      files.map((file) => ({ ...problem, file })),
      { paint: plain },
    );
    expect(text.trimEnd().split('\n').at(-1)).toBe(last);
  });

  it('say nothing where there are none', () => {
    expect(problemView([], { paint: plain })).toBe('');
  });

  it('cannot steer the terminal', () => {
    const text = problemView(
      [
        {
          ...problem,
          file: 'a\u001b[2J.yaml',
          message: 'there is no part "\u0007"',
          sourceLine: '\tx: \u001b[31m',
        },
      ],
      { paint: plain },
    );
    expect(text).not.toMatch(/[^\P{Cc}\n\t]/u);
  });
});
