import type { BuildBands } from '../bands/build-bands.ts';
import type { BuildOutcome, DutyOutcome } from '../enclosure/outcome.ts';
import { HOPELESS } from '../heat/part-temperature.ts';
import type { KelvinDifference } from '../quantities/dimensions.ts';
import type { WhatNext } from '../questions/what-next.ts';
import type { WouldDo } from '../questions/would-do.ts';
import { bandTable } from './bands/band-table.ts';
import { buildWords } from './bands/band-words.ts';
import { heatTable, noiseTable, pressureTable, riseTable } from './budget-tables.ts';
import { type Column, textColumn } from './column.ts';
import { KEEP } from './column-fit.ts';
import { count, levelWords, NONE, prices, quantity } from './figures.ts';
import { nextSections, wouldDoSentences } from './next/next-view.ts';
import { noticesOf } from './notices.ts';
import { wrapped } from './prose.ts';
import { soundSentences } from './sound-sentences.ts';
import { speedTable } from './speed-table.ts';
import { stallDrawing } from './stall-drawing.ts';
import { chamberTable, fanTable, limitTable } from './state-tables.ts';
import { type Drawing, table } from './table.ts';
import { beatSentences, toneTable } from './tones.ts';

/** How a build is shown. */
export interface SolveViewOptions extends Drawing {
  /** Title of the scenario. */
  readonly title?: string | undefined;
  /** The only duty to show in full; absent for all. */
  readonly duty?: string | undefined;
  /** Margin asked of every limit [K]; none if absent. */
  readonly margin?: KelvinDifference | undefined;
  /** Bands of its results; not shown if absent. */
  readonly bands?: BuildBands | null | undefined;
  /** What to change next; not shown if absent. */
  readonly next?: WhatNext | undefined;
  /** What would make the build adequate; not shown if absent. */
  readonly wouldDo?: WouldDo | undefined;
}

/**
 * A build as text: what stands where, speeds in every duty, then for each duty its limits and its budgets of
 * temperature, pressure, noise and heat.
 *
 * @param outcome the build, solved
 * @param options width, paint, which duty
 * @returns lines that end with a line break
 */
export function solveView(outcome: BuildOutcome, options: SolveViewOptions): string {
  const shown = outcome.duties.filter(({ duty }) => options.duty === undefined || duty === options.duty);
  const sections = [
    headSection(outcome, options),
    draw(placeColumns(outcome), options),
    draw(speedTable(outcome.duties), options),
    ...shown.flatMap((duty) => dutySections(duty, options)),
    ...(options.next ? nextSections(outcome, options.next, options) : []),
    options.wouldDo ? wouldDoSentences(options.wouldDo).flatMap((text) => wrapped(text, options.width)) : [],
  ];
  return `${sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`;
}

function headSection(
  outcome: BuildOutcome,
  { title, width, paint, bands }: SolveViewOptions,
): readonly string[] {
  const { build, duties } = outcome;
  const say = (text: string): readonly string[] => wrapped(text, width);
  const failing = duties.filter(({ adequate }) => !adequate);
  const why = failing.some(({ failures }) => failures.length > 0) ? 'a part fails' : 'a limit is broken';
  const verdict = outcome.adequate
    ? say('Adequate: every limit holds in every duty.').map(paint.good)
    : say(`Not adequate: ${why} in ${failing.map(({ duty }) => duty).join(', ')}.`).map(paint.bad);
  return [
    ...(title === undefined ? [] : say(title).map(paint.strong)),
    ...say(build.arrangement).filter((line) => line !== ''),
    ...verdict,
    ...say(noiseWords(outcome)),
    ...(bands ? buildWords(bands) : []).flatMap(say),
    ...say(costWords(outcome)),
    ...reserveWords(outcome).flatMap(say),
  ];
}

function noiseWords({ duties, level, loudest }: BuildOutcome): string {
  const several =
    duties.length > 1 ? ` on average over time, ${levelWords(loudest)} in the loudest duty` : '';
  return `Noise at the listener: ${levelWords(level)}${several}.`;
}

function costWords({ build, duties, fanPower }: BuildOutcome): string {
  const fans = build.fanCount === 1 ? '1 fan' : `${count(build.fanCount)} fans`;
  const mean = duties.length > 1 ? ' on average' : '';
  const [price = NONE] = prices([build.price]);
  return `${fans}, ${quantity('power', fanPower)}${mean}, price ${price === NONE ? 'unknown' : price}.`;
}

function reserveWords({ reserve }: BuildOutcome): readonly string[] {
  // A part that fails whatever cools it lacks no kelvins.
  if (!Number.isFinite(reserve) || reserve <= -HOPELESS) return [];
  return [
    reserve < 0
      ? `Even with every bank at full speed, ${quantity('kelvins', -reserve)} would be missing.`
      : `With every bank at full speed, ${quantity('kelvins', reserve)} would be in hand.`,
  ];
}

function placeColumns({ build }: BuildOutcome): readonly Column[] {
  const places = build.places.filter(({ holds }) => holds !== '');
  return [
    textColumn('Place', KEEP, places, ({ place }) => place),
    textColumn('Holds', KEEP + 1, places, ({ holds }) => holds),
  ];
}

function dutySections(duty: DutyOutcome, options: SolveViewOptions): readonly (readonly string[])[] {
  const { width, paint } = options;
  return [
    wrapped(dutyTitle(duty), width).map(paint.strong),
    draw(fanTable(duty), options),
    ...duty.banks.map((bank) => stallDrawing(bank, width)),
    draw(limitTable(duty, options.margin ?? 0), options),
    draw(bandTable(options.bands?.duties.find((each) => each.duty === duty.duty)), options),
    draw(riseTable(duty), options),
    draw(chamberTable(duty), options),
    draw(pressureTable(duty), options),
    draw(noiseTable(duty), options),
    soundSentences(duty).flatMap((text) => wrapped(text, width)),
    draw(toneTable(duty), options),
    beatSentences(duty).flatMap((text) => wrapped(text, width)),
    draw(heatTable(duty), options),
    noticesOf(duty).flatMap((text) => wrapped(text, width)),
  ];
}

/** A table, or nothing if it has no rows. */
function draw(columns: readonly Column[], options: SolveViewOptions): readonly string[] {
  return (columns[0]?.cells.length ?? 0) > 0 ? table(columns, options) : [];
}

function dutyTitle({ duty, share, room, level }: DutyOutcome): string {
  const time = share > 0 ? `${quantity('percent', share)} of the time` : 'only to be survived';
  return `${duty}: ${time}, room ${quantity('temperature', room)}, ${levelWords(level)}`;
}
