import type { BuildOutcome, DutyOutcome } from '../enclosure/outcome.ts';
import { HOPELESS } from '../heat/part-temperature.ts';
import { bankColumns, type ChosenElement, type Occupants } from './bank-columns.ts';
import { type Cell, type Column, numberColumn, strong, textColumn } from './column.ts';
import { KEEP } from './column-fit.ts';
import { figure, levelText, NONE, prices } from './figures.ts';
import { inflow } from './inflow.ts';
import { limited, tightestOf } from './standing-out.ts';

/** What rows stand in the order of: a column of its own. */
export interface RankedFigure {
  readonly head: string;
  readonly unit: string;
  readonly text: string;
}

/** A row of a table of builds. */
export interface RankRow {
  /** Stands first in the row. */
  readonly mark: string;
  readonly outcome: BuildOutcome;
  /** The duty whose flow and speeds are shown. */
  readonly duty: DutyOutcome;
  /** What the rows stand in the order of, where no other column shows it. */
  readonly ranked?: RankedFigure;
  /** Its band, in words; nothing if absent. */
  readonly band?: string;
}

/** The columns of a table of builds, in the order in which they stand. */
export interface RankColumns {
  /** Mark, levels, margin. */
  readonly first: readonly Column[];
  /** Which limit is the tightest, in words. */
  readonly tightest: Column;
  readonly costs: readonly Column[];
  /** The arrangement in words. */
  readonly arrangement: Column;
  /** The band in words. */
  readonly band: Column;
  readonly places: readonly Column[];
}

/**
 * Columns for a list of builds.
 *
 * @param rows best first
 */
export function rankColumns(rows: readonly RankRow[]): RankColumns {
  const pricesShown = prices(rows.map(({ outcome }) => outcome.build.price));
  return {
    first: [
      markColumn(rows),
      ...rankedColumn(rows),
      ...levelColumns(rows),
      numberColumn('Margin', 'K', KEEP + 2, rows, margin),
    ],
    tightest: textColumn('Tightest', KEEP + 1, rows, tightestWords),
    costs: [
      numberColumn('Flow', 'm³/h', 50, rows, ({ duty }) => figure('flow', inflow(duty))),
      numberColumn('In hand', 'K', 15, rows, ({ outcome }) => inHand(outcome)),
      numberColumn('Power', 'W', 20, rows, ({ outcome }) => figure('power', outcome.fanPower)),
      numberColumn('Price', '', 40, pricesShown, (price) => price),
    ],
    band: textColumn('Nine times in ten', KEEP, rows, ({ band = '' }) => band),
    arrangement: textColumn('Arrangement', KEEP, rows, ({ outcome }) => outcome.build.arrangement),
    places: [...dutyColumns(rows), ...bankColumns(occupantsOf(rows))],
  };
}

/** What stands in the places of each row that are not the same in all rows. */
export function occupantsOf(rows: readonly RankRow[]): readonly Occupants[] {
  const common = new Set(commonElements(rows).map(({ place }) => place));
  return rows.map((row) => ({
    banks: row.duty.banks,
    chosen: elementsOf(rows, row).filter(({ place }) => !common.has(place)),
  }));
}

/** Chosen elements that are the same in all of several rows. */
export function commonElements(rows: readonly RankRow[]): readonly ChosenElement[] {
  const [first, ...others] = rows;
  if (!first || others.length === 0) return [];
  return elementsOf(rows, first).filter(({ place, holds }) =>
    others.every((row) =>
      elementsOf(rows, row).some((other) => other.place === place && other.holds === holds),
    ),
  );
}

/** Margin at full speed; a part that fails whatever cools it leaves none to speak of. */
function inHand({ reserve }: BuildOutcome): string {
  return reserve <= -HOPELESS ? NONE : figure('kelvins', reserve);
}

/** Whether the builds have more than one duty. */
export function hasDuties(rows: readonly RankRow[]): boolean {
  return rows.some(({ outcome }) => outcome.duties.length > 1);
}

/** Names of the duties whose speeds are shown. */
export function dutiesShown(rows: readonly RankRow[]): readonly string[] {
  return [...new Set(rows.map(({ duty }) => duty.duty))];
}

/** Places where something other than fans was chosen; a place without a choice holds nothing by name. */
function elementsOf(rows: readonly RankRow[], row: RankRow): readonly ChosenElement[] {
  const bankPlaces = new Set(rows.flatMap(({ duty }) => duty.banks.map((bank) => bank.place)));
  return row.outcome.build.places.filter(({ place, holds }) => holds !== '' && !bankPlaces.has(place));
}

function markColumn(rows: readonly RankRow[]): Column {
  const [best] = rows;
  return numberColumn('#', '', KEEP + 5, rows, (row) => (row === best ? strong(row.mark) : row.mark));
}

function levelColumns(rows: readonly RankRow[]): readonly Column[] {
  const level = ({ outcome }: RankRow): Cell => strong(levelText(outcome.level));
  if (!hasDuties(rows)) return [numberColumn('Noise', 'dB(A)', KEEP + 4, rows, level)];
  return [
    numberColumn('Mean', 'dB(A)', KEEP + 4, rows, level),
    numberColumn('Max', 'dB(A)', 70, rows, ({ outcome }) => levelText(outcome.loudest)),
  ];
}

/** The column the rows are in the order of, if it is none of the others. */
function rankedColumn(rows: readonly RankRow[]): readonly Column[] {
  const figures = rows.map(({ ranked }) => ranked);
  const [first] = figures;
  return first ? [numberColumn(first.head, first.unit, KEEP + 5, figures, (each) => each?.text ?? '')] : [];
}

function margin({ outcome }: RankRow): Cell {
  const tightest = tightestOf(outcome);
  const text = tightest ? figure('kelvins', tightest.margin) : NONE;
  return outcome.adequate ? text : { text, tone: 'bad' };
}

function tightestWords({ outcome }: RankRow): string {
  const tightest = tightestOf(outcome);
  if (!tightest) return 'no limit';
  return outcome.duties.length > 1 ? `${limited(tightest)} in ${tightest.duty}` : limited(tightest);
}

function dutyColumns(rows: readonly RankRow[]): readonly Column[] {
  return dutiesShown(rows).length < 2 ? [] : [textColumn('Duty', 80, rows, ({ duty }) => duty.duty)];
}
