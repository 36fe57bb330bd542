import { describe, expect, it } from 'vitest';
import { parseYaml } from '../../src/reading/yaml-source.ts';
import { unmarked } from './marked.ts';

function problemOf(text: string, mostNodes = 1000) {
  const parsed = parseYaml('f.yaml', text, mostNodes);
  return parsed.ok ? undefined : parsed.problem;
}

function valueIn(text: string): unknown {
  const parsed = parseYaml('f.yaml', text, 1000);
  return parsed.ok ? parsed.source.value : parsed.problem;
}

describe('texts that are no YAML', () => {
  it.each([
    ['an empty file', '¦', 'empty-file', /empty/],
    ['nothing but comments', '¦# nothing\n# yet\n', 'empty-file', /empty/],
    ['a bare null', '¦~', 'empty-file', /empty/],
    ['a repeated key', 'a: 1\nb: 2\n¦a: 3', 'duplicate-key', /second time/],
    ['a repeated key in a list item', 'x:\n  - { a: 1, ¦a: 2 }', 'duplicate-key', /second time/],
    ['a line that is indented too far', 'a: 1\n  b¦: 2', 'syntax', /indentation/],
    ['a list that is indented wrongly', 'a:\n  - 1\n ¦- 2', 'syntax', /indentation/],
    ['a tab for indentation', 'a:\n¦\tb: 1', 'syntax', /tab/],
    ['a bracket left open', 'a: [1, 2¦', 'syntax', /bracket/],
    ['a brace left open', 'a: { b: 1¦', 'syntax', /bracket/],
    ['a mark left open', 'a: "b¦', 'syntax', /quotation mark/],
    ['a line without a colon', 'a: 1\nb\nc¦: 2', 'syntax', /colon/],
    ['an unknown tag', 'a: ¦!!python/object 1', 'syntax', /tag/],
    ['a list for a key', '¦[a]: 1', 'syntax', /cannot be a key/],
    ['a second document', 'a: 1\n¦---\nb: 2', 'syntax', /second document/],
    ['an alias', 'a: &x 1\nb: ¦*x', 'alias', /aliases/],
    ['an alias inside itself', 'a: &x [¦*x]', 'alias', /aliases/],
    ['a bomb of aliases', 'a: &a [1]\nb: &b [¦*a, *a]\nc: [*b, *b]', 'alias', /aliases/],
    ['a control character', 'a: ¦\u0001', 'not-text', /text file/],
  ])('%s', (_, marked, code, message) => {
    const { text, places } = unmarked(marked);
    const problem = problemOf(text);
    expect(problem).toMatchObject({
      code,
      file: 'f.yaml',
      path: [],
      message: expect.stringMatching(message),
    });
    expect([[problem?.line, problem?.column]]).toEqual(places);
  });

  it('counts lines the same with other line ends and a byte order mark', () => {
    expect(problemOf('\uFEFFa: 1\r\nb: 2\r\na: 3')).toMatchObject({ line: 3, column: 1, sourceLine: 'a: 3' });
    expect(problemOf('\uFEFFa: 1, a\n b: 2')).toMatchObject({ code: 'syntax', line: 2 });
  });

  it('refuses binary junk without showing it', () => {
    const junk = Buffer.from(Array.from({ length: 4096 }, (_, index) => (index * 7919) % 256)).toString(
      'utf8',
    );
    expect(problemOf(junk)).toMatchObject({ code: 'not-text' });
    expect(problemOf(junk)).not.toHaveProperty('sourceLine');
    expect(problemOf('a: 1\nb: \0')).toMatchObject({ code: 'not-text', line: 2, column: 4 });
  });

  it('refuses what is too large or too deep', () => {
    expect(problemOf('a'.repeat(10_000_001))).toMatchObject({ code: 'too-large', line: 1, column: 1 });
    expect(problemOf(`[${'1, '.repeat(2000)}]`)).toMatchObject({ code: 'too-large' });
    expect(problemOf(`${'['.repeat(33)}${']'.repeat(33)}`)).toMatchObject({ code: 'too-deep', line: 1 });
    expect(problemOf(`${'['.repeat(1500)}`)).toMatchObject({ code: 'too-deep', line: 1 });
    expect(problemOf('['.repeat(5_000_000), 1_000_000)).toMatchObject({ code: 'too-large', line: 1 });
    expect(problemOf(`a: '${'x'.repeat(60_000)}'`)).toMatchObject({ code: 'too-large', line: 1 });
    expect(problemOf(`# ${', '.repeat(3000)}`)).toMatchObject({ code: 'too-large', line: 1 });
  });
});

describe('values', () => {
  it('keeps as text what is no plain decimal number', () => {
    expect(
      valueIn('{ a: 12, b: 1.5, c: 0x10, d: 012, e: .inf, f: .nan, g: 1_000, h: yes, i: on, j: 2026-03-01 }'),
    ).toEqual({
      a: 12,
      b: 1.5,
      c: '0x10',
      d: '012',
      e: '.inf',
      f: '.nan',
      g: '1_000',
      h: 'yes',
      i: 'on',
      j: '2026-03-01',
    });
  });

  it('takes a key called __proto__ as any other', () => {
    const value = valueIn('__proto__: { polluted: true }');
    expect(Object.keys(Object(value))).toEqual(['__proto__']);
    expect(Object.getPrototypeOf(value)).toBe(Object.prototype);
    expect({}).not.toHaveProperty('polluted');
  });
});
