import stringWidth from 'string-width';
import { blanks, type Column, columnWidth, linesOf, textOf } from './column.ts';
import { fitColumns, GAP, widthOf } from './column-fit.ts';
import { wrapped } from './prose.ts';
import { type RankColumns, type RankRow, rankColumns } from './rank-columns.ts';
import { type Drawing, type Grid, gridOf, leftOutLines, sideBySide, table } from './table.ts';

/** Notes stand beside the places if they have this much room [columns], else under them. */
const ROOM_FOR_NOTES = 24;

/** A remark on each row that is not a column. */
interface Notes {
  readonly before: string;
  readonly column: Column;
}

/**
 * A table of builds. Where it is too narrow for the words on the band, the tightest limit and the arrangement to be
 * columns, these are written under the numbers of each row, where the lines of its places leave room.
 *
 * @param rows best first, at least one
 * @param drawing width and paint
 */
export function rankTable(rows: readonly RankRow[], drawing: Drawing): readonly string[] {
  const columns = rankColumns(rows);
  const { tightest, arrangement, band } = columns;
  const { width } = drawing;
  const fits = (list: readonly Column[]): boolean => width === undefined || widthOf(list) <= width;
  const bands = band.cells.some((cell) => cell !== '') ? [band] : [];
  const full = inOrder(columns, [tightest, arrangement, ...bands]);
  if (fits(full)) return table(full, drawing);
  const notes = [
    { before: '', column: band },
    { before: 'tightest: ', column: tightest },
    { before: '', column: arrangement },
  ];
  const others = notes.filter(({ column }) => column !== tightest);
  if (fits(inOrder(columns, [tightest]))) return noted(columns, [tightest], others, drawing);
  return noted(columns, [], notes, drawing);
}

/** All columns with those of the words that are wanted. */
function inOrder(columns: RankColumns, words: readonly Column[]): readonly Column[] {
  return [...numbersOf(columns, words), ...columns.places];
}

function numbersOf(columns: RankColumns, words: readonly Column[]): readonly Column[] {
  const { first, tightest, costs, arrangement, band } = columns;
  const wanted = (column: Column): readonly Column[] => (words.includes(column) ? [column] : []);
  return [...first, ...wanted(band), ...wanted(tightest), ...costs, ...wanted(arrangement)];
}

function noted(
  columns: RankColumns,
  words: readonly Column[],
  notes: readonly Notes[],
  drawing: Drawing,
): readonly string[] {
  const { width, paint } = drawing;
  const { kept, leftOut } = fitColumns(inOrder(columns, words), width);
  const placeHeads = new Set(columns.places.map(({ head }) => head));
  const numbers = kept.filter(({ head }) => !placeHeads.has(head));
  const places = kept.filter(({ head }) => placeHeads.has(head));
  const left = gridOf(numbers, paint);
  const right = gridOf(places, paint);
  const indent = GAP + (numbers[0] ? columnWidth(numbers[0]) : 0);
  const room = left.width - indent;
  const beside = room >= ROOM_FOR_NOTES;
  const noteWidth = beside || width === undefined ? room : Math.max(1, width - indent);
  const rows = left.blocks.map((block, row) => {
    const texts = notes.flatMap((note) => noteLines(note, row, noteWidth));
    const padded = texts.map((text) => blanks(indent) + paint.faint(text) + blanks(room - stringWidth(text)));
    const cells = joined(left, right, [...block, ...(beside ? padded : [])], right.blocks[row] ?? []);
    return beside ? cells : [...cells, ...padded];
  });
  return [...joined(left, right, left.head, right.head), ...rows.flat()]
    .map((line) => line.trimEnd())
    .concat(leftOutLines(leftOut, drawing));
}

function joined(
  left: Grid,
  right: Grid,
  leftLines: readonly string[],
  rightLines: readonly string[],
): readonly string[] {
  const strips = [
    { width: left.width, lines: leftLines },
    { width: right.width, lines: rightLines },
  ];
  return sideBySide(strips.filter(({ width }) => width > 0));
}

function noteLines({ before, column }: Notes, row: number, width: number): readonly string[] {
  const text = linesOf(column.cells[row] ?? '')
    .map(textOf)
    .join(' ');
  return text === '' ? [] : wrapped(before + text, width);
}
