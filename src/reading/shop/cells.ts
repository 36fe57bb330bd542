import type { ColumnName, Columns } from './columns.ts';
import type { CsvRow } from './csv-table.ts';

/** A row with the meaning of its cells. */
export interface Cells {
  readonly row: CsvRow;
  readonly columns: Columns;
}

/** A number with a decimal comma that cannot be a thousand. */
const DECIMAL_COMMA = /^([^\d]*\d+),(\d{1,2}|\d{4,})(?!\d)/;
const BARE_NUMBER = /^[+\-−]?(?:\d+(?:[.,]\d*)?|[.,]\d+)$/;

/**
 * The text of a cell; undefined if the table has no such column or the cell is empty.
 *
 * @param cells of a row
 * @param name of the column
 */
export function textAt({ row, columns }: Cells, name: ColumnName): string | undefined {
  const column = columns.known.get(name);
  const text = column === undefined ? undefined : row.cells[column.index]?.trim();
  return text === '' ? undefined : text;
}

/** A decimal point for a decimal comma, where it can be nothing else: commas between cells are gone by now. */
function pointed(text: string): string {
  return text.replace(DECIMAL_COMMA, '$1.$2');
}

/**
 * A quantity as a catalog would have it: the cell, with the unit of the column if it has none.
 *
 * @param cells of a row
 * @param name of the column
 */
export function quantityAt(cells: Cells, name: ColumnName): string | undefined {
  const text = textAt(cells, name);
  if (text === undefined) return undefined;
  const unit = cells.columns.known.get(name)?.unit ?? '';
  const number = pointed(text);
  return BARE_NUMBER.test(number) && unit !== '' ? `${number} ${unit}` : number;
}

/**
 * A plain number, with or without a sign of a currency; the text itself if it is none.
 *
 * @param cells of a row
 * @param name of the column
 */
export function numberAt(cells: Cells, name: ColumnName): number | string | undefined {
  const text = textAt(cells, name);
  if (text === undefined) return undefined;
  const bare = pointed(text.replace(/\p{Sc}/gu, '').trim()).replace(/\s*[A-Z]{3}$/, '');
  return /^\d+(?:\.\d+)?$/.test(bare) ? Number(bare) : text;
}

/** An id of letters, digits and `- . _ +`, made from a name as it is sold under. */
export function idFrom(name: string): string {
  return name
    .normalize('NFKD')
    .replace(/[^\w.+-]+/g, '-')
    .replace(/^[^A-Za-z0-9]+|-+$/g, '')
    .slice(0, 60);
}

const SIDE = String.raw`([\d.]+)\s*(mm|cm|in)?\s*`;
const SIDES = new RegExp(String.raw`^\s*${SIDE}[x×*]\s*${SIDE}(?:[x×*]\s*${SIDE})?$`, 'i');

/**
 * Size and depth of a frame; both may stand in the column of the size, as in "80 x 80 x 25 mm".
 *
 * @param cells of a row
 */
export function frameAt(cells: Cells): { readonly size?: string; readonly depth?: string } {
  const size = quantityAt(cells, 'size');
  const depth = quantityAt(cells, 'depth');
  const own = textAt(cells, 'size') ?? '';
  const [, first = '', unit1, second = '', unit2, third, unit3] = SIDES.exec(pointed(own)) ?? [];
  if (first === '')
    return { ...(size === undefined ? {} : { size }), ...(depth === undefined ? {} : { depth }) };
  const unit = unit3 ?? unit2 ?? unit1 ?? cells.columns.known.get('size')?.unit ?? '';
  const thick = third ?? (depth === undefined ? second : undefined);
  const deep = depth ?? (thick === undefined ? undefined : `${thick} ${unit}`.trim());
  const square = third === undefined || Number(first) === Number(second);
  return {
    size: square ? `${first} ${unit}`.trim() : own,
    ...(deep === undefined ? {} : { depth: deep }),
  };
}
