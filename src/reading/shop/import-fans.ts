import { describeValue } from '../../quantities/written.ts';
import { SOUND_ASSUMPTIONS } from '../../sound/sound-assumptions.ts';
import { readCatalogs, type TextFile } from '../catalog-file.ts';
import { fanDoubts } from '../doubts/fan-doubts.ts';
import { readFan } from '../fan-entry.ts';
import { fanForm } from '../fan-form.ts';
import { check, type Findings, type WrittenMap } from '../findings.ts';
import type { Finding, Problem } from '../problem.ts';
import { type ColumnName, type Columns, columnsOf } from './columns.ts';
import { type CsvRow, type CsvTable, readTable, rowProblem } from './csv-table.ts';
import { type ReadCurves, readCurvePoints } from './curve-points.ts';
import { familyText } from './family-text.ts';
import { fanOfRow } from './fan-row.ts';

/** Tables to make a family of fans from. */
export interface ImportSources {
  /** Name of the family. */
  readonly family: string;
  /** Lists of a shop: a row a fan. */
  readonly lists: readonly TextFile[];
  /** Digitised curves. */
  readonly curves: readonly TextFile[];
}

/** A family made from tables: what is good, and what is not. */
export interface ImportedFans {
  /** The catalog as text; undefined if no row is good. */
  readonly text: string | undefined;
  readonly count: number;
  /** One or more for each row that is left out. */
  readonly problems: readonly Problem[];
  /** What is odd about the rows that are kept, and columns nothing was made of. */
  readonly doubts: readonly Problem[];
}

/** Problems after which a list is not read on [-]. */
const MOST_PROBLEMS = 500;

/** What has been taken in so far. */
interface Intake {
  readonly fans: WrittenMap[];
  /** Files and rows of the fans by their ids. */
  readonly taken: Map<string, string>;
  readonly curves: ReadCurves['curves'];
  readonly usedCurves: Set<string>;
  readonly problems: Problem[];
  readonly doubts: Problem[];
}

/** The column a finding is about: the last step of its path that is one. */
function indexOf({ path }: Finding, columns: Columns): number | undefined {
  const named = path.filter((step) => typeof step === 'string').toReversed();
  for (const step of named) {
    const column = columns.known.get(step as ColumnName);
    if (column) return column.index;
  }
  return undefined;
}

function problemsOf(
  findings: readonly Finding[],
  table: CsvTable,
  row: CsvRow,
  columns: Columns,
): readonly Problem[] {
  return findings.map((finding) => {
    const { path, at: _, ...words } = finding;
    const place = rowProblem(table, row, indexOf(finding, columns), words);
    return { ...place, path };
  });
}

/** Everything that is wrong with a fan made from a row, and what is odd about it. */
function judged(written: WrittenMap): { readonly findings: Findings; readonly odd: readonly Finding[] } {
  const findings: Findings = [];
  const fields = check(fanForm, written, [], findings);
  const context = { provenance: 'box', sound: SOUND_ASSUMPTIONS } as const;
  const fan = fields && readFan(fields, [], context, findings);
  // A power that was to be estimated from figures that cannot be read is no second problem.
  const others = findings.filter(({ path, code }) => !(code === 'missing-key' && path[0] === 'power'));
  if (others.length > 0) return { findings: others, odd: [] };
  return { findings, odd: fields && fan ? fanDoubts({ fan, fields, written, path: [] }) : [] };
}

function takeRow(table: CsvTable, row: CsvRow, columns: Columns, intake: Intake): void {
  const cells = { row, columns };
  const fan = fanOfRow(cells, (id) => intake.curves.get(id)?.curve);
  const { findings, odd } = judged(fan);
  const id = describeValue(fan['fan']);
  const owner = intake.taken.get(id);
  if (owner !== undefined) {
    const message = `a second fan is called "${id}", after ${owner}`;
    findings.push({ code: 'duplicate-name', path: ['fan'], at: 'value', message });
  }
  if (intake.curves.has(id)) intake.usedCurves.add(id);
  if (findings.length > 0) {
    intake.problems.push(...problemsOf(findings, table, row, columns));
    return;
  }
  intake.doubts.push(...problemsOf(odd, table, row, columns));
  intake.taken.set(id, `${table.file}:${row.line}`);
  intake.fans.push(fan);
}

function takeList(source: TextFile, intake: Intake): void {
  const read = readTable(source);
  if (!read.ok) {
    intake.problems.push(read.problem);
    return;
  }
  const { table } = read;
  const columns = columnsOf(table);
  if (!columns.known.has('fan')) {
    const expected =
      'a first row such as fan, size mm, depth mm, flow CFM, pressure mmH2O, level dBA, rpm, price';
    const words = { code: 'missing-key', message: 'no column is called "fan"', expected } as const;
    intake.problems.push(rowProblem(table, table.header, undefined, words));
    return;
  }
  for (const { head, index, near } of columns.unused) {
    const message = `nothing is made of the column "${head}"`;
    const words = { code: 'unused', message, ...(near === undefined ? {} : { suggestion: near }) } as const;
    intake.doubts.push(rowProblem(table, table.header, index, words));
  }
  if (table.rows.length === 0) {
    const words = { code: 'empty-file', message: 'there is no row below the first' } as const;
    intake.problems.push(rowProblem(table, table.header, undefined, words));
  }
  for (const row of table.rows) {
    if (intake.problems.length > MOST_PROBLEMS) {
      const words = {
        code: 'too-large',
        message: 'too many problems: rows from here on are not read',
      } as const;
      intake.problems.push(rowProblem(table, row, undefined, words));
      return;
    }
    takeRow(table, row, columns, intake);
  }
}

/**
 * Makes a family of fans from a shop's lists and digitised curves. A row with a problem is left out, the others are
 * kept.
 *
 * @param sources tables and the name of the family
 */
export function importFans({ family, lists, curves }: ImportSources): ImportedFans {
  const read = readCurvePoints(curves);
  const intake: Intake = {
    fans: [],
    taken: new Map(),
    curves: read.curves,
    usedCurves: new Set(),
    problems: [...read.problems],
    doubts: [],
  };
  for (const list of lists) takeList(list, intake);
  for (const [id, { file }] of read.curves) {
    if (intake.usedCurves.has(id)) continue;
    const message = `no row of a list is called "${id}", so this curve has no fan`;
    intake.problems.push({ code: 'unknown-name', file, line: 1, column: 1, path: [], message });
  }
  const { fans, problems, doubts } = intake;
  if (fans.length === 0) return { text: undefined, count: 0, problems, doubts };
  const text = familyText(family, fans);
  const back = readCatalogs([{ file: family, text }]);
  // Every row was read as the catalog would be, so that this cannot happen; and if it does, nothing is written.
  if (!back.ok) throw new Error(`the catalog cannot be read back: ${back.problems[0]?.message}`);
  return { text, count: fans.length, problems, doubts };
}
