import type { ComparedVariant, Comparison, Way } from '../../questions/compare/compare.ts';
import { FARTHEST, type Flip, type Measure } from '../../questions/compare/flips.ts';
import type { OperatingState } from '../../questions/operating-state.ts';
import { type Cell, type Column, numberColumn, textColumn } from '../column.ts';
import { KEEP } from '../column-fit.ts';
import { figure, fixed, levelText, levelWords, NONE, quantity } from '../figures.ts';
import { wrapped } from '../prose.ts';
import { limited } from '../standing-out.ts';
import { type Drawing, table } from '../table.ts';
import { fitBeside, type NotedTable, notedTable } from './compare-notes.ts';
import { comparePlot } from './compare-plot.ts';
import { sureLegend, sureSentence, sureWords, warmth } from './compare-sure.ts';

/** A variant in one of the ways to compare. */
interface Row {
  readonly variant: ComparedVariant;
  readonly state: OperatingState | null;
  /** Flow of the first variant, compared in the same way [kg/s]. */
  readonly first: number;
}

/** A system resistance number as people read it. */
function numberText(k: number): string {
  return k < 10 ? String(Number(k.toPrecision(2))) : fixed(k, 0);
}

function cell(state: OperatingState | null, text: (state: OperatingState) => string): string {
  return state ? text(state) : NONE;
}

function marginCell({ state }: Row): Cell {
  if (!state?.tightest) return NONE;
  const text = figure('kelvins', state.tightest.margin);
  return state.adequate ? text : { text, tone: 'bad' };
}

function speedCell({ state }: Row): string {
  const [ratio] = state?.ratios ?? [];
  return ratio === undefined ? NONE : figure('percent', ratio);
}

function columns(rows: readonly Row[]): readonly Column[] {
  const limits = rows.some(({ state }) => state?.tightest);
  return [
    textColumn('', KEEP + 9, rows, ({ variant }) => variant.name),
    numberColumn('Speed', '%', KEEP, rows, speedCell),
    numberColumn('Noise', 'dB(A)', KEEP + 2, rows, ({ state }) =>
      cell(state, ({ level }) => levelText(level)),
    ),
    numberColumn('Flow', 'm³/h', KEEP + 1, rows, ({ state }) =>
      cell(state, ({ flow }) => figure('flow', flow)),
    ),
    numberColumn('To first', '', 60, rows, ({ state, first }) =>
      cell(state, ({ massFlow }) => fixed(massFlow / first, 2)),
    ),
    ...(limits ? [numberColumn('Margin', 'K', KEEP + 3, rows, marginCell)] : []),
    numberColumn('Power', 'W', 10, rows, ({ state }) =>
      cell(state, ({ fanPower }) => figure('power', fanPower)),
    ),
  ];
}

/** A way to compare, with its heading. */
interface Section extends NotedTable {
  readonly title: string;
}

function sectionOf(title: string, variants: readonly ComparedVariant[], way: Way): Section {
  const states = variants.map((variant) => variant[way]);
  const first = states[0]?.massFlow ?? Number.NaN;
  const rows = variants.map((variant, index) => ({ variant, state: states[index] ?? null, first }));
  const words = textColumn('Nine times in ten', KEEP, variants, (variant) => sureWords(variant, way));
  return { title, columns: columns(rows), words };
}

function sectionsOf({ variants, level, margin }: Comparison): readonly Section[] {
  const tight = variants.map(({ equalMargin }) => equalMargin?.tightest).find((each) => each !== undefined);
  const limit = tight ? ` (${limited({ of: tight.of, part: tight.subject })})` : '';
  return [
    sectionOf('At full speed', variants, 'full'),
    sectionOf(`Equally loud, ${levelWords(level)}`, variants, 'equalLevel'),
    ...(margin === undefined
      ? []
      : [sectionOf(`${warmth(variants, margin)}${limit}`, variants, 'equalMargin')]),
  ];
}

function stackColumns(variants: readonly ComparedVariant[]): readonly Column[] {
  const millimetres = (length: number): string => fixed(1000 * length, 1);
  return [
    textColumn('', KEEP + 9, variants, ({ name }) => name),
    numberColumn('Depth', 'mm', KEEP, variants, ({ stack }) => millimetres(stack.fans)),
    numberColumn('Left', 'mm', KEEP, variants, ({ stack }) => millimetres(stack.left)),
    textColumn('Needs', KEEP + 1, variants, ({ needs }) => needs),
  ];
}

