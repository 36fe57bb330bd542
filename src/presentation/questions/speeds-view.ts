import { findUnit, inUnit, usualUnit } from '../../quantities/units.ts';
import type { BankSpeed } from '../../questions/bank-speed.ts';
import type { ControllerLadder } from '../../questions/controller-ladder.ts';
import type { ControlledBank, ControllerTable, DutySetting } from '../../questions/controller-table.ts';
import { type Cell, type Column, numberColumn, textColumn } from '../column.ts';
import { KEEP } from '../column-fit.ts';
import { figure, fixed, levelWords, NONE, quantity } from '../figures.ts';
import { plot } from '../plot/plot.ts';
import { wrapped } from '../prose.ts';
import { limited } from '../standing-out.ts';
import { type Drawing, table } from '../table.ts';
import { sureColumns } from './speeds-sure.ts';

type FoundLadder = Extract<ControllerLadder, { ok: true }>;

/** Rows of the field of the plot. */
const PLOT_ROWS = 10;
/** Widest plot [columns]. */
const WIDEST_PLOT = 80;
/** How much of the scale is shown beyond the first and the last step [K]. */
const BEYOND = 5;
/** Marks that tell the curves of banks apart. */
const MARKS = ['●', '○', '◆', '◇', '▲', '△'] as const;

/**
 * A speed rounded up to whole percents, so that no limit is broken by it; with two decimals where that would lead into a
 * band to avoid.
 */
function percentUp({ avoid, fullSpeed }: ControlledBank, { ratio }: BankSpeed): string {
  const up = Math.min(1, Math.ceil(100 * ratio - 1e-6) / 100);
  const speed = up * fullSpeed;
  return avoid.some(({ from, to }) => speed > from && speed < to)
    ? fixed(100 * ratio, 2)
    : figure('percent', up);
}

function speedText(bank: ControlledBank, speed: BankSpeed): string {
  return `${percentUp(bank, speed)} %, ${figure('rpm', speed.speed)} rpm`;
}

function bankColumns(banks: readonly ControlledBank[]): readonly Column[] {
  return [
    textColumn('Place', KEEP + 3, banks, ({ place }) => place),
    textColumn('Fan', KEEP + 1, banks, ({ fan, count }) => `${fan} x${count}`),
    numberColumn('Full', 'rpm', KEEP, banks, ({ fullSpeed }) => figure('rpm', fullSpeed)),
    textColumn('Starts from', KEEP + 2, banks, (bank) => speedText(bank, bank.startFloor)),
    textColumn('Holds from', KEEP + 2, banks, (bank) => speedText(bank, bank.holdFloor)),
    textColumn('Avoid, rpm', KEEP + 1, banks, ({ avoid }) =>
      avoid.length === 0
        ? NONE
        : avoid.map(({ from, to }) => `${figure('rpm', from)} to ${figure('rpm', to)}`).join(', '),
    ),
  ];
}

/** Two columns a bank: percent and revolutions. */
function speedColumns<Row>(
  banks: readonly ControlledBank[],
  rows: readonly Row[],
  speedsOf: (row: Row) => readonly BankSpeed[],
): readonly Column[] {
  return banks.flatMap((bank, index) => {
    const cell = (row: Row, text: (speed: BankSpeed) => string): Cell => {
      const speed = speedsOf(row)[index];
      return speed ? text(speed) : NONE;
    };
    return [
      numberColumn(bank.place, '%', KEEP + 4, rows, (row) => cell(row, (speed) => percentUp(bank, speed))),
      numberColumn('', 'rpm', KEEP + 1, rows, (row) => cell(row, ({ speed }) => figure('rpm', speed))),
    ];
  });
}

function dutyColumns({ banks, duties, ladder }: ControllerTable): readonly Column[] {
  const settled = ({ duty }: DutySetting): Cell => {
    const found = ladder.ok ? ladder.duties.find((each) => each.duty === duty) : undefined;
    return found ? `line ${found.rung + 1}, ${levelWords(found.level)}` : NONE;
  };
  return [
    textColumn('Duty', KEEP + 9, duties, ({ duty }) => duty),
    numberColumn('Time', '%', 20, duties, ({ share }) => figure('percent', share)),
    ...speedColumns(banks, duties, ({ speeds }) => speeds),
    textColumn('', KEEP + 5, duties, ({ adequate }) =>
      adequate ? { text: 'ok', tone: 'good' } : { text: 'OVER', tone: 'bad' },
    ),
    ...(ladder.ok ? [textColumn('Controller settles on', 50, duties, settled)] : []),
  ];
}

