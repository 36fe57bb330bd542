import type { Headroom } from '../../heat/supply-headroom.ts';
import type { SupplyAnswer } from '../../questions/supply-check.ts';
import { type Cell, type Column, numberColumn, textColumn } from '../column.ts';
import { KEEP } from '../column-fit.ts';
import { toCsv } from '../csv.ts';
import { type Document, documentOf, type Json, type Meta } from '../document.ts';
import { figure, fixed, quantity } from '../figures.ts';
import { wrapped } from '../prose.ts';
import { type Drawing, table } from '../table.ts';

interface Row {
  readonly what: string;
  readonly headroom: Headroom;
}

const MILLISECONDS = 1000;

function rowsOf({ sustained, peaks, starting, question }: SupplyAnswer): readonly Row[] {
  const { factor, duration } = question.peak;
  const peak = `peaks of ${fixed(factor, 2)} times for ${fixed(MILLISECONDS * duration, 0)} ms`;
  return [
    { what: 'for long', headroom: sustained },
    ...(question.fans.length > 0 ? [{ what: 'all fans starting', headroom: starting }] : []),
    ...peaks.map((headroom) => ({ what: peak, headroom })),
  ];
}

/** Verdicts are words; colour only repeats them. */
function verdictCell({ headroom: { verdict } }: Row): Cell {
  return { text: verdict, tone: verdict === 'pass' ? 'good' : 'bad' };
}

/** Columns of what a supply may give. */
const BAR = 20;
/** A load longer than this is cut off [columns]. */
const LONGEST = 30;

/** The load as a bar against what the supply may give. */
function bar({ load, allowed }: Headroom): string {
  const part = Math.min(LONGEST, Math.round((BAR * load) / allowed));
  if (!Number.isFinite(part)) return '';
  return part <= BAR
    ? `${'█'.repeat(part)}${'░'.repeat(BAR - part)}▏`
    : `${'█'.repeat(BAR)}▏${'█'.repeat(part - BAR)}`;
}

function columns(rows: readonly Row[]): readonly Column[] {
  return [
    textColumn('Headroom', KEEP + 3, rows, ({ what }) => what),
    numberColumn('Load', 'W', KEEP, rows, ({ headroom }) => figure('power', headroom.load)),
    numberColumn('May give', 'W', KEEP, rows, ({ headroom }) => figure('power', headroom.allowed)),
    numberColumn('Left', 'W', KEEP + 1, rows, ({ headroom }) => figure('power', headroom.spare)),
    numberColumn('', '%', KEEP + 1, rows, ({ headroom }) => figure('percent', headroom.share)),
    textColumn('', KEEP + 4, rows, verdictCell),
    textColumn('', 5, rows, ({ headroom }) => bar(headroom)),
  ];
}

/**
 * How a supply stands its load as text.
 *
 * @param answer of the check
 * @param drawing width and paint
 * @returns lines that end with a line break
 */
export function supplyView(answer: SupplyAnswer, drawing: Drawing): string {
  const { paint, width } = drawing;
  const say = (text: string): readonly string[] => wrapped(text, width);
  const { state, question, heatInside, heatOtherwise, verdict } = answer;
  const { wall, inside, useful, rating } = question;
  const [here, there] = inside ? ['inside', 'outside'] : ['outside', 'inside'];
  const words = {
    pass: 'Pass',
    tight: 'Tight: under 20 % are left for long',
    fail: 'Fail: more than it may give',
  };
  const lines = [
    ...say(`${words[verdict]}.`).map(verdict === 'pass' ? paint.good : paint.bad),
    ...say(
      `${quantity('power', wall)} at the wall times ${figure('percent', state.efficiency)} % are ${quantity('power', state.output)} delivered; ${quantity('power', state.loss)} are lost in the supply of ${quantity('power', rating)}.`,
    ),
    ...say(
      `Heat in the box with the supply ${here}: ${quantity('power', heatInside)}; with it ${there}: ${quantity('power', heatOtherwise)}.${useful > 0 ? ` ${quantity('power', useful)} leave as something else than heat.` : ''}`,
    ),
    '',
    ...table(columns(rowsOf(answer)), drawing),
    '',
    ...say(
      'The meter stands before the supply: what is read is multiplied by the efficiency, not divided by it.',
    ).map(paint.faint),
    ...say('Mains wiring kills: leave it to somebody who may do it.'),
  ];
  return `${lines.join('\n')}\n`;
}

function headroomData({ load, allowed, spare, share, verdict }: Headroom): Json {
  return { load_W: load, allowed_W: allowed, spare_W: spare, share, verdict };
}

/**
 * How a supply stands its load as a document.
 *
 * @param answer of the check
 * @param meta version, command and warnings
 */
export function supplyDocument(answer: SupplyAnswer, meta: Meta): Document {
  const { state, question, sustained, peaks, starting, verdict, heatInside, heatOtherwise, peakShare } =
    answer;
  const { wall, rating, inside, useful, peak } = question;
  const [first = sustained] = peaks;
  const result = {
    wall_W: wall,
    efficiency: state.efficiency,
    delivered_W: state.output,
    lost_W: state.loss,
    rating_W: rating,
    inside,
    useful_W: useful,
    heatInside_W: heatInside,
    heatOtherwise_W: heatOtherwise,
    verdict,
    sustained: headroomData(sustained),
    starting: headroomData(starting),
    peak: {
      factor: peak.factor,
      duration_s: peak.duration,
      ridesThrough: peakShare,
      headroom: headroomData(first),
    },
  };
  return documentOf(result, meta);
}

/**
 * How a supply stands its load as comma-separated values, in SI.
 *
 * @param answer of the check
 */
export function supplyCsv(answer: SupplyAnswer): string {
  return toCsv(
    ['headroom', 'load [W]', 'allowed [W]', 'left [W]', 'left [1]', 'verdict'],
    rowsOf(answer).map(({ what, headroom: { load, allowed, spare, share, verdict } }) => [
      what,
      load,
      allowed,
      spare,
      share,
      verdict,
    ]),
  );
}
