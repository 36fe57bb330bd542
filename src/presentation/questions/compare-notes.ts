import { blanks, type Column, linesOf, textOf } from '../column.ts';
import { fitColumns, widthOf } from '../column-fit.ts';
import { wrapped } from '../prose.ts';
import { type Drawing, gridOf, leftOutLines, table } from '../table.ts';

/** Columns by which a note stands back from its row. */
const INDENT = 2;

/** A table with some words on each row. */
export interface NotedTable {
  /** At least one. */
  readonly columns: readonly Column[];
  /** One cell a row; an empty one has no line. */
  readonly words: Column;
}

/**
 * Whether the words on the rows of tables fit beside them, so that all are drawn alike.
 *
 * @param tables to be drawn
 * @param width of the terminal [columns]; undefined if there is no limit
 */
export function fitBeside(tables: readonly NotedTable[], width: number | undefined): boolean {
  return width === undefined || tables.every(({ columns, words }) => widthOf([...columns, words]) <= width);
}

/**
 * A table with its words as a last column, or under each row.
 *
 * @param noted the table
 * @param beside whether they are a column
 * @param drawing width and paint
 */
export function notedTable(
  { columns, words }: NotedTable,
  beside: boolean,
  drawing: Drawing,
): readonly string[] {
  const { width, paint } = drawing;
  if (beside) return table([...columns, words], drawing);
  const { kept, leftOut } = fitColumns(columns, width);
  const { head, blocks } = gridOf(kept, paint);
  const notes = words.cells.map((cell) => linesOf(cell).map(textOf).join(' '));
  const room = width === undefined ? undefined : Math.max(1, width - INDENT);
  const rows = blocks.flatMap((block, row) => {
    const note = notes[row] ?? '';
    const lines = note === '' ? [] : wrapped(note, room);
    return [...block, ...lines.map((line) => blanks(INDENT) + paint.faint(line))];
  });
  return [...head, ...rows].map((line) => line.trimEnd()).concat(leftOutLines(leftOut, drawing));
}
