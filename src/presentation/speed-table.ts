import type { DutyOutcome } from '../enclosure/outcome.ts';
import { bankColumns } from './bank-columns.ts';
import { type Cell, type Column, numberColumn, textColumn } from './column.ts';
import { KEEP } from './column-fit.ts';
import { figure, levelText, NONE } from './figures.ts';
import { limited } from './standing-out.ts';

/**
 * One row a duty: noise, margin, and how fast every bank runs.
 *
 * @param duties of a build
 */
export function speedTable(duties: readonly DutyOutcome[]): readonly Column[] {
  return [
    textColumn('Duty', KEEP + 5, duties, ({ duty }) => duty),
    numberColumn('Time', '%', 20, duties, ({ share }) => figure('percent', share)),
    numberColumn('Noise', 'dB(A)', KEEP + 1, duties, ({ level }) => levelText(level)),
    numberColumn('Margin', 'K', KEEP + 1, duties, margin),
    textColumn('Tightest', 50, duties, ({ tightest }) => (tightest ? limited(tightest) : 'no limit')),
    numberColumn('Power', 'W', 10, duties, ({ fanPower }) => figure('power', fanPower)),
    ...bankColumns(duties.map(({ banks }) => ({ banks, chosen: [] }))),
  ];
}

function margin({ adequate, tightest }: DutyOutcome): Cell {
  const text = tightest ? figure('kelvins', tightest.margin) : NONE;
  return adequate ? text : { text, tone: 'bad' };
}
