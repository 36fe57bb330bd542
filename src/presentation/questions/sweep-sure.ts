import type { Band } from '../../bands/band.ts';
import type { SweepPoint } from '../../questions/sweep-point.ts';
import type { PointSureness } from '../../questions/sweep-sure.ts';
import { bandData } from '../bands/band-data.ts';
import { percentOf } from '../bands/band-words.ts';
import { type Column, textColumn } from '../column.ts';
import type { CsvCell } from '../csv.ts';
import type { Json } from '../document.ts';
import { figure, fixed, NONE } from '../figures.ts';
import { MOST_TOLD } from '../tellable.ts';
import { orNull } from './state-data.ts';

/** A band at least so wide is shown in whole decibels or kelvins [dB or K]. */
const WIDE = 4;

/** The ends of a band without their unit. */
function ends({ low, high }: Band): string {
  if (!Number.isFinite(low) && !Number.isFinite(high)) return NONE;
  const decimals = high - low >= WIDE ? 0 : 1;
  const end = (value: number): string =>
    Math.abs(value) < MOST_TOLD ? fixed(value, decimals) : figure('kelvins', value);
  return `${end(low)} to ${end(high)}`;
}

/** Whether any point has bands. */
function hasBands(points: readonly SweepPoint[]): boolean {
  return points.some(({ sure }) => sure !== null);
}

/**
 * Columns of how sure the numbers of each point are; none if no point has bands.
 *
 * @param points of a sweep
 */
export function sureColumns(points: readonly SweepPoint[]): readonly Column[] {
  if (!hasBands(points)) return [];
  const column = (
    head: string,
    unit: string,
    priority: number,
    cell: (sure: PointSureness) => string,
  ): Column => ({
    ...textColumn(head, priority, points, ({ sure }) => (sure ? cell(sure) : NONE)),
    unit,
  });
  const limits = points.some(({ sure }) => sure?.margin);
  return [
    column('Level in', 'dB(A)', 58, ({ level }) => ends(level)),
    ...(limits
      ? [
          column('Margin in', 'K', 30, ({ margin }) => (margin ? ends(margin) : NONE)),
          column('Hold', '%', 56, ({ holding }) => percentOf(holding)),
        ]
      : []),
  ];
}

/**
 * What those columns mean.
 *
 * @param points of a sweep
 */
export function sureLegend(points: readonly SweepPoint[]): readonly string[] {
  if (!hasBands(points)) return [];
  const limits = points.some(({ sure }) => sure?.margin);
  if (!limits) return ['Level in: the truth lies there nine times in ten.'];
  return [
    'Level in, margin in: the truth lies there nine times in ten, the margin of the limit that is tightest as stated.',
    'Hold: how likely all limits hold at once, without the asked margin.',
  ];
}

/** How sure a point is, as data; null without a solution. */
export function sureData(sure: PointSureness | null): Json {
  if (!sure) return null;
  const { level, margin, holding } = sure;
  return { level_dBA: bandData(level), margin_K: margin ? bandData(margin) : null, holding };
}

/** Heads of {@link sureCells}. */
export const SURE_HEADS = [
  'mean level from [dB(A)]',
  'mean level to [dB(A)]',
  'least margin from [K]',
  'least margin to [K]',
  'limits hold [1]',
] as const;

/** How sure a point is, as cells; empty without a solution. */
export function sureCells(sure: PointSureness | null): readonly CsvCell[] {
  return [
    orNull(sure?.level.low),
    orNull(sure?.level.high),
    orNull(sure?.margin?.low),
    orNull(sure?.margin?.high),
    orNull(sure?.holding),
  ];
}
