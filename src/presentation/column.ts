import stringWidth from 'string-width';
import type { Paint, Tone } from './paint.ts';
import { printable } from './printable.ts';

/** A text that stands out. */
export interface Toned {
  readonly text: string;
  readonly tone: Tone;
}

/** One line of a cell. */
export type CellLine = string | Toned;

/** What stands in one row of a column: one line, or several under each other. */
export type Cell = CellLine | readonly CellLine[];

/** A column of a table. */
export interface Column {
  readonly head: string;
  /** Stands under the head. */
  readonly unit?: string;
  /** Text stands at the left; numbers stand with their decimal points under each other. */
  readonly align: 'text' | 'number';
  /** Columns of least priority are left out first; from `KEEP` up text is folded before a column is left out. */
  readonly priority: number;
  /** One a row. */
  readonly cells: readonly Cell[];
}

/** A column of texts: one cell a row. See `Column` for its priority. */
export function textColumn<Row>(
  head: string,
  priority: number,
  rows: readonly Row[],
  cell: (row: Row) => Cell,
): Column {
  return { head, align: 'text', priority, cells: rows.map(cell) };
}

/** A column of numbers: one cell a row; an empty unit is none. See `Column` for its priority. */
export function numberColumn<Row>(
  head: string,
  unit: string,
  priority: number,
  rows: readonly Row[],
  cell: (row: Row) => Cell,
): Column {
  return { head, ...(unit === '' ? {} : { unit }), align: 'number', priority, cells: rows.map(cell) };
}

/** A line that stands out as a sum or a name does. */
export function strong(text: string): Toned {
  return { text, tone: 'strong' };
}

/** A column drawn: every text padded to the width. */
export interface DrawnColumn {
  readonly width: number;
  readonly head: readonly [string, string];
  readonly blocks: readonly (readonly string[])[];
}

/** The lines of a cell. */
export function linesOf(cell: Cell): readonly CellLine[] {
  return typeof cell === 'string' || 'tone' in cell ? [cell] : cell;
}

/** The text of a line, as it can be printed. */
export function textOf(line: CellLine): string {
  return printable(typeof line === 'string' ? line : line.text);
}

/** Width of a column [terminal columns]. */
export function columnWidth(column: Column): number {
  const { before, after } = parts(column);
  return Math.max(stringWidth(column.head), stringWidth(column.unit ?? ''), before + after);
}

/**
 * Draws a column.
 *
 * @param column to draw
 * @param paint for its head and its toned lines
 */
export function drawColumn(column: Column, paint: Paint): DrawnColumn {
  const width = columnWidth(column);
  const { after } = parts(column);
  const place = (text: string): readonly [string, string] => {
    if (column.align === 'text') return ['', blanks(width - stringWidth(text))];
    const right = blanks(after - fractionOf(text).length);
    return [blanks(width - stringWidth(text) - right.length), right];
  };
  const title = (text: string): string => {
    const pad = blanks(width - stringWidth(text));
    const toned = text === '' ? text : paint.faint(text);
    return column.align === 'text' ? toned + pad : pad + toned;
  };
  const draw = (line: CellLine): string => {
    const text = textOf(line);
    const [left, right] = place(text);
    return left + (typeof line === 'string' || text === '' ? text : paint[line.tone](text)) + right;
  };
  return {
    width,
    head: [title(column.head), title(column.unit ?? '')],
    blocks: column.cells.map((cell) => linesOf(cell).map(draw)),
  };
}

/** A run of spaces. */
export function blanks(length: number): string {
  return ' '.repeat(Math.max(0, length));
}

/** Widest text before, and from, the decimal point on. */
function parts(column: Column): { readonly before: number; readonly after: number } {
  const texts = column.cells.flatMap((cell) => linesOf(cell).map(textOf));
  const fraction = (text: string): number => (column.align === 'number' ? fractionOf(text).length : 0);
  let before = 0;
  let after = 0;
  for (const text of texts) {
    before = Math.max(before, stringWidth(text) - fraction(text));
    after = Math.max(after, fraction(text));
  }
  return { before, after };
}

function fractionOf(text: string): string {
  return /\.\d+$/.exec(text)?.[0] ?? '';
}
