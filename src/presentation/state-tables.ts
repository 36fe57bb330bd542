import type { ChamberOutcome, DutyOutcome, LimitOutcome } from '../enclosure/outcome.ts';
import type { KelvinDifference } from '../quantities/dimensions.ts';
import { fansOf } from './bank-columns.ts';
import { type Column, numberColumn, type Toned, textColumn } from './column.ts';
import { KEEP } from './column-fit.ts';
import { figure } from './figures.ts';
import { limited } from './standing-out.ts';

/** A margin that misses by less is met [K]: speeds are found to within this. */
const MARGIN_ACCURACY: KelvinDifference = 1e-3;

/**
 * Each limit, how it is met, and a mark in words.
 *
 * @param duty of a build
 * @param asked margin asked of every limit [K]
 */
export function limitTable({ parts, panels }: DutyOutcome, asked: KelvinDifference): readonly Column[] {
  const owners = [...parts, ...panels.map(({ chamber, limits }) => ({ part: chamber, limits }))];
  const limits = owners.flatMap(({ part, limits: own }) => own.map((limit) => ({ part, ...limit })));
  return [
    textColumn('Limit on', KEEP + 2, limits, limited),
    numberColumn('Found', '°C', KEEP, limits, ({ found }) => figure('temperature', found)),
    numberColumn('Limit', '°C', KEEP, limits, ({ limit }) => figure('temperature', limit)),
    numberColumn('Margin', 'K', KEEP + 1, limits, ({ margin }) => figure('kelvins', margin)),
    textColumn('', KEEP + 3, limits, (limit) => verdict(limit, asked)),
  ];
}

function verdict({ margin }: LimitOutcome, asked: KelvinDifference): Toned {
  if (margin < -MARGIN_ACCURACY) return { text: 'OVER', tone: 'bad' };
  if (margin < asked - MARGIN_ACCURACY) return { text: 'short of the asked margin', tone: 'bad' };
  return { text: 'ok', tone: 'good' };
}

/** Working point of each bank. */
export function fanTable({ banks }: DutyOutcome): readonly Column[] {
  return [
    textColumn('Place', KEEP, banks, ({ place }) => place),
    textColumn('Fan', KEEP + 1, banks, fansOf),
    numberColumn('Speed', '%', KEEP + 3, banks, ({ ratio }) => figure('percent', ratio)),
    numberColumn('', 'rpm', KEEP + 2, banks, ({ speed }) => figure('rpm', speed)),
    numberColumn('Flow', 'm³/h', 40, banks, ({ flow }) => figure('flow', flow)),
    numberColumn('Of free', '%', 20, banks, ({ flowShare }) => figure('percent', flowShare)),
    numberColumn('Rise', 'Pa', 30, banks, ({ pressureRise }) => figure('pressure', pressureRise)),
    numberColumn('Power', 'W', 10, banks, ({ power }) => figure('power', power)),
  ];
}

/** Pressure and temperature of the chambers and of what leaves the box. */
export function chamberTable({ chambers, exhaustTemperature }: DutyOutcome): readonly Column[] {
  const exhaust = { chamber: 'exhaust, mixed', temperature: exhaustTemperature };
  const rows: readonly (ChamberOutcome | typeof exhaust)[] = [...chambers, exhaust];
  return [
    textColumn('Chamber', KEEP, rows, ({ chamber }) => chamber),
    numberColumn('Pressure', 'Pa', 10, rows, (row) =>
      'pressure' in row ? figure('pressure', row.pressure) : '',
    ),
    numberColumn('Air', '°C', KEEP + 1, rows, ({ temperature }) => figure('temperature', temperature)),
  ];
}
