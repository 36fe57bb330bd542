import type { Fraction, KelvinDifference } from '../../quantities/dimensions.ts';
import type { ComparedVariant, Comparison, Way } from '../../questions/compare/compare.ts';
import type { Quieter, Standing } from '../../questions/compare/sureness.ts';
import { levels, probability } from '../bands/band-words.ts';
import { levelWords, quantity } from '../figures.ts';

/** A difference, and the same seen from the other side. */
const standings: Readonly<Record<Standing, { readonly words: string; readonly turned: Standing }>> = {
  'clearly-quieter': { words: 'clearly quieter', turned: 'clearly-louder' },
  'probably-quieter': { words: 'probably quieter', turned: 'probably-louder' },
  'no-real-difference': { words: 'no real difference', turned: 'no-real-difference' },
  'probably-louder': { words: 'probably louder', turned: 'probably-quieter' },
  'clearly-louder': { words: 'clearly louder', turned: 'clearly-quieter' },
};

/** Rounding makes certain what is not [-]: what may be off is not known so well. */
const ALMOST: Fraction = 1 - 1e-6;

/** Nothing that was weighed against what may be off is certain. */
function likely(share: Fraction): string {
  return probability(Math.min(share, ALMOST));
}

/** How likely the difference is that is told. */
function shareOf({ probability: share, standing }: Quieter): Fraction {
  return standing.endsWith('louder') ? 1 - share : share;
}

/** The same seen from the other one. */
function turned({ probability: share, standing }: Quieter): Quieter {
  return { probability: 1 - share, standing: standings[standing].turned };
}

function standingWords(quieter: Quieter): string {
  const { words } = standings[quieter.standing];
  const share = likely(shareOf(quieter));
  return `${words} (${quieter.standing === 'no-real-difference' ? `quieter with ${share}` : share})`;
}

/**
 * How sure a variant is in one way of comparing: band of its level, whether limits hold, and whether it is quieter.
 *
 * @param variant of a comparison
 * @param way in which it is compared
 * @returns nothing if it cannot be compared in that way
 */
export function sureWords({ sure, ...variant }: ComparedVariant, way: Way): string {
  if (!variant[way]) return '';
  const found = sure[way];
  if (!found) return 'no solution: no band and no probability';
  const { level, holding, limits, quieter } = found;
  return [
    level.high === Number.NEGATIVE_INFINITY ? levelWords(level.high) : levels(level),
    ...(limits ? [`limits hold: ${probability(holding)}`] : []),
    ...(quieter ? [standingWords(quieter)] : []),
  ].join(', ');
}

/** A margin that is greater by more is shown as another one [K]. */
const SAME: KelvinDifference = 0.05;

/**
 * How warm variants are where all have the margin they are compared at: some may have more at their slowest.
 *
 * @param variants of a comparison
 * @param margin they are compared at [K]
 */
export function warmth(variants: readonly ComparedVariant[], margin: KelvinDifference): string {
  const cooler = variants.some(
    ({ equalMargin }) => (equalMargin?.tightest?.margin ?? margin) > margin + SAME,
  );
  const hand = `${quantity('kelvins', margin)} in hand`;
  return cooler ? `At the slowest speeds with ${hand} or more` : `Equally warm, ${hand}`;
}

/**
 * How sure it is that the best is quieter than the next at equal temperature, in a sentence.
 *
 * @param winner the best at equal noise
 * @param next the variant after it
 * @param margin they are compared at [K]
 */
export function sureSentence(
  winner: ComparedVariant,
  next: ComparedVariant,
  margin: KelvinDifference,
): string {
  const how = warmth([winner, next], margin);
  const found = next.sure.equalMargin?.quieter;
  if (!found)
    return `${how}, nothing can be said of the noise of ${winner.name} and ${next.name}: no solution.`;
  const own = turned(found);
  const share = likely(shareOf(own));
  return own.standing === 'no-real-difference'
    ? `${how}, there is no real difference in noise to ${next.name}: quieter with ${share}.`
    : `${how}, it is ${standings[own.standing].words} than ${next.name} (${share}).`;
}

/**
 * What stands with each row.
 *
 * @param comparison the answer
 */
export function sureLegend({ variants, against, best }: Comparison): readonly string[] {
  const other = variants[against];
  if (!other) return [];
  const limits = variants.some(({ sure }) => sure.full?.limits);
  const hold = limits ? ', and how likely all limits hold in this duty' : '';
  const bands = `With each row: between which levels the truth lies nine times in ten${hold}.`;
  const which = best === against ? 'the best at equal noise' : 'the quietest at full speed';
  if (variants.length < 2) return [bands];
  return [
    bands,
    `Quieter or louder: than ${other.name}, ${which}, in brackets how likely. What both share cancels.`,
  ];
}
