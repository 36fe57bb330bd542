/** What may stand in one cell. */
export type CsvCell = string | number | boolean | null;

/** Digits that are kept of a number: as in JSON. */
const SIGNIFICANT_DIGITS = 7;

function textOf(cell: CsvCell): string {
  if (cell === null) return '';
  if (typeof cell !== 'number') return String(cell);
  if (!Number.isFinite(cell)) return '';
  return String(Number.isSafeInteger(cell) ? cell + 0 : Number(cell.toPrecision(SIGNIFICANT_DIGITS)) + 0);
}

function quoted(text: string): string {
  return /[",\r\n]/.test(text) || text !== text.trim() ? `"${text.replaceAll('"', '""')}"` : text;
}

/**
 * A table as comma-separated values: one line a row, lines end with CR LF, fields with commas, quotes or line breaks in
 * quotes, decimal points. What does not exist is an empty field.
 *
 * Source: RFC 4180.
 *
 * @param heads names of the columns, the unit in brackets
 * @param rows as many cells each
 */
export function toCsv(heads: readonly string[], rows: readonly (readonly CsvCell[])[]): string {
  return [heads, ...rows].map((row) => `${row.map((cell) => quoted(textOf(cell))).join(',')}\r\n`).join('');
}
