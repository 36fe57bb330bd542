import type { RowBands } from '../bands/outcome-bands.ts';
import type { Decibels, Fraction } from '../quantities/dimensions.ts';
import type { WouldDo } from '../questions/would-do.ts';
import type { NearestMiss, Ranking } from '../search/ranking.ts';
import { goalTitle } from './asks/goal-words.ts';
import { rankedDuty, rankedFigure } from './asks/ranked-figure.ts';
import { isLikeFirst, NO_DIFFERENCE, probability, rowLegend, rowWords } from './bands/band-words.ts';
import { markLegend } from './bank-columns.ts';
import { quantity } from './figures.ts';
import { wouldDoSentences } from './next/next-view.ts';
import { printable } from './printable.ts';
import { wrapped } from './prose.ts';
import { commonElements, dutiesShown, hasDuties, occupantsOf, type RankRow } from './rank-columns.ts';
import { rankTable } from './rank-table.ts';
import { isMoreAsked, missSentences, searchSentences } from './search-sentences.ts';
import type { Drawing } from './table.ts';

/** How a ranking is shown. */
export interface RankViewOptions extends Drawing {
  /** Levels nearer to each other than this are a tie [dB]. */
  readonly tie: Decibels;
  /** What would make the nearest miss adequate; not shown if absent. */
  readonly wouldDo?: WouldDo | undefined;
  /** What is asked beside the limits, in words; nothing if absent. */
  readonly asked?: readonly string[];
  /** Bands of the rows, in their order; none are shown if absent. */
  readonly bands?: RankBands | undefined;
}

/** How sure a ranking is. */
export interface RankBands {
  readonly rows: readonly (RowBands | null)[];
  /** Probability of being quieter from which a difference is probable [-]. */
  readonly probable: Fraction;
  /** Probability of holding all limits that was asked for [-]; none if absent. */
  readonly confidence?: Fraction | undefined;
  /** Probability that the nearest miss holds all limits at full speed [-]; absent if there is none. */
  readonly missHolding?: Fraction | undefined;
}

/**
 * A ranking as text: the table best first, what its marks mean, and what the search proves. If nothing is
 * adequate, the nearest miss in words and as a row.
 *
 * @param ranking answer of a search
 * @param options width of the terminal, paint, and what counts as a tie
 * @returns lines that end with a line break
 */
export function rankView(ranking: Ranking, options: RankViewOptions): string {
  const { width, paint } = options;
  const say = (text: string): readonly string[] => wrapped(text, width);
  const rows = ranking.rows.length > 0 ? rankRows(ranking, options.bands) : missRows(ranking.nearestMiss);
  const lines = [
    ...say(titleOf(ranking, options.bands?.confidence)).map(paint.strong),
    ...(ranking.rows.length > 0 ? [] : noneAdequate(ranking, options.bands).flatMap(say).map(paint.bad)),
    '',
    ...(rows.length > 0 ? [...rankTable(rows, options), ''] : []),
    ...(options.wouldDo ? wouldDoSentences(options.wouldDo).flatMap(say) : []),
    ...limitsAlone(ranking, options).flatMap(say),
    ...legend(ranking, rows, options).flatMap(say).map(paint.faint),
    ...askedSentence(options.asked).flatMap(say).map(paint.faint),
    ...searchSentences(ranking).flatMap(say),
  ];
  return `${lines.join('\n')}\n`;
}

/** That the nearest miss and what would do are told by the limits alone, where more is asked. */
function limitsAlone(
  { nearestMiss, by }: Ranking,
  { asked = [], bands }: RankViewOptions,
): readonly string[] {
  const isMore = asked.length > 0 || by?.cap !== undefined || bands?.confidence !== undefined;
  if (!nearestMiss || nearestMiss.outcome.adequate || !isMore) return [];
  return ['Both go by the limits alone: what else is asked, or how surely, is not looked at here.'];
}

/** What builds must do beside holding their limits. */
function askedSentence(asked: readonly string[] = []): readonly string[] {
  return asked.length > 0 ? [`Asked beside the limits: ${asked.join(', ')}.`] : [];
}

