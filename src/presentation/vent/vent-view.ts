import type { SquareMetres } from '../../quantities/dimensions.ts';
import type { VentAnswer } from '../../questions/vent/vent.ts';
import type { VentPattern, VentWarning } from '../../questions/vent/vent-pattern.ts';
import { type Column, numberColumn, textColumn } from '../column.ts';
import { KEEP } from '../column-fit.ts';
import { figure, fixed, levelText, levelWords, NONE, quantity } from '../figures.ts';
import { printable } from '../printable.ts';
import { wrapped } from '../prose.ts';
import { type Drawing, table } from '../table.ts';
import { holeWords, mm, scenarioLine, sides } from './sheet-words.ts';
import { sureColumns, sureLegend } from './sure-table.ts';
import { ventPlots } from './vent-plots.ts';

/** How an opening is shown. */
export interface VentViewOptions extends Drawing {
  readonly title: string;
  /** What stands in the build, in words. */
  readonly arrangement: string;
  /** One speed for all banks [%]; the quietest that hold the limits if absent. */
  readonly speed?: number | undefined;
}

/** A row of the table of patterns. */
interface PatternRow {
  readonly mark: string;
  readonly pattern: VentPattern;
  readonly verdict: string;
}

const SQUARE_CENTIMETRES = 1e4;

function area(value: SquareMetres): string {
  return `${fixed(value * SQUARE_CENTIMETRES, 1)} cm²`;
}

function percent(share: number): string {
  return fixed(100 * share, 1);
}

function rowsOf({ now, candidates }: VentAnswer): readonly PatternRow[] {
  return [
    ...candidates.map((pattern, index) => ({
      mark: `${index + 1}`,
      pattern,
      verdict: pattern.reaches ? 'does' : 'falls short',
    })),
    ...(now ? [{ mark: '-', pattern: now, verdict: 'as it stands' }] : []),
  ];
}

function patternColumns(rows: readonly PatternRow[]): readonly Column[] {
  return [
    textColumn('#', KEEP + 1, rows, ({ mark }) => mark),
    textColumn('Holes', KEEP + 3, rows, ({ pattern }) => holeWords(pattern.sheet)),
    textColumn('Rows', KEEP + 2, rows, ({ pattern }) => pattern.sheet.pattern),
    numberColumn('Web', 'mm', KEEP + 1, rows, ({ pattern }) => fixed(1000 * pattern.sheet.web, 1)),
    numberColumn('Pitch', 'mm', 20, rows, ({ pattern }) => fixed(1000 * pattern.pitch, 2)),
    numberColumn('Count', '', KEEP + 1, rows, ({ pattern }) => fixed(pattern.count, 0)),
    numberColumn('Open', '%', 35, rows, ({ pattern }) => percent(pattern.openShare)),
    numberColumn('Area', 'cm²', KEEP + 1, rows, ({ pattern }) => fixed(pattern.area * SQUARE_CENTIMETRES, 1)),
    numberColumn('Kept', '%', KEEP + 1, rows, ({ pattern }) => percent(pattern.share)),
    numberColumn('Margin', 'K', 85, rows, ({ pattern: { margin } }) =>
      margin === undefined ? NONE : figure('kelvins', margin),
    ),
    numberColumn('In holes', 'm/s', 60, rows, ({ pattern }) => fixed(pattern.holeVelocity, 1)),
    numberColumn('On face', 'm/s', 30, rows, ({ pattern }) => fixed(pattern.faceVelocity, 1)),
    numberColumn('Noise', 'dB(A)', 75, rows, ({ pattern }) => levelText(pattern.openingLevel)),
    numberColumn('Fingers', 'mm', 80, rows, ({ pattern: { fingers } }) =>
      fingers === undefined ? NONE : fixed(1000 * fingers, 0),
    ),
    textColumn('', KEEP + 4, rows, ({ verdict }) => verdict),
  ];
}

const warnings: Readonly<Record<VentWarning, (pattern: VentPattern, answer: VentAnswer) => string>> = {
  'hole below sheet': ({ sheet }) =>
    `holes of ${mm(sheet.hole)} in a sheet of ${mm(sheet.sheet)}: smaller than the sheet is thick, hard to make`,
  'web below sheet': ({ sheet }) =>
    `webs of ${mm(sheet.web)} in a sheet of ${mm(sheet.sheet)}: narrower than the sheet is thick, hard to make`,
  'web below least': ({ sheet }, { task }) =>
    `webs of ${mm(sheet.web)} are narrower than the ${mm(task.leastWeb)} that are to be left`,
  'finger reach': ({ fingers }, { task }) =>
    fingers === undefined
      ? `a hand may pass holes of this size: blades ${mm(task.blades)} behind are within reach`
      : `fingers must be kept ${mm(fingers)} from blades behind such holes, reckoned with are ${mm(task.blades)}`,
  whistling: ({ holeVelocity }) => `may whistle: ${fixed(holeVelocity, 1)} m/s in its holes`,
};

