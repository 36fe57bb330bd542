import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { writeWhole } from '../../src/commands/written-file.ts';

const folder = mkdtempSync(join(tmpdir(), 'hushwright-written-'));
const at = (name: string): string => join(folder, name);

// From the promise: whole or not at all, never over another file untold, nothing left behind.
describe('a file that is written whole', () => {
  it('is written where nothing is', () => {
    expect(writeWhole(at('new.txt'), 'ö\n', false)).toBeUndefined();
    expect(readFileSync(at('new.txt'), 'utf8')).toBe('ö\n');
  });

  it('takes the place of another only if told, and takes over its permissions', () => {
    writeFileSync(at('old.txt'), 'old');
    chmodSync(at('old.txt'), 0o640);
    expect(writeWhole(at('old.txt'), 'new', false)).toMatchObject({
      message: 'there is a file of this name already',
    });
    expect(readFileSync(at('old.txt'), 'utf8')).toBe('old');
    expect(writeWhole(at('old.txt'), 'new', true)).toBeUndefined();
    expect(readFileSync(at('old.txt'), 'utf8')).toBe('new');
    expect(statSync(at('old.txt')).mode & 0o777).toBe(0o640);
  });

  it('takes a link that leads nowhere for something that is there', () => {
    symlinkSync('nowhere', at('link.txt'));
    expect(writeWhole(at('link.txt'), 'x', false)).toMatchObject({ code: 'unreadable' });
  });

  it.each([
    ['a folder that is not there', 'none/x.txt', 'there is no such folder'],
    ['a file for a folder', 'new.txt/x.txt', 'a part of the path is no folder'],
  ])('is refused in %s', (_, name, message) => {
    expect(writeWhole(at(name), 'x', true)).toMatchObject({ message });
  });

  it('is refused in the place of a folder', () => {
    mkdirSync(at('sub'));
    expect(writeWhole(at('sub'), 'x', false)?.message).toBe('there is a file of this name already');
    expect(writeWhole(at('sub'), 'x', true)?.code).toBe('unreadable');
  });

  it('leaves nothing else behind', () => {
    expect(readdirSync(folder).toSorted()).toEqual(['link.txt', 'new.txt', 'old.txt', 'sub']);
  });
});
