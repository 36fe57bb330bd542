import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toCsv } from '../../src/presentation/csv.ts';

const SEED = 4180;

/** Read back by csv-parse: another reader of RFC 4180. */
function readBack(text: string): readonly (readonly string[])[] {
  return parse(text, { record_delimiter: '\r\n' });
}

describe('comma-separated values', () => {
  it('are read back as they were written, whatever stands in a text', () => {
    const letters = fc.constantFrom('a', ',', '"', '\n', '\r', ' ', ';', '°', '=');
    const cell = fc.string({ unit: letters, minLength: 1, maxLength: 6 });
    const row = fc.array(cell, { minLength: 3, maxLength: 3 });
    fc.assert(
      fc.property(row, fc.array(row, { maxLength: 4 }), (heads, rows) => {
        expect(readBack(toCsv(heads, rows))).toEqual([heads, ...rows]);
      }),
      { seed: SEED },
    );
  });

  it('hold numbers with a point and seven digits, and nothing where there is no number', () => {
    const text = toCsv(['a [m]', 'b', 'c', 'd', 'e'], [[1 / 3, 1_234_567_890, -0, Number.NaN, null]]);
    expect(readBack(text)).toEqual([
      ['a [m]', 'b', 'c', 'd', 'e'],
      ['0.3333333', '1234567890', '0', '', ''],
    ]);
  });

  it('end every line with CR LF', () => {
    // RFC 4180, section 2, 1: each record is on a line of its own, ended by CRLF.
    expect(toCsv(['a', 'b'], [[true, 'x, y']])).toBe('a,b\r\ntrue,"x, y"\r\n');
  });
});
