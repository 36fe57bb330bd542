import type { MarginCell, MarginMatrix } from '../../questions/margin/margin.ts';
import type { Rescue } from '../../questions/margin/rescue.ts';
import { type Cell, type Column, numberColumn, textColumn } from '../column.ts';
import { KEEP } from '../column-fit.ts';
import { figure, fixed, levelWords, NONE, quantity } from '../figures.ts';
import { wrapped } from '../prose.ts';
import { limited } from '../standing-out.ts';
import { type Drawing, table } from '../table.ts';
import { MOST_TOLD } from '../tellable.ts';
import { backWords, factorWords } from './margin-notes.ts';
import { marginPlot } from './margin-plot.ts';
import { holdingCell, sureWords } from './margin-sure.ts';

/** Cells that differ in the room only. */
type MarginRow = readonly MarginCell[];

function percent(share: number): string {
  return `${figure('percent', share)} %`;
}

function placeWords({ altitude }: MarginCell): string {
  return altitude === undefined ? 'as drawn' : `${fixed(altitude, 0)} m`;
}

function dustWords({ dust }: MarginCell): string {
  return dust === undefined ? 'as drawn' : `${percent(dust)} full`;
}

function fanWords({ dead }: MarginCell): string {
  return dead === undefined ? 'all turn' : `one of ${dead} dead`;
}

function supplyWords({ slower }: MarginCell): string {
  return slower === 0 ? 'full' : `${percent(slower)} slower`;
}

/** Rows of cells that differ in the room only. */
function rowsOf(cells: readonly MarginCell[], rooms: number): readonly MarginRow[] {
  return Array.from({ length: cells.length / rooms }, (_, row) =>
    cells.slice(row * rooms, (row + 1) * rooms),
  );
}

function marginCell({ margin, state }: MarginCell): Cell {
  if (typeof state === 'string' || margin <= -MOST_TOLD) return { text: 'fails', tone: 'bad' };
  if (margin === Number.POSITIVE_INFINITY) return NONE;
  return margin < -1e-3 ? { text: `${figure('kelvins', margin)} !`, tone: 'bad' } : figure('kelvins', margin);
}

function rescueCell({ rescue }: MarginCell): Cell {
  if (rescue.kind === 'speeds') return rescue.ratios.map((ratio) => figure('percent', ratio)).join(' / ');
  return {
    text: Number.isFinite(rescue.lacks) ? `lacks ${figure('kelvins', rescue.lacks)} K` : 'fails',
    tone: 'bad',
  };
}

/** Columns that tell rows apart; those that say the same in every row are left out. */
function conditionColumns(rows: readonly MarginRow[]): readonly Column[] {
  const columns: readonly (readonly [string, (cell: MarginCell) => string])[] = [
    ['Altitude', placeWords],
    ['Filters', dustWords],
    ['Fans', fanWords],
    ['Supply', supplyWords],
  ];
  return columns.flatMap(([head, words]) => {
    const texts = rows.map(([cell]) => (cell ? words(cell) : ''));
    return new Set(texts).size > 1 ? [textColumn(head, KEEP + 9, texts, (text) => text)] : [];
  });
}

function matrix(
  rows: readonly MarginRow[],
  cell: (cell: MarginCell) => Cell,
  align: Column['align'],
): readonly Column[] {
  const rooms = rows[0] ?? [];
  return [
    ...conditionColumns(rows),
    ...rooms.map(({ room }, column): Column => {
      const head = quantity('temperature', room);
      const at = (row: MarginRow): Cell => (row[column] ? cell(row[column]) : NONE);
      return align === 'text'
        ? textColumn(head, KEEP + 1, rows, at)
        : numberColumn(head, '', KEEP + 1, rows, at);
    }),
  ];
}

function conditionWords(cell: MarginCell): string {
  const all = [
    `room ${quantity('temperature', cell.room)}`,
    ...(cell.altitude === undefined ? [] : [placeWords(cell)]),
    ...(cell.dust === undefined ? [] : [`filters ${dustWords(cell)}`]),
    ...(cell.dead === undefined ? [] : [fanWords(cell)]),
    ...(cell.slower === 0 ? [] : [`fans ${supplyWords(cell)}`]),
  ];
  return all.join(', ');
}