function warningSentences(answer: VentAnswer): readonly string[] {
  const [best] = answer.candidates;
  const shown = [
    ...(best ? [{ name: 'Pattern 1', pattern: best }] : []),
    ...(answer.now ? [{ name: 'As it stands', pattern: answer.now }] : []),
  ];
  return shown.flatMap(({ name, pattern }) =>
    pattern.warnings.map((warning) => `${name}: ${warnings[warning](pattern, answer)}.`),
  );
}

function taskSentences({ task }: VentAnswer, { arrangement, speed }: VentViewOptions): readonly string[] {
  const { sheet, process, leastWeb, blades, duty, keep, aim } = task;
  const asked =
    aim === 'flow'
      ? `keep ${quantity('percent', keep)} of the flow that nothing in the way would let through`
      : 'let the build hold every limit in every duty, at whatever speeds';
  return [
    `${arrangement}; in ${duty.id}, fans at ${speed === undefined ? 'the speeds found with the opening as it is' : `${fixed(speed, 0)} % of full speed`}.`,
    `Sheet of ${mm(sheet.sheet)}, field ${sides(sheet.perforated)}, ${process}, webs of ${mm(leastWeb)} or more, blades ${mm(blades)} behind.`,
    `Asked: ${asked}.`,
  ];
}

/** Sides of a field with a free area, in the proportions of the one there is. */
function fieldFor({ task, family }: VentAnswer, needed: SquareMetres): string {
  const factor = Math.sqrt(needed / family.fieldFull);
  const { width, height } = task.sheet.perforated;
  const up = (length: number): number => Math.ceil(1000 * factor * length) / 1000;
  return sides({ width: up(width), height: up(height) });
}

function areaWords(answer: VentAnswer, needed: SquareMetres | undefined): string {
  if (needed === undefined) return 'no free area of such holes does that';
  if (needed <= answer.family.fieldFull) return area(needed);
  return `${area(needed)}, more than the field holds: one of ${fieldFor(answer, needed)} would`;
}

function areaSentences(answer: VentAnswer): readonly string[] {
  const { curve, task } = answer;
  const holes = holeWords(answer.family.sheet);
  const knee = curve.knee
    ? [
        `Knee: ${area(curve.knee.area)}, ${percent(curve.knee.share)} % of the flow; beyond it the curve flattens.`,
      ]
    : [];
  return [
    `Least free area (${holes}) to keep ${quantity('percent', task.keep)} of the flow: ${areaWords(answer, curve.keepsFlow)}.`,
    `Least free area to hold all limits at whatever speeds: ${areaWords(answer, curve.holdsLimits)}.`,
    ...knee,
  ];
}

function anewSentences({ anew }: VentAnswer): readonly string[] {
  const change =
    Math.abs(anew.quieter) < 0.05
      ? 'as now'
      : `${fixed(Math.abs(anew.quieter), 1)} dB ${anew.quieter > 0 ? 'less' : 'more'} than now`;
  const holds = anew.adequate ? '' : ', with limits broken';
  return [`With pattern 1 and speeds found anew: ${levelWords(anew.level)} on average, ${change}${holds}.`];
}

/**
 * What was found about an opening, as text: least areas and the knee, patterns the best first, flow and temperature
 * against free area, and the line that puts the best pattern into the scenario.
 *
 * @param answer to the question
 * @param options width, paint and title
 * @returns lines that end with a line break
 */
export function ventView(answer: VentAnswer, options: VentViewOptions): string {
  const { width, paint, title } = options;
  const say = (text: string): readonly string[] => wrapped(text, width);
  const { enclosure, place } = answer.task;
  const name = enclosure.places[place]?.id ?? '';
  const [best] = answer.candidates;
  const line = best ? scenarioLine(name, best.sheet) : '';
  const sections = [
    [
      ...say(`${printable(title)}: ${name}`).map(paint.strong),
      ...taskSentences(answer, options).flatMap(say),
    ],
    [...areaSentences(answer).flatMap(say)],
    table(patternColumns(rowsOf(answer)), options),
    [
      ...(best?.reaches
        ? []
        : say('No pattern in this field does what is asked: pattern 1 comes nearest.').map(paint.bad)),
      ...warningSentences(answer).flatMap(say).map(paint.bad),
      ...say(
        'Kept: of the flow with nothing in the way. Fingers: least distance to blades for people of 14 and over (ISO 13857, from memory); local codes come first.',
      ).map(paint.faint),
      ...anewSentences(answer).flatMap(say),
    ],
    [...table(sureColumns(answer), options), ...sureLegend(answer).flatMap(say).map(paint.faint)],
    ...ventPlots(answer, width),
    [...say('Pattern 1 in the scenario, under elements, without a choice for it:'), `  ${line}`],
  ];
  return `${sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`;
}
