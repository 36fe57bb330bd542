import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { type Column, columnWidth, numberColumn, textColumn } from '../../src/presentation/column.ts';
import { KEEP } from '../../src/presentation/column-fit.ts';
import { plain } from '../../src/presentation/paint.ts';
import { table } from '../../src/presentation/table.ts';

const names = ['push', 'pull', 'exit'];
const columns = [
  textColumn('Place', KEEP, names, (name) => name),
  numberColumn('Flow', 'm³/h', 20, ['9.5', '12 345.25', '7'], (cell) => cell),
  numberColumn('Speed', '%', 30, ['62', '–', '100'], (cell) => cell),
];

describe('a table', () => {
  it('has heads, units under them and decimal points under each other', () => {
    expect(table(columns, { paint: plain })).toEqual([
      'Place       Flow  Speed',
      '            m³/h      %',
      'push        9.5      62',
      'pull   12 345.25      –',
      'exit        7       100',
    ]);
  });

  it('has one line of heads where no column has a unit', () => {
    expect(table([textColumn('Place', 1, names, (name) => name)], { paint: plain })).toEqual([
      'Place',
      ...names,
    ]);
  });

  it('leaves out the columns of least priority and says so', () => {
    expect(table(columns, { width: 22, paint: plain })).toEqual([
      'Place  Speed',
      '           %',
      'push      62',
      'pull       –',
      'exit     100',
      '(left out to fit 22',
      'columns: flow)',
    ]);
  });

  it('folds a long text before it leaves out an essential column', () => {
    const rows = [{ part: 'a part with a long name', margin: '3.1' }];
    const drawn = table(
      [
        textColumn('Part', KEEP, rows, ({ part }) => part),
        numberColumn('Margin', 'K', KEEP + 1, rows, ({ margin }) => margin),
      ],
      { width: 20, paint: plain },
    );
    expect(drawn).toEqual([
      'Part         Margin',
      '                  K',
      'a part with     3.1',
      'a long name',
    ]);
  });

  it('sets wide characters in two columns each', () => {
    const rows = [
      ['散熱', '1'],
      ['push', '2'],
    ] as const;
    const drawn = table(
      [
        textColumn('Place', 2, rows, ([name]) => name),
        numberColumn('N', '', 1, rows, ([, number]) => number),
      ],
      { paint: plain },
    );
    // 散熱 takes four columns: East Asian Width W, Unicode Standard Annex 11.
    expect(drawn).toEqual(['Place  N', '散熱   1', 'push   2']);
  });

  it('shows several lines of a cell under each other', () => {
    const rows = [['a', 'b'], ['c']];
    const drawn = table(
      [textColumn('X', 2, ['first', 'second'], (name) => name), textColumn('Y', 1, rows, (lines) => lines)],
      { paint: plain },
    );
    expect(drawn).toEqual(['X       Y', 'first   a', '        b', 'second  c']);
  });

  it('keeps its width under a paint, which colours no spaces', () => {
    const loud = { ...plain, bad: (text: string) => `\u001b[31m${text}\u001b[39m` };
    const rows = ['ok', 'over'];
    const toned = textColumn('X', 2, rows, (text) => ({ text, tone: 'bad' }));
    const drawn = table([toned, textColumn('Y', 1, rows, () => 'y')], { paint: loud });
    expect(drawn).toEqual(['X     Y', '\u001b[31mok\u001b[39m    y', '\u001b[31mover\u001b[39m  y']);
  });

  it('has no line over the width unless a single column is wider', () => {
    const cell = fc.stringMatching(/^[a-z 散熱風扇.0-9]{0,30}$/);
    const column = fc.record({
      head: fc.stringMatching(/^[A-Z][a-z]{0,8}$/),
      unit: fc.constantFrom('%', 'K', 'm³/h'),
      align: fc.constantFrom('text' as const, 'number' as const),
      priority: fc.integer({ min: 0, max: 2 * KEEP }),
      cells: fc.array(cell, { minLength: 3, maxLength: 3 }),
    });
    fc.assert(
      fc.property(
        fc.array(column, { minLength: 1, maxLength: 8 }),
        fc.integer({ min: 12, max: 160 }),
        (some: readonly Column[], width) => {
          const widest = Math.max(width, ...some.map(columnWidth));
          for (const line of table(some, { width, paint: plain })) {
            expect(stringWidth(line)).toBeLessThanOrEqual(widest);
            expect(line).toBe(line.trimEnd());
          }
        },
      ),
      { seed: 13, numRuns: 120 },
    );
  });
});