function rungColumns(banks: readonly ControlledBank[], { rungs }: FoundLadder): readonly Column[] {
  const temperature = (value: number | undefined): string =>
    value === undefined ? NONE : figure('temperature', value);
  const numbered = rungs.map((rung, index) => ({ ...rung, number: index + 1 }));
  return [
    numberColumn('Line', '', KEEP + 5, numbered, ({ number }) => String(number)),
    numberColumn('Above', '°C', KEEP + 6, numbered, ({ from }) => temperature(from)),
    numberColumn('Back below', '°C', KEEP + 6, numbered, ({ back }) => temperature(back)),
    ...speedColumns(banks, numbered, ({ speeds }) => speeds),
    numberColumn('Drop', 'K', 30, numbered, ({ drop }) =>
      drop === undefined ? NONE : figure('kelvins', drop),
    ),
    textColumn('Start first', KEEP, numbered, ({ startFirst }) => startFirst.join(', ')),
  ];
}

/** Speed over temperature on the way up: a step at each threshold. */
function curves(
  banks: readonly ControlledBank[],
  { rungs }: FoundLadder,
  width: number | undefined,
): readonly string[] {
  const unit = usualUnit('temperature');
  const steps = rungs.flatMap(({ from }) => (from === undefined ? [] : [inUnit(unit, from)]));
  if (steps.length === 0) return [];
  const [low, high] = [Math.min(...steps) - BEYOND, Math.max(...steps) + BEYOND];
  const series = banks.map(({ place }, bank) => ({
    name: place,
    mark: MARKS[bank % MARKS.length] ?? '●',
    points: rungs.flatMap(({ from, speeds }, index) => {
      const next = rungs[index + 1]?.from;
      const y = 100 * (speeds[bank]?.ratio ?? Number.NaN);
      const ends = [
        from === undefined ? low : inUnit(unit, from),
        next === undefined ? high : inUnit(unit, next),
      ];
      return ends.map((x, at) => ({ x, y, ...(at === 1 ? { mark: '' } : {}) }));
    }),
  }));
  return plot(series, {
    width: Math.min(width ?? WIDEST_PLOT, WIDEST_PLOT),
    height: PLOT_ROWS,
    xLabel: `temperature, ${unit.name}`,
    yLabel: `speed, ${findUnit('percent', '%')?.name ?? ''} of full speed`,
  });
}

const reasons: Readonly<Record<Exclude<ControllerLadder, { ok: true }>['reason'], string>> = {
  'no banks': 'the build has no fans',
  'no limit': 'nothing has a limit, so no temperature asks for air',
  'not adequate': 'a duty cannot be met at any speed',
  'faster is not cooler': 'faster fans do not always cool every limited part here',
  'no temperature tells what is asked':
    'no limited temperature rises steadily with what is asked of the fans',
};

function ladderLines({ banks, ladder }: ControllerTable, drawing: Drawing): readonly string[] {
  const { paint, width } = drawing;
  const say = (text: string): readonly string[] => wrapped(text, width);
  if (!ladder.ok) return say(`No table for a controller: ${reasons[ladder.reason]}.`).map(paint.bad);
  const { sensor } = ladder;
  const reads = limited({ of: sensor.of, part: sensor.subject });
  const drawn = curves(banks, ladder, width);
  return [
    ...say(
      `Controller: speed over the temperature of ${reads}, limit ${quantity('temperature', sensor.limit)}`,
    ).map(paint.strong),
    ...table(rungColumns(banks, ladder), drawing),
    ...(drawn.length > 0 ? ['', ...drawn] : []),
    '',
    ...say(
      'One line at a time, and only once the temperature has settled. It goes back only below what the next line settles at less what the sensor may be off, so that no heat asks for both lines and it cannot hunt. Fans at rest are started at their start floor first.',
    ),
  ];
}

/**
 * What to set a controller to as text: floors and bands, fixed speeds a duty, and the table over temperature.
 *
 * @param title of the scenario
 * @param found the table
 * @param drawing width and paint
 * @returns lines that end with a line break
 */
export function speedsView(title: string, found: ControllerTable, drawing: Drawing): string {
  const { paint, width } = drawing;
  const say = (text: string): readonly string[] => wrapped(text, width);
  const lines = [
    ...say(`${title}: what to set the fans to`).map(paint.strong),
    '',
    ...(found.banks.length > 0 ? [...table(bankColumns(found.banks), drawing), ''] : []),
    ...say('Quietest speeds that hold every limit, percent rounded up').map(paint.strong),
    ...table(dutyColumns(found), drawing),
    '',
    ...say('How sure that is').map(paint.strong),
    ...table(sureColumns(found.duties), drawing),
    '',
    ...ladderLines(found, drawing),
  ];
  return `${lines.join('\n')}\n`;
}
