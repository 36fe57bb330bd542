import type { Decibels } from '../quantities/dimensions.ts';
import type { NearestMiss, RankedBuild, Ranking } from '../search/ranking.ts';
import { markLegend } from './bank-columns.ts';
import { printable } from './printable.ts';
import { wrapped } from './prose.ts';
import { commonElements, dutiesShown, hasDuties, occupantsOf, type RankRow } from './rank-columns.ts';
import { rankTable } from './rank-table.ts';
import { missSentences, searchSentences } from './search-sentences.ts';
import { loudestDuty } from './standing-out.ts';
import type { Drawing } from './table.ts';

/** How a ranking is shown. */
export interface RankViewOptions extends Drawing {
  /** Levels nearer to each other than this are a tie [dB]. */
  readonly tie: Decibels;
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
  const rows = ranking.rows.length > 0 ? rankRows(ranking.rows) : missRows(ranking.nearestMiss);
  const lines = [
    ...say(titleOf(ranking)).map(paint.strong),
    ...(ranking.rows.length > 0 ? [] : noneAdequate(ranking).flatMap(say).map(paint.bad)),
    '',
    ...(rows.length > 0 ? [...rankTable(rows, options), ''] : []),
    ...legend(ranking, rows, options).flatMap(say).map(paint.faint),
    ...searchSentences(ranking).flatMap(say),
  ];
  return `${lines.join('\n')}\n`;
}

function titleOf({ title, rows }: Ranking): string {
  return rows.length > 0 ? `${printable(title)}: quietest adequate builds` : printable(title);
}

function noneAdequate({ nearestMiss, complete }: Ranking): readonly string[] {
  return [
    complete ? 'No build in the space is adequate.' : 'No adequate build found so far.',
    ...(nearestMiss ? missSentences(nearestMiss) : []),
  ];
}

/** Rows of a list, tied ones marked with the same letter. */
function rankRows(ranked: readonly RankedBuild[]): readonly RankRow[] {
  const tied = ranked.filter((row) => ranked.some((other) => other !== row && other.tie === row.tie));
  const groups = [...new Set(tied.map((row) => row.tie))];
  return ranked.flatMap(({ rank, tie, outcome }) => {
    const duty = loudestDuty(outcome);
    const letter = groups.includes(tie) ? letterOf(groups.indexOf(tie)) : ' ';
    return duty ? [{ mark: groups.length > 0 ? `${rank}${letter}` : `${rank}`, outcome, duty }] : [];
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
  { rows: ranked }: Ranking,
  rows: readonly RankRow[],
  { tie }: RankViewOptions,
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
