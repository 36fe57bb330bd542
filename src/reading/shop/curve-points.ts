import type { Fraction } from '../../quantities/dimensions.ts';
import { readQuantity, usualUnit } from '../../quantities/units.ts';
import type { TextFile } from '../catalog-file.ts';
import { curveFinding } from '../curve-check.ts';
import type { Problem } from '../problem.ts';
import { type Cells, idFrom, quantityAt, textAt } from './cells.ts';
import { columnsOf } from './columns.ts';
import { type CsvRow, type CsvTable, readTable, rowProblem } from './csv-table.ts';
import type { WrittenCurve } from './fan-row.ts';

/** How far, as a share of the greatest value, a click may miss the axis and still be meant to lie on it [-]. Assumption. */
const CLICK: Fraction = 0.03;
/** Most points of one curve [-]. */
const MOST_POINTS = 500;
/** Digits that are kept of a digitised point. */
const DIGITS = 5;

interface Point {
  readonly row: CsvRow;
  readonly flow: number;
  readonly pressure: number;
}

/** A curve and the file it comes from. */
export interface FiledCurve {
  readonly curve: WrittenCurve;
  readonly file: string;
}

/** Curves by the id of their fan, and what is wrong with their files. */
export interface ReadCurves {
  readonly curves: ReadonlyMap<string, FiledCurve>;
  readonly problems: readonly Problem[];
}

/** The id a file stands for that names no fan: that of its own name. */
function idOfFile(file: string): string {
  return idFrom((file.split(/[\\/]/).at(-1) ?? file).replace(/\.[^.]*$/, ''));
}

function pointOf(cells: Cells, table: CsvTable, problems: Problem[]): Point | undefined {
  const values = (['flow', 'pressure'] as const).map((name) => {
    const column = cells.columns.known.get(name);
    const text = quantityAt(cells, name);
    if (text === undefined) {
      const message = `"${name}" is missing`;
      problems.push(rowProblem(table, cells.row, column?.index, { code: 'missing-key', message }));
      return undefined;
    }
    const read = readQuantity(name, text);
    if (read.ok) return read.value;
    const words = { code: 'wrong-value', message: 'this does not fit here', ...read.misfit } as const;
    problems.push(rowProblem(table, cells.row, column?.index, words));
    return undefined;
  });
  const [flow, pressure] = values;
  return flow === undefined || pressure === undefined ? undefined : { row: cells.row, flow, pressure };
}

/** Clicks beside an axis are put on it; points at one flow become their mean. */
function cleaned(points: readonly Point[]): { flows: number[]; pressures: number[] } {
  const sorted = points.toSorted((one, other) => one.flow - other.flow);
  const most = {
    flow: Math.max(...points.map((p) => p.flow)),
    pressure: Math.max(...points.map((p) => p.pressure)),
  };
  const snapped = (value: number, greatest: number): number =>
    Math.abs(value) <= CLICK * greatest ? 0 : value;
  const flows: number[] = [];
  const groups: number[][] = [];
  for (const [index, { flow, pressure }] of sorted.entries()) {
    const x = index === 0 || flow < 0 ? snapped(flow, most.flow) : flow;
    const last = index === sorted.length - 1;
    const y = last || pressure < 0 ? snapped(pressure, most.pressure) : pressure;
    if (flows.at(-1) === x) groups.at(-1)?.push(y);
    else {
      flows.push(x);
      groups.push([y]);
    }
  }
  return {
    flows,
    pressures: groups.map((group) => group.reduce((sum, each) => sum + each, 0) / group.length),
  };
}

function listOf(kind: 'flow' | 'pressure', values: readonly number[]): string {
  const unit = usualUnit(kind);
  const numbers = values.map((value) =>
    Number(((value * (unit.over ?? 1)) / (unit.times ?? 1)).toPrecision(DIGITS)),
  );
  return `${numbers.join(' ')} ${unit.name}`;
}

function curveOf(
  id: string,
  points: readonly Point[],
  table: CsvTable,
  problems: Problem[],
): WrittenCurve | undefined {
  const [first] = points;
  if (!first) return undefined;
  const refuse = (
    words: Pick<Problem, 'code' | 'message' | 'found' | 'expected' | 'suggestion'>,
  ): undefined => {
    problems.push(
      rowProblem(table, first.row, undefined, { ...words, message: `curve of "${id}": ${words.message}` }),
    );
  };
  if (points.length > MOST_POINTS) {
    return refuse({ code: 'too-large', message: 'too many points', expected: `at most ${MOST_POINTS}` });
  }
  const { flows, pressures } = cleaned(points);
  const negative = [...flows, ...pressures].some((value) => value < 0);
  if (negative)
    return refuse({ code: 'out-of-range', message: 'a point lies below an axis', expected: '0 or more' });
  const finding = curveFinding({ flows, pressures }, []);
  if (finding) {
    const { path: _, at: __, ...words } = finding;
    return refuse(words);
  }
  return { flow: listOf('flow', flows), pressure: listOf('pressure', pressures) };
}

const NO_HEAD = 'the first row does not name the columns';

function readTableCurves(table: CsvTable, problems: Problem[]): Map<string, WrittenCurve> {
  const columns = columnsOf(table);
  const lacking = (['flow', 'pressure'] as const).filter((name) => !columns.known.has(name));
  if (lacking.length > 0) {
    const expected = 'a first row such as flow m³/h, pressure Pa; or fan, flow m³/h, pressure Pa';
    problems.push(
      rowProblem(table, table.header, undefined, { code: 'missing-key', message: NO_HEAD, expected }),
    );
    return new Map();
  }
  const byFan = new Map<string, Point[]>();
  const spoilt = new Set<string>();
  for (const row of table.rows) {
    const cells = { row, columns };
    const id = columns.known.has('fan') ? idFrom(textAt(cells, 'fan') ?? '') : idOfFile(table.file);
    const point = pointOf(cells, table, problems);
    if (point) byFan.set(id, [...(byFan.get(id) ?? []), point]);
    else spoilt.add(id);
  }
  const curves = new Map<string, WrittenCurve>();
  for (const [id, points] of byFan) {
    const curve = spoilt.has(id) ? undefined : curveOf(id, points, table, problems);
    if (curve) curves.set(id, curve);
  }
  return curves;
}

/**
 * Reads digitised curves: one file a curve, which then is that of the fan the file is named for, or several in one
 * file with the fan in a column of its own.
 *
 * @param files names and contents
 */
export function readCurvePoints(files: readonly TextFile[]): ReadCurves {
  const curves = new Map<string, FiledCurve>();
  const problems: Problem[] = [];
  for (const source of files) {
    const read = readTable(source);
    if (!read.ok) {
      problems.push(read.problem);
      continue;
    }
    for (const [id, curve] of readTableCurves(read.table, problems)) {
      const other = curves.get(id);
      if (other) {
        const message = `a second curve of "${id}"`;
        problems.push(
          rowProblem(read.table, read.table.header, undefined, { code: 'duplicate-name', message }),
        );
      } else curves.set(id, { curve, file: source.file });
    }
  }
  return { curves, problems };
}
