import { CsvError, parse } from 'csv-parse/sync';
import type { TextFile } from '../catalog-file.ts';
import type { Problem } from '../problem.ts';
import { lineStarts, placeIn } from '../text-place.ts';

/** One row of a table. */
export interface CsvRow {
  /** Line of the file it begins at, from 1. */
  readonly line: number;
  readonly cells: readonly string[];
}

/** A table of text: comma, semicolon or tab between its cells, names of the columns in its first row. */
export interface CsvTable {
  readonly file: string;
  readonly text: string;
  readonly delimiter: string;
  readonly header: CsvRow;
  readonly rows: readonly CsvRow[];
  /** Offsets at which the lines of the text begin. */
  readonly starts: readonly number[];
}

/** Most rows of one table, columns of one row, and letters of one row [-]. */
const MOST_ROWS = 5000;
const MOST_COLUMNS = 200;
const MOST_LETTERS = 20_000;
/** Most letters of one table [-]. */
const LONGEST = 2_000_000;
const DELIMITERS = [',', ';', '\t'] as const;

/** The sign that parts the cells: the one that stands most often in the first line. */
function delimiterOf(text: string): string {
  const first = /^[^\r\n]*/.exec(text)?.[0].replace(/"[^"]*"/g, '') ?? '';
  const counts = DELIMITERS.map((sign) => first.split(sign).length);
  return DELIMITERS[counts.indexOf(Math.max(...counts))] ?? ',';
}

/** What the parser gives for a row. */
interface ParsedRow {
  readonly record: readonly string[];
  readonly info: { readonly lines: number };
}

function isParsedRow(value: unknown): value is ParsedRow {
  return typeof value === 'object' && value !== null && 'record' in value && 'info' in value;
}

function rowsOf(text: string, delimiter: string): readonly CsvRow[] {
  const parsed: unknown = parse(text, {
    delimiter,
    info: true,
    relax_column_count: true,
    relax_quotes: true,
    skip_empty_lines: true,
    trim: true,
    to: MOST_ROWS + 2,
    max_record_size: MOST_LETTERS,
  });
  if (!Array.isArray(parsed)) return [];
  return parsed.filter(isParsedRow).flatMap(({ record, info }) => {
    // The parser counts the line a row ends at.
    const broken = record.join('').split('\n').length - 1;
    return record.every((cell) => cell === '') ? [] : [{ line: info.lines - broken, cells: record }];
  });
}

/**
 * Reads a table.
 *
 * @param source name and content of the file
 */
export function readTable({
  file,
  text: written,
}: TextFile):
  | { readonly ok: true; readonly table: CsvTable }
  | { readonly ok: false; readonly problem: Problem } {
  const text = written.startsWith('\uFEFF') ? written.slice(1) : written;
  const refused = (code: Problem['code'], message: string, line = 1): { ok: false; problem: Problem } => ({
    ok: false,
    problem: { code, file, line, column: 1, path: [], message },
  });
  const junk = text.search(/[\0\uFFFD]/);
  if (junk >= 0) {
    const { problem } = refused('not-text', 'not a text file in UTF-8', placeIn(text, junk).line);
    return { ok: false, problem: { ...problem, suggestion: 'save it as UTF-8' } };
  }
  if (text.length > LONGEST) return refused('too-large', `more than ${LONGEST} letters`);
  const starts = lineStarts(text);
  const long = starts.findIndex((start, line) => (starts[line + 1] ?? text.length) - start > MOST_LETTERS);
  if (long >= 0) return refused('too-large', `a line has more than ${MOST_LETTERS} letters`, long + 1);
  const delimiter = delimiterOf(text);
  try {
    const [header, ...rows] = rowsOf(text, delimiter);
    if (!header) return refused('empty-file', 'the file is empty');
    if (rows.length > MOST_ROWS) return refused('too-large', `more than ${MOST_ROWS} rows`);
    const widest = Math.max(...[header, ...rows].map(({ cells }) => cells.length));
    if (widest > MOST_COLUMNS) return refused('too-large', `more than ${MOST_COLUMNS} columns`);
    return { ok: true, table: { file, text, delimiter, header, rows, starts } };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const line = 'lines' in error && typeof error.lines === 'number' ? error.lines : 1;
    return refused('syntax', TROUBLES[error.code] ?? 'this is no table of cells', Math.max(line, 1));
  }
}

/** What the parser's words for trouble mean. */
const TROUBLES: Readonly<Record<string, string>> = {
  CSV_QUOTE_NOT_CLOSED: 'a quotation mark is not closed',
  CSV_MAX_RECORD_SIZE: `a row has more than ${MOST_LETTERS} letters, or a quotation mark is not closed`,
};

/** Column of the text at which a cell begins, from 1; 1 if its row has several lines. */
function columnOf(line: string, index: number, delimiter: string): number {
  let at = 0;
  let quoted = false;
  for (const [offset, letter] of [...line].entries()) {
    if (at === index) {
      const rest = [...line].slice(offset);
      const blank = rest.findIndex((each) => each !== ' ');
      return offset + 1 + Math.max(0, blank);
    }
    if (letter === '"') quoted = !quoted;
    else if (letter === delimiter && !quoted) at++;
  }
  return at === index ? [...line].length + 1 : 1;
}

/**
 * A problem with a row, or with one cell of it.
 *
 * @param table the row is in
 * @param row to blame
 * @param index of the cell; undefined for the row as a whole
 * @param words what is wrong
 */
export function rowProblem(
  table: Pick<CsvTable, 'file' | 'text' | 'delimiter' | 'starts'>,
  row: CsvRow,
  index: number | undefined,
  words: Pick<Problem, 'code' | 'message' | 'found' | 'expected' | 'suggestion'>,
): Problem {
  const { starts, text } = table;
  const { sourceLine } = placeIn(text, starts[row.line - 1] ?? 0, starts);
  const column = index === undefined ? 1 : columnOf(sourceLine, index, table.delimiter);
  return { file: table.file, line: row.line, column, path: [], sourceLine, ...words };
}
