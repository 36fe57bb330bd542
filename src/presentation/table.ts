import { blanks, type Column, type DrawnColumn, drawColumn } from './column.ts';
import { fitColumns, GAP } from './column-fit.ts';
import type { Paint } from './paint.ts';
import { wrapped } from './prose.ts';

/** How much room there is, and how things stand out. */
export interface Drawing {
  /** Columns of the terminal; absent if lines may be of any length. */
  readonly width?: number | undefined;
  readonly paint: Paint;
}

/** Columns side by side: a head of one or two lines and a block of lines a row, all padded to the width. */
export interface Grid {
  readonly width: number;
  readonly head: readonly string[];
  readonly blocks: readonly (readonly string[])[];
}

/**
 * A table without borders: heads, units under them, two spaces between the columns. Columns that do not fit are
 * left out and named in a last line.
 *
 * @param columns at least one, all with the same number of rows
 * @param drawing width and paint
 * @returns lines without spaces at the end
 */
export function table(columns: readonly Column[], drawing: Drawing): readonly string[] {
  const { kept, leftOut } = fitColumns(columns, drawing.width);
  const grid = gridOf(kept, drawing.paint);
  return [...grid.head, ...grid.blocks.flat()]
    .map((line) => line.trimEnd())
    .concat(leftOutLines(leftOut, drawing));
}

/**
 * Puts columns side by side.
 *
 * @param columns at least one, all with the same number of rows
 * @param paint for heads and toned lines
 */
export function gridOf(columns: readonly Column[], paint: Paint): Grid {
  const drawn = columns.map((column) => drawColumn(column, paint));
  const rows = drawn[0]?.blocks.length ?? 0;
  const blocks = Array.from({ length: rows }, (_, row) =>
    sideBySide(drawn.map((column) => ({ width: column.width, lines: column.blocks[row] ?? [] }))),
  );
  const hasUnits = columns.some((column) => column.unit !== undefined);
  return {
    width: drawn.reduce((sum, column) => sum + column.width + GAP, -GAP),
    head: headLines(drawn, hasUnits),
    blocks,
  };
}

/** A run of lines and the width each of them has or is to be padded to. */
export interface Strip {
  readonly width: number;
  readonly lines: readonly string[];
}

/** Sets strips of lines beside each other, short ones filled with blank lines. Lines must have their full width. */
export function sideBySide(strips: readonly Strip[]): readonly string[] {
  const height = Math.max(0, ...strips.map(({ lines }) => lines.length));
  return Array.from({ length: height }, (_, row) =>
    strips.map(({ width, lines }) => lines[row] ?? blanks(width)).join(blanks(GAP)),
  );
}

/** Which columns were left out, in words; no line if none was. */
export function leftOutLines(leftOut: readonly Column[], { width, paint }: Drawing): readonly string[] {
  if (leftOut.length === 0) return [];
  const names = leftOut.map(({ head, unit }) => (head === '' ? (unit ?? '') : head).toLowerCase());
  return wrapped(`(left out to fit ${width} columns: ${names.join(', ')})`, width).map(paint.faint);
}

function headLines(drawn: readonly DrawnColumn[], hasUnits: boolean): readonly string[] {
  const line = (part: 0 | 1): string => drawn.map(({ head }) => head[part]).join(blanks(GAP));
  return hasUnits ? [line(0), line(1)] : [line(0)];
}
