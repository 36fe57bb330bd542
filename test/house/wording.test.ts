import { describe, expect, it } from 'vitest';
import { filesAt, filesBelow } from './source-text.ts';
import { unwantedWords } from './wording.ts';

/** The list of words and its test speak of them by necessity. */
const about = ['test/house/wording.ts', 'test/house/wording.test.ts'];

const files = [
  ...['src', 'test', 'catalog', 'scenarios', '.ci'].flatMap(filesBelow),
  ...filesAt('README.md', 'DEVELOPERS.md', 'LICENSE', 'package.json', 'tsconfig.json', '.biome.json'),
].filter(({ path }) => !about.includes(path));

describe('what ships', () => {
  it('says nothing it should not', () => {
    expect(files.length).toBeGreaterThan(200);
    expect(files.flatMap(unwantedWords)).toEqual([]);
  });
});

describe('the check of words', () => {
  it.each([
    ["const file = '/tmp/box.yaml';", 'an absolute path'],
    ['see /work/notes', 'an absolute path'],
    ['// C:\\boxes\\one.yaml', 'an absolute path'],
    ['// TODO: the other sign', 'unfinished work'],
    ["throw new Error('not implemented');", 'unfinished work'],
    ["name: 'foo'", 'filler'],
    ['// biome-ignore lint/style: why not', 'a check switched off'],
    ['// @ts-expect-error', 'a check switched off'],
    ['/* v8 ignore next */', 'a check switched off'],
    ["it.skip('counts', () => {});", 'a test switched off'],
    ["describe.concurrent.only('all', () => {});", 'a test switched off'],
    ["it.todo('counts');", 'a test switched off'],
    ['As an AI, I', 'how it was written'],
    ['// from an earlier session', 'how it was written'],
    ['// see airflow.md 5', 'a file that is not here'],
    ['// the reference sheet says so', 'a file that is not here'],
  ])('sees %s', (line, what) => {
    expect(unwantedWords({ path: 'a.ts', text: `const one = 1;\n${line}\n` })).toEqual([`a.ts:2 ${what}`]);
  });

  it.each([
    ["import { hideBin } from 'yargs/helpers';"],
    ["import { bracketedRoot } from '../numerics/roots.ts';"],
    ['sheet: 1.5 mm, facing: shroud'],
    ['The pressure is 1 bar.'],
    ['it.each([1, 2])'],
  ])('is content with %s', (line) => {
    expect(unwantedWords({ path: 'a.ts', text: line })).toEqual([]);
  });
});
