import { inUnit, usualUnit } from '../../quantities/units.ts';
import type { BuildState } from '../../questions/build-state.ts';
import type { Axis, Sweep } from '../../questions/sweep.ts';
import type { SweepPoint } from '../../questions/sweep-point.ts';
import { type Cell, type Column, numberColumn, textColumn } from '../column.ts';
import { KEEP } from '../column-fit.ts';
import { figure, levelText, NONE } from '../figures.ts';
import { plot } from '../plot/plot.ts';
import { wrapped } from '../prose.ts';
import { type Drawing, table } from '../table.ts';
import { shownDuty, stateColumns } from './question-columns.ts';
import { sureColumns, sureLegend } from './sweep-sure.ts';

/** What may be drawn and set out in a matrix. */
export const SHOWN = ['level', 'margin', 'flow', 'power'] as const;
/** One of them. */
export type Shown = (typeof SHOWN)[number];

/** How a sweep is shown. */
export interface SweepViewOptions extends Drawing {
  readonly title: string;
  readonly shown: Shown;
}

/** Rows of the field of a plot. */
const PLOT_ROWS = 14;
/** Widest plot [columns]: beyond it curves only get flat. */
const WIDEST_PLOT = 100;

const names: Readonly<Record<Shown, string>> = {
  level: 'mean level, dB(A)',
  margin: 'least margin, K',
  flow: 'flow into the box, m³/h',
  power: 'power of the fans, W',
};

function numberOf(state: BuildState, shown: Shown): number {
  switch (shown) {
    case 'level':
      return state.level;
    case 'margin':
      return state.tightest?.margin ?? Number.NaN;
    case 'flow':
      return inUnit(usualUnit('flow'), shownDuty(state)?.flow ?? Number.NaN);
    default:
      return state.fanPower;
  }
}

function textOf(state: BuildState, shown: Shown): string {
  switch (shown) {
    case 'level':
      return levelText(state.level);
    case 'margin':
      return state.tightest ? figure('kelvins', state.tightest.margin) : NONE;
    case 'flow':
      return figure('flow', shownDuty(state)?.flow ?? Number.NaN);
    default:
      return figure('power', state.fanPower);
  }
}

/** A written value with no more digits than are worth reading. */
function rounded(text: string): string {
  return text.replace(/\d+\.\d+/g, (number) => String(Number(Number(number).toPrecision(4))));
}

/** Name of an axis with its unit. */
function labelOf({ quantity, range }: Axis): string {
  return range.unit === '' ? quantity.name : `${quantity.name}, ${range.unit}`;
}

function rowsTable({ axes, points }: Sweep, drawing: Drawing): readonly string[] {
  const [axis] = axes;
  const value = ({ positions }: SweepPoint): string => rounded(axis?.range.textAt(positions[0] ?? 0) ?? '');
  return table(
    [
      textColumn(axis?.quantity.name ?? '', KEEP + 9, points, value),
      ...stateColumns(
        points.map(({ state }) => state),
        sureColumns(points),
      ),
    ],
    drawing,
  );
}

/** Values along the first axis from left to right, along the second from top to bottom. */
function matrixTable({ axes, points }: Sweep, shown: Shown, drawing: Drawing): readonly string[] {
  const [across, down] = axes;
  if (!across || !down) return [];
  const columns = across.range.positions;
  const rows = down.range.positions;
  const cell = (row: number, column: number): Cell => {
    const state = points[row * columns.length + column]?.state;
    if (state === undefined || typeof state === 'string') return { text: NONE, tone: 'bad' };
    return state.adequate ? textOf(state, shown) : { text: `${textOf(state, shown)} !`, tone: 'bad' };
  };
  const list: readonly Column[] = [
    textColumn(
      down.quantity.name,
      KEEP + 9,
      rows.map((position) => rounded(down.range.textAt(position))),
      (text) => text,
    ),
    ...columns.map((position, column) =>
      numberColumn(
        rounded(across.range.textAt(position)),
        '',
        KEEP + 1,
        rows.map((_, row) => row),
        (row) => cell(row, column),
      ),
    ),
  ];
  return table(list, drawing);
}