function titleOf({ title, rows, by }: Ranking, confidence: Fraction | undefined): string {
  if (rows.length === 0) return printable(title);
  const sure = confidence === undefined ? '' : ` with ${quantity('percent', confidence)} probability`;
  return `${printable(title)}: ${goalTitle(by)}${sure}`;
}

function noneAdequate(
  { nearestMiss, complete, count }: Ranking,
  bands: RankBands | undefined,
): readonly string[] {
  if (bands?.confidence !== undefined && nearestMiss?.outcome.adequate) {
    const asked = `${complete ? 'No build' : 'No build found so far'} holds every limit with a probability of`;
    const best = probability(bands.missHolding ?? 0);
    return [
      `${asked} ${quantity('percent', bands.confidence)}.`,
      `At full speed the nearest one holds them with ${best}. It is shown at the quietest speeds that just hold them:`,
    ];
  }
  const none = isMoreAsked(count)
    ? 'No build in the space is adequate and does what is asked.'
    : 'No build in the space is adequate.';
  return [
    complete ? none : 'No adequate build found so far.',
    ...(nearestMiss ? missSentences(nearestMiss) : []),
  ];
}

/** Rows of a list, tied ones marked with the same letter. */
function rankRows({ rows: ranked, by }: Ranking, bands: RankBands | undefined): readonly RankRow[] {
  const tied = ranked.filter((row) => ranked.some((other) => other !== row && other.tie === row.tie));
  const groups = [...new Set(tied.map((row) => row.tie))];
  const anyLike = bands?.rows.some(isLikeFirst) ?? false;
  return ranked.flatMap(({ rank, tie, outcome }, index) => {
    const duty = rankedDuty(outcome, by);
    const letter = groups.includes(tie) ? letterOf(groups.indexOf(tie)) : ' ';
    const row = bands?.rows[index];
    const like = isLikeFirst(row) ? NO_DIFFERENCE : ' ';
    const mark = `${rank}${groups.length > 0 ? letter : ''}${anyLike ? like : ''}`;
    const ranked = rankedFigure(outcome, by);
    return duty ? [{ mark, outcome, duty, ...(ranked ? { ranked } : {}), band: rowWords(row) }] : [];
  });
}

/** a, b, ... z, then aa, ab and so on. */
function letterOf(index: number): string {
  const letter = String.fromCharCode(97 + (index % 26));
  return index < 26 ? letter : letterOf(Math.floor(index / 26) - 1) + letter;
}

/** The nearest miss is shown in the duty it fails in. */
function missRows(miss: NearestMiss | undefined): readonly RankRow[] {
  const duty = miss?.outcome.duties.find((candidate) => candidate.duty === miss.duty);
  return miss && duty ? [{ mark: '-', outcome: miss.outcome, duty }] : [];
}

function legend(
  { rows: ranked, by }: Ranking,
  rows: readonly RankRow[],
  { tie, bands }: RankViewOptions,
): readonly string[] {
  if (rows.length === 0) return [];
  const ties = new Set(ranked.map((row) => row.tie)).size < ranked.length;
  const common = commonElements(rows).map(({ place, holds }) => `${place} ${holds}`);
  return [
    ...(ties
      ? [
          `Rows with the same letter are within ${tie} dB: a tie, ordered by the margin in hand at full speed, then fewer fans, then price.`,
        ]
      : []),
    ...(bands && ranked.length > 0 ? rowLegend(bands.rows, bands.probable, bands.confidence) : []),
    ...(by?.duty !== undefined ? [`Here: in ${printable(by.duty)}, by which the rows are ordered.`] : []),
    ...(hasDuties(rows) ? [dutyLegend(rows)] : ['Noise at the listener, free field.']),
    ...markLegend(occupantsOf(rows)),
    ...(common.length > 0 ? [`The same in every row: ${common.join(', ')}.`] : []),
  ];
}

function dutyLegend(rows: readonly RankRow[]): string {
  const [only, other] = dutiesShown(rows);
  const shown = other === undefined ? `in ${only}` : 'in the duty named';
  return `dB(A) at the listener: mean over time, and the loudest duty. Flow and speeds: ${shown}. Margin: the least of all duties.`;
}
