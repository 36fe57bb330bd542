import stringWidth from 'string-width';
import { blanks } from '../column.ts';
import { printable } from '../printable.ts';
import { type CanvasPoint, newCanvas } from './canvas.ts';
import { type ScaleKind, type Tick, ticksOf } from './ticks.ts';

/** A point of a curve, in the units of the axes; a point whose y is not finite is a gap. */
export interface PlotPoint {
  readonly x: number;
  readonly y: number;
  /** Character of this point; that of the series if absent. */
  readonly mark?: string;
}

/** One curve. */
export interface PlotSeries {
  /** Shown in the legend; none if empty. */
  readonly name: string;
  /** Tells its points from those of others without colour; empty for a line without marks. */
  readonly mark: string;
  readonly points: readonly PlotPoint[];
}

/** What a plot shows beside its curves. */
export interface PlotOptions {
  /** Columns of the whole plot. */
  readonly width: number;
  /** Rows of the field without axes. */
  readonly height: number;
  /** What is along the bottom, with its unit. */
  readonly xLabel: string;
  /** What is up the side, with its unit. */
  readonly yLabel: string;
  readonly xScale?: ScaleKind;
  /** Values of x that an upright dotted line marks. */
  readonly uprights?: readonly number[];
  /** Words for marks of single points and of uprights. */
  readonly legend?: readonly string[];
}

/** Columns between two ticks along the bottom. */
const TICK_COLUMNS = 10;
/** Rows between two ticks up the side. */
const TICK_ROWS = 3;
/** Share of the range that is left free above and below [-]. */
const ROOM = 0.04;

interface Range {
  readonly low: number;
  readonly high: number;
}

function rangeOf(values: readonly number[]): Range {
  const low = Math.min(...values);
  const high = Math.max(...values);
  return low < high
    ? { low, high }
    : { low: low - (Math.abs(low) || 1) / 2, high: high + (Math.abs(high) || 1) / 2 };
}

function widened({ low, high }: Range): Range {
  const room = ROOM * (high - low);
  return { low: low - room, high: high + room };
}

function shareOf({ low, high }: Range, scale: ScaleKind): (value: number) => number {
  if (scale === 'log' && low > 0) return (value) => Math.log(value / low) / Math.log(high / low);
  return (value) => (value - low) / (high - low);
}

/** Labels up the side, right-aligned, one a row; empty where there is no tick. */
function sideLabels(
  ticks: readonly Tick[],
  share: (value: number) => number,
  rows: number,
): readonly string[] {
  const labels = Array.from({ length: rows }, () => '');
  for (const { value, text } of ticks) labels[Math.round((1 - share(value)) * (rows - 1))] = text;
  const width = Math.max(...labels.map((text) => text.length));
  return labels.map((text) => `${text.padStart(width)} ${text === '' ? '│' : '┤'}`);
}

/** The line and the numbers along the bottom; a number that would touch the one before is left out. */
function bottomLines(
  ticks: readonly Tick[],
  share: (value: number) => number,
  columns: number,
): readonly string[] {
  const rule = Array.from({ length: columns }, () => '─');
  let numbers = '';
  for (const { value, text } of ticks) {
    const at = Math.round(share(value) * (columns - 1));
    rule[at] = '┬';
    const start = Math.max(0, at - Math.floor(text.length / 2));
    if (numbers !== '' && start < numbers.length + 2) continue;
    numbers = numbers.padEnd(start) + text;
  }
  return [rule.join(''), numbers];
}

function legendLine(series: readonly PlotSeries[], more: readonly string[]): readonly string[] {
  const named = series
    .filter(({ name }) => name !== '')
    .map(({ mark, name }) => `${mark} ${printable(name)}`);
  const all = [...named, ...more];
  return all.length > 0 ? [all.join('   ')] : [];
}

/**
 * Curves as text: lines of braille dots, points as marks, axes with round numbers. Colour carries nothing.
 *
 * @param series curves, at least one with a finite point
 * @param options size, labels, marks
 * @returns lines without spaces at the end; none if there is nothing to draw
 */
export function plot(series: readonly PlotSeries[], options: PlotOptions): readonly string[] {
  const { width, height, xScale = 'linear', uprights = [] } = options;
  const points = series
    .flatMap((each) => each.points)
    .filter(({ x, y }) => Number.isFinite(x) && Number.isFinite(y));
  if (points.length === 0) return [];
  const xRange = rangeOf(series.flatMap((each) => each.points.map(({ x }) => x)).filter(Number.isFinite));
  const yRange = widened(rangeOf(points.map(({ y }) => y)));
  const yShare = shareOf(yRange, 'linear');
  const yTicks = ticksOf(yRange.low, yRange.high, Math.max(2, Math.floor(height / TICK_ROWS) + 1));
  const side = sideLabels(yTicks, yShare, height);
  const indent = stringWidth(side[0] ?? '');
  const columns = Math.max(8, width - indent - 2);
  const xShare = shareOf(xRange, xScale);
  const canvas = newCanvas(columns, height);
  for (const x of uprights) canvas.upright(xShare(x));
  const place = ({ x, y }: PlotPoint): CanvasPoint => ({ across: xShare(x), up: yShare(y) });
  for (const { points: own } of series) drawLines(own, place, canvas.line);
  for (const { points: own, mark } of series) drawMarks(own, mark, place, canvas.mark);
  const xTicks = ticksOf(xRange.low, xRange.high, Math.max(2, Math.floor(columns / TICK_COLUMNS)), xScale);
  const [rule = '', numbers = ''] = bottomLines(xTicks, xShare, columns);
  const label = printable(options.xLabel);
  const room = Math.max(0, Math.floor((columns - stringWidth(label)) / 2));
  return [
    printable(options.yLabel),
    ...canvas.lines().map((line, row) => `${side[row] ?? ''}${line}`),
    `${blanks(indent - 1)}└${rule}`,
    `${blanks(indent)}${numbers}`,
    `${blanks(indent + room)}${label}`,
    ...legendLine(series, options.legend ?? []),
  ].map((line) => line.trimEnd());
}

function drawLines(
  points: readonly PlotPoint[],
  place: (point: PlotPoint) => CanvasPoint,
  line: (from: CanvasPoint, to: CanvasPoint) => void,
): void {
  points.forEach((point, index) => {
    const before = points[index - 1];
    if (before && Number.isFinite(before.y) && Number.isFinite(point.y)) line(place(before), place(point));
  });
}

function drawMarks(
  points: readonly PlotPoint[],
  mark: string,
  place: (point: PlotPoint) => CanvasPoint,
  put: (at: CanvasPoint, character: string) => void,
): void {
  for (const point of points) {
    const character = point.mark ?? mark;
    if (character !== '' && Number.isFinite(point.y)) put(place(point), character);
  }
}
