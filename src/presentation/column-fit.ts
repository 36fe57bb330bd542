import { type CellLine, type Column, columnWidth, linesOf, textOf } from './column.ts';
import { wrapped } from './prose.ts';

/** Spaces between two columns. */
export const GAP = 2;

/** Priority from which on a column is essential. */
export const KEEP = 100;

/** A text column is folded to no less than this. */
const NARROWEST = 10;

/** Which columns fit a width. */
export interface Fit {
  readonly kept: readonly Column[];
  readonly leftOut: readonly Column[];
}

/** Width of a table of some columns, gaps included. */
export function widthOf(columns: readonly Column[]): number {
  return columns.reduce((sum, column) => sum + columnWidth(column) + GAP, -GAP);
}

/**
 * Chooses the columns that fit: those of least priority go first, the last of equals before the others. Once
 * only essential columns are left, long texts are folded to more lines. One column always stays, however wide.
 *
 * @param columns at least one
 * @param width to fit into; undefined if there is no limit
 */
export function fitColumns(columns: readonly Column[], width?: number): Fit {
  const leftOut: Column[] = [];
  let kept = columns;
  while (width !== undefined && kept.length > 1 && widthOf(kept) > width) {
    const victim = leastOf(kept);
    const folded = victim.priority >= KEEP ? fold(kept, width) : undefined;
    if (folded) return { kept: folded, leftOut };
    leftOut.push(victim);
    kept = kept.filter((column) => column !== victim);
  }
  return { kept, leftOut };
}

function leastOf(columns: readonly Column[]): Column {
  return columns.reduce((least, column) => (column.priority <= least.priority ? column : least));
}

/** Folds the widest text columns until all fit; undefined if that is not enough. */
function fold(columns: readonly Column[], width: number): readonly Column[] | undefined {
  let folded = columns;
  const texts = columns
    .map((column, index) => ({ column, index }))
    .filter(({ column }) => column.align === 'text')
    .sort((one, other) => columnWidth(other.column) - columnWidth(one.column) || one.index - other.index);
  for (const { column, index } of texts) {
    const tooMuch = widthOf(folded) - width;
    if (tooMuch <= 0) break;
    const narrower = foldColumn(column, Math.max(NARROWEST, columnWidth(column) - tooMuch));
    folded = folded.with(index, narrower);
  }
  return widthOf(folded) <= width ? folded : undefined;
}

function foldColumn(column: Column, width: number): Column {
  const foldLine = (line: CellLine): readonly CellLine[] => {
    const lines = wrapped(textOf(line), width);
    return typeof line === 'string' ? lines : lines.map((text) => ({ text, tone: line.tone }));
  };
  return { ...column, cells: column.cells.map((cell) => linesOf(cell).flatMap(foldLine)) };
}
