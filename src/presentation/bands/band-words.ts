import type { Band } from '../../bands/band.ts';
import type { BuildBands } from '../../bands/build-bands.ts';
import type { RowBands } from '../../bands/outcome-bands.ts';
import type { Fraction } from '../../quantities/dimensions.ts';
import { figure, fixed, NONE, quantity } from '../figures.ts';

/** Marks a row that cannot be told from the first by its noise. */
export const NO_DIFFERENCE = '~';

/** A band at least so wide is shown in whole decibels [dB]. */
const WIDE = 4;

/** The ends of the band of a level, in words; a level and its band are silent together. */
export function levels({ low, high }: Band): string {
  const decimals = high - low >= WIDE ? 0 : 1;
  return high === Number.NEGATIVE_INFINITY
    ? NONE
    : `${fixed(low, decimals)} to ${fixed(high, decimals)} dB(A)`;
}

/** A probability in whole percent, for a column of them; nothing short of certain is shown as certain. */
export function percentOf(share: Fraction): string {
  if (share > 0.99 && share < 1) return '> 99';
  return share < 0.01 ? '< 1' : figure('percent', share);
}

/** The same in words. */
export function probability(share: Fraction): string {
  return `${percentOf(share).replace('> ', 'more than ').replace('< ', 'less than ')} %`;
}

/**
 * Band and probability of a row, in words that fit under its numbers.
 *
 * @param row of the ranking; null if it has no bands
 */
export function rowWords(row: RowBands | null | undefined): string {
  return row ? `${levels(row.bands.level)}, limits hold: ${probability(row.bands.holding)}` : '';
}

/** Whether a row cannot be told from the first. */
export function isLikeFirst(row: RowBands | null | undefined): boolean {
  return row?.first?.verdict === 'no-real-difference';
}

/**
 * What the bands and marks of a ranking mean.
 *
 * @param rows bands of its rows
 * @param probable probability from which a difference is probable [-]
 * @param confidence probability that was asked for [-]; none if absent
 */
export function rowLegend(
  rows: readonly (RowBands | null)[],
  probable: Fraction,
  confidence: Fraction | undefined,
): readonly string[] {
  if (rows.every((row) => row === null)) return [];
  const alike = rows.filter(isLikeFirst).length;
  const bands =
    'Under each row: between which levels the truth lies nine times in ten, and how likely all limits hold in all duties.';
  const why =
    confidence === undefined
      ? ' At the quietest speeds a limit just holds, so that is about one half, or less if several do: --confidence 90 asks for more.'
      : '';
  const sure = quantity('percent', probable);
  return [
    bands + why,
    ...(alike > 0
      ? [
          `${NO_DIFFERENCE} no real difference from row 1: less than ${sure} sure which is quieter; what both share cancels.`,
        ]
      : []),
  ];
}

/**
 * Bands of a build in sentences.
 *
 * @param bands of the build
 */
export function buildWords({ level, holding, duties }: BuildBands): readonly string[] {
  const several = duties.length > 1 ? ' on average over time' : '';
  const every = duties.length > 1 ? ' in every duty' : '';
  const limits = duties.some(({ margins }) => margins.length > 0);
  return [
    `Nine times in ten the true level${several} lies between ${levels(level).replace(' to ', ' and ')}.`,
    ...(limits ? [`Every limit holds${every} with a probability of ${probability(holding)}.`] : []),
  ];
}