function rescueWords(rescue: Rescue, banks: MarginMatrix['banks']): string {
  if (rescue.kind === 'none') {
    return Number.isFinite(rescue.lacks)
      ? `Not even full speed rescues it: ${quantity('kelvins', rescue.lacks)} are missing.`
      : 'No speed rescues it.';
  }
  const speeds = rescue.ratios
    .map((ratio, index) => `${banks[index]?.place ?? ''} ${percent(ratio)}`)
    .join(', ');
  return `What holds it: ${speeds}, ${levelWords(rescue.level)}.`;
}

function handWords(margin: number): string {
  return margin < 0 ? `lacks ${quantity('kelvins', -margin)}` : `has ${quantity('kelvins', margin)} in hand`;
}

function worstWords({ cells, worst, banks }: MarginMatrix): readonly string[] {
  const cell = cells[worst];
  if (!cell) return [];
  const { state } = cell;
  const what =
    typeof state === 'string'
      ? `${state}`
      : cell.margin <= -MOST_TOLD
        ? 'next to no air moves'
        : state.tightest
          ? `${limited({ of: state.tightest.of, part: state.tightest.subject })} ${handWords(cell.margin)}`
          : 'nothing has a limit';
  return [`Worst: ${conditionWords(cell)}: ${what}. ${rescueWords(cell.rescue, banks)}`];
}

function roomWords(room: number | 'never' | 'always'): string {
  if (room === 'never') return 'not even at -40 °C';
  return room === 'always' ? 'up to 70 °C and more' : `up to ${quantity('temperature', room)}`;
}

function heldWords({ held }: MarginMatrix): readonly string[] {
  const { asDrawn, worst } = held;
  return [
    `As drawn it holds in a room ${roomWords(asDrawn.atSet)} at these speeds, ${roomWords(asDrawn.atFull)} at full speed.`,
    `Under the other conditions of the worst: ${roomWords(worst.atSet)}, and ${roomWords(worst.atFull)} at full speed.`,
  ];
}

/**
 * A build under all conditions as text: margins at the speeds it is set to, the speeds that hold it, and what is worst.
 *
 * @param title of the scenario
 * @param found the matrix
 * @param drawing width and paint
 * @returns lines that end with a line break
 */
export function marginView(title: string, found: MarginMatrix, drawing: Drawing): string {
  const { paint, width } = drawing;
  const say = (text: string): readonly string[] => wrapped(text, width);
  const { cells, banks, ratios, duty } = found;
  const rows = rowsOf(cells, new Set(cells.map(({ room }) => room)).size);
  const set = banks
    .map(({ place, fan, count }, index) => `${place} ${percent(ratios[index] ?? 0)} (${fan} x${count})`)
    .join(', ');
  const lines = [
    ...say(`${title}: margins in ${duty}`).map(paint.strong),
    ...say(`Set speeds: ${set}.`),
    ...worstWords(found).flatMap(say),
    ...sureWords(found).flatMap(say),
    ...heldWords(found).flatMap(say),
    '',
    ...say('Margin at these speeds, K, by room temperature').map(paint.strong),
    ...table(matrix(rows, marginCell, 'number'), drawing),
    ...marginPlot(found, width),
    '',
    ...say('How likely all limits hold at these speeds, %').map(paint.strong),
    ...table(matrix(rows, holdingCell, 'number'), drawing),
    '',
    ...say(`Slowest speeds that hold, % of ${banks.map(({ place }) => place).join(' / ')}`).map(paint.strong),
    ...table(matrix(rows, rescueCell, 'text'), drawing),
    '',
    ...say('!: a limit is broken.'),
    ...factorWords(found).flatMap(say),
    ...backWords(found).flatMap(say),
  ];
  return `${lines.join('\n')}\n`;
}
