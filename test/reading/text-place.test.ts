import { describe, expect, it } from 'vitest';
import { lineStarts, placeIn } from '../../src/reading/text-place.ts';

describe('places in a text', () => {
  it.each([
    ['one line', 'abc', 2, 1, 3, 'abc'],
    ['the first letter', 'abc\ndef', 0, 1, 1, 'abc'],
    ['a line end', 'abc\ndef', 3, 1, 4, 'abc'],
    ['after LF', 'abc\ndef', 4, 2, 1, 'def'],
    ['after CR LF', 'abc\r\ndef', 5, 2, 1, 'def'],
    ['after CR', 'abc\rdef', 4, 2, 1, 'def'],
    ['after an empty line', 'a\n\nb', 3, 3, 1, 'b'],
    ['the end', 'a\n', 2, 2, 1, ''],
    ['nothing', '', 0, 1, 1, ''],
    ['after a letter of two units', 'x😀y', 3, 1, 3, 'x😀y'],
  ])('%s', (_, text, offset, line, column, sourceLine) => {
    expect(placeIn(text, offset)).toEqual({ line, column, sourceLine });
  });

  it('counts all kinds of line ends', () => {
    expect(lineStarts('a\nb\r\nc\rd')).toEqual([0, 2, 5, 7]);
  });
});
