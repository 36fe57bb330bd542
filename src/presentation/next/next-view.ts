import type { BuildOutcome } from '../../enclosure/outcome.ts';
import { tightestPart } from '../../questions/flow-share.ts';
import type { NextChange, WhatNext } from '../../questions/what-next.ts';
import type { WouldDo } from '../../questions/would-do.ts';
import { type Cell, type Column, numberColumn, strong, textColumn } from '../column.ts';
import { KEEP } from '../column-fit.ts';
import { count, figure, fixed, levelWords, NONE, prices, quantity } from '../figures.ts';
import { wrapped } from '../prose.ts';
import { type Drawing, table } from '../table.ts';

/** Changes that are shown; JSON has them all. */
const SHOWN = 8;

/** Power below which it is shown as none [W]. */
const LEAST_POWER = 0.05;
/** Where a lever acts that acts on no place of the box. */
const ROOM = 'room';

/** A difference with its sign; nothing if it does not exist. */
function signed(text: string): string {
  return text === NONE || text.startsWith('-') || Number(text) === 0 ? text : `+${text}`;
}

/** "larger holes, rear"; the room needs no name. */
function titleOf(lever: string, at: string): string {
  return at === ROOM ? lever : `${lever}, ${at}`;
}

function changeCell({ lever, at, what, notes, adequate }: NextChange, wasAdequate: boolean): Cell {
  const does = adequate && !wasAdequate ? ['then every limit holds.'] : [];
  return [strong(`${titleOf(lever, at)}: ${what}`), ...does, ...notes];
}

function columnsOf(changes: readonly NextChange[], wasAdequate: boolean): readonly Column[] {
  const priceTexts = prices(changes.map(({ price }) => price));
  const quieter = numberColumn('Quieter', 'dB', KEEP + 1, changes, ({ quieter: gain }) =>
    gain === undefined ? NONE : fixed(gain, 1),
  );
  return [
    ...(wasAdequate ? [quieter] : []),
    numberColumn('Cooler', 'K', KEEP + 1, changes, ({ cooler }) =>
      cooler === undefined ? NONE : figure('kelvins', cooler),
    ),
    numberColumn('Then', 'dB(A)', KEEP + 1, changes, ({ level }) => figure('level', level)),
    numberColumn('Price', '', KEEP, changes, (change) => signed(priceTexts[changes.indexOf(change)] ?? NONE)),
    ...(changes.some(({ power }) => Math.abs(power) >= LEAST_POWER)
      ? [numberColumn('Power', 'W', KEEP, changes, ({ power }) => signed(figure('power', power)))]
      : []),
    ...(changes.some(({ depth }) => depth > 0)
      ? [numberColumn('Depth', 'mm', KEEP, changes, ({ depth }) => signed(fixed(1000 * depth, 0)))]
      : []),
    textColumn('Change', KEEP + 2, changes, (change) => changeCell(change, wasAdequate)),
  ];
}

function legendOf(wasAdequate: boolean): string {
  const each = 'Each change by itself, solved anew.';
  const cooler = 'Cooler: more margin at the noise of now in every duty.';
  if (!wasAdequate) return `${each} ${cooler}`;
  return `${each} Quieter: less noise on average with the limits held as now. ${cooler}`;
}

/** Where the degrees of the tightest part are, and what acts on the largest step. */
function stepSentences(outcome: BuildOutcome, { changes }: WhatNext): readonly string[] {
  const tightest = tightestPart(outcome);
  if (!tightest) return [];
  const { part, duty, onAir } = tightest;
  const steps = onAir ? part.rise.filter(({ eased }) => eased !== 'by contact').slice(0, 2) : part.rise;
  const [largest] = [...steps].sort((one, other) => other.amount - one.amount);
  const total = steps.reduce((sum, { amount }) => sum + amount, 0);
  if (!largest || !(total > 0)) return [];
  const where = `In ${duty.duty} the largest step up to ${onAir ? `the air at ${part.part}` : part.part} is "${largest.label}", ${quantity('kelvins', largest.amount)} of ${quantity('kelvins', total)}`;
  const best = changes.find(({ eases }) => eases === largest.eased);
  if (!best) return [`${where}; none of these changes acts on it.`];
  return [`${where}; of these changes "${titleOf(best.lever, best.at)}" acts on it most.`];
}

function heldBackSentences({ fansHeldBack, flowShare }: WhatNext): readonly string[] {
  if (!fansHeldBack || flowShare === undefined) return [];
  const share = quantity('percent', flowShare);
  return [`Only ${share} of that rise depends on flow: more fan is not what to begin with.`];
}

/**
 * What to change next: the changes that help, best first, what they cost, and which of them acts on the largest step of
 * the tightest part's rise.
 *
 * @param outcome of the build as it stands
 * @param next the changes
 * @param drawing width and paint
 */
export function nextSections(
  outcome: BuildOutcome,
  next: WhatNext,
  drawing: Drawing,
): readonly (readonly string[])[] {
  const { width, paint } = drawing;
  const say = (text: string): readonly string[] => wrapped(text, width);
  const head = say('What to change next').map(paint.strong);
  const shown = next.changes.slice(0, SHOWN);
  if (shown.length === 0) return [[...head, ...say(`None of the ${count(next.tried)} changes tried helps.`)]];
  const more = next.changes.length - shown.length;
  return [
    head,
    table(columnsOf(shown, outcome.adequate), drawing),
    [
      ...say(legendOf(outcome.adequate)),
      ...(more > 0 ? say(`${count(more)} more that help less are in the JSON.`) : []),
      ...stepSentences(outcome, next).flatMap(say),
      ...heldBackSentences(next).flatMap(say),
    ],
  ];
}

/**
 * The cheapest single change that would do, in words.
 *
 * @param found what was looked for
 */
export function wouldDoSentences({ change, tried }: WouldDo): readonly string[] {
  if (!change) return [`None of the ${count(tried)} single changes tried would do.`];
  const { lever, at, what, level, notes, price = 0 } = change;
  const cost = price > 0 ? `, price +${prices([price])[0]}` : '';
  return [
    `The cheapest single change that would do: ${titleOf(lever, at)}: ${what}; ${levelWords(level)} then${cost}.`,
    ...notes.map((note) => `${note.charAt(0).toUpperCase()}${note.slice(1)}`),
  ];
}