function curve(
  { axes, points, crossings }: Sweep,
  shown: Shown,
  width: number | undefined,
): readonly string[] {
  const [axis] = axes;
  if (!axis?.range.continuous) return [];
  const drawn = points.map(({ positions, state }) => ({
    x: axis.range.numberAt(positions[0] ?? 0),
    y: typeof state === 'string' ? Number.NaN : numberOf(state, shown),
    mark: typeof state !== 'string' && state.adequate ? '●' : '×',
  }));
  const uprights = crossings.map(({ position }) => axis.range.numberAt(position));
  return plot([{ name: '', mark: '', points: drawn }], {
    width: Math.min(width ?? WIDEST_PLOT, WIDEST_PLOT),
    height: PLOT_ROWS,
    xLabel: labelOf(axis),
    yLabel: names[shown],
    xScale: axis.range.spacing,
    uprights,
    legend: ['● adequate', '× not adequate', ...(uprights.length > 0 ? ['┊ where that changes'] : [])],
  });
}

function crossingSentences({ axes, points, crossings }: Sweep): readonly string[] {
  const [axis] = axes;
  if (!axis) return [];
  const { name } = axis.quantity;
  if (crossings.length > 0) {
    return crossings.map(({ position, adequateAbove }) => {
      const at = rounded(axis.range.textAt(position));
      return adequateAbove
        ? `Adequate from ${name} = ${at} on, not before.`
        : `Adequate up to ${name} = ${at}, not beyond.`;
    });
  }
  const answers = points.filter(({ state }) => typeof state !== 'string');
  if (answers.length === 0) return ['There is no answer at any point.'];
  const adequate = answers.filter(({ state }) => typeof state !== 'string' && state.adequate).length;
  if (adequate === answers.length) return ['Adequate at every point.'];
  return adequate === 0 ? ['Not adequate at any point.'] : [];
}

/** Which speeds stand in the column of speeds, and in which duty. */
function speedsLegend({ banks, points }: Sweep): readonly string[] {
  const state = points.map((point) => point.state).find((each) => typeof each !== 'string');
  const duty = typeof state === 'object' ? shownDuty(state)?.duty : undefined;
  const places = banks.map(({ place, fan, count }) => `${place} (${fan} x${count})`).join(' / ');
  return duty === undefined || places === '' ? [] : [`Flow and speeds: in ${duty}. Speeds of ${places}.`];
}

/**
 * A sweep as text: its table and curve, or the matrix of two quantities, and where adequacy begins or ends.
 *
 * @param swept the answer
 * @param options title, what is drawn, width and paint
 * @returns lines that end with a line break
 */
export function sweepView(swept: Sweep, options: SweepViewOptions): string {
  const { paint, width, shown, title } = options;
  const say = (text: string): readonly string[] => wrapped(text, width);
  const [first, second] = swept.axes;
  const head = second
    ? `${title}: ${names[shown]} over ${first?.quantity.name} (across) and ${second.quantity.name} (down)`
    : `${title}: ${first?.quantity.name ?? ''} varied`;
  const body = second ? matrixTable(swept, shown, options) : rowsTable(swept, options);
  const drawn = second ? [] : curve(swept, shown, width);
  const lines = [
    ...say(head).map(paint.strong),
    '',
    ...body,
    ...(drawn.length > 0 ? ['', ...drawn] : []),
    '',
    ...(second ? say('Not adequate: !, no answer: –.') : crossingSentences(swept).flatMap(say)),
    ...(second ? [] : [...speedsLegend(swept), ...sureLegend(swept.points)].flatMap(say).map(paint.faint)),
  ];
  return `${lines.join('\n')}\n`;
}