function flipWords({ variants, measure }: Comparison, { k, factor, then, harder }: Flip): string {
  const name = variants[then]?.name ?? '';
  const does = measure === 'margin' ? 'is the coolest' : 'moves the most air';
  const losses = `with ${numberText(factor)} times the losses`;
  if (k === undefined)
    return `${harder ? 'From' : 'Up to'} ${numberText(factor)} times the losses ${name} ${does}.`;
  return `${harder ? 'Above' : 'Below'} k = ${numberText(k)}, ${losses}, ${name} ${does}.`;
}

function worthOf({ equalLevel }: ComparedVariant, measure: Measure): number {
  const value = measure === 'margin' ? equalLevel?.tightest?.margin : equalLevel?.massFlow;
  return value ?? Number.NEGATIVE_INFINITY;
}

/** The best of the others at equal noise. */
function nextBest({ variants, best, measure }: Comparison): ComparedVariant | undefined {
  return variants
    .filter((variant, index) => index !== best && Number.isFinite(worthOf(variant, measure)))
    .toSorted((one, other) => worthOf(other, measure) - worthOf(one, measure))[0];
}

/** By how much the best is ahead of the next, in words. */
function lead(winner: ComparedVariant, next: ComparedVariant | undefined, measure: Measure): string {
  if (!next) return '';
  const [most, less] = [worthOf(winner, measure), worthOf(next, measure)];
  if (measure === 'margin') return `, ${quantity('kelvins', most - less)} before ${next.name}`;
  return `, ${fixed(100 * (most / less - 1), 1)} % more than ${next.name}`;
}

/** The answer in one sentence, how sure it is, then where it would be another one. */
function verdict(comparison: Comparison): readonly string[] {
  const { variants, best, measure, margin, flips } = comparison;
  const winner = variants[best];
  if (!winner) return ['No variant has that level at any speed.'];
  const k = variants.find((variant) => variant.k !== undefined)?.k;
  const path = k === undefined ? '' : ` on a way of k = ${numberText(k)}`;
  const does = measure === 'margin' ? 'keeps the box coolest' : 'moves the most air';
  const next = nextBest(comparison);
  const none =
    flips.length === 0 && variants.length > 1
      ? [`No more than ${FARTHEST} times the losses, and no less than a ${FARTHEST}th of them, changes that.`]
      : [];
  return [
    `At equal noise ${winner.name} ${does}${lead(winner, next, measure)}${path}.`,
    ...(next && margin !== undefined ? [sureSentence(winner, next, margin)] : []),
    ...flips.map((flip) => flipWords(comparison, flip)),
    ...none,
    ...(k === undefined ? [] : ['k = R Q0²/p0: what the way of one fan resists, against its own curve.']),
  ];
}

/**
 * A comparison as text: the answer in a sentence, then tables at full speed, at equal noise and at equal temperature.
 *
 * @param title of the scenario
 * @param comparison the answer
 * @param drawing width and paint
 * @returns lines that end with a line break
 */
export function compareView(title: string, comparison: Comparison, drawing: Drawing): string {
  const { paint, width } = drawing;
  const { variants, duty } = comparison;
  const say = (text: string): readonly string[] => wrapped(text, width);
  const sections = sectionsOf(comparison);
  const beside = fitBeside(sections, width);
  const lines = [
    ...say(`${title}: compared in ${duty}`).map(paint.strong),
    ...verdict(comparison).flatMap(say),
    ...sections.flatMap((section) => [
      '',
      ...say(section.title).map(paint.strong),
      ...notedTable(section, beside, drawing),
    ]),
    '',
    ...comparePlot(comparison, width),
    '',
    ...say('Room along the stream').map(paint.strong),
    ...table(stackColumns(variants), drawing),
    '',
    ...sureLegend(comparison).flatMap(say).map(paint.faint),
    ...say(
      `All fans of a variant run at one share of full speed. A dash: it cannot. Flow enters from outside.`,
    ).map(paint.faint),
  ];
  return `${lines.join('\n')}\n`;
}
