import type { ComparedVariant, Comparison, Way } from '../../questions/compare/compare.ts';
import type { Quieter, Standing } from '../../questions/compare/sureness.ts';
import { levels, probability } from '../bands/band-words.ts';
import { levelWords } from '../figures.ts';

/** The side of the difference that is told, and how it is put. */
const standings: Readonly<
  Record<Standing, { readonly words: string; readonly than: string; readonly louder: boolean }>
> = {
  'clearly-quieter': { words: 'clearly quieter', than: 'clearly louder', louder: false },
  'probably-quieter': { words: 'probably quieter', than: 'probably louder', louder: false },
  'no-real-difference': { words: 'no real difference', than: 'no real difference', louder: false },
  'probably-louder': { words: 'probably louder', than: 'probably quieter', louder: true },
  'clearly-louder': { words: 'clearly louder', than: 'clearly quieter', louder: true },
};

function standingWords({ probability: share, standing }: Quieter): string {
  if (standing === 'no-real-difference')
    return `no real difference (quieter with ${probability(share)})`;
  const { words, louder } = standings[standing];
  return `${words} (${probability(louder ? 1 - share : share)})`;
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

/**
 * How sure it is that the best is quieter than the next at equal temperature, in a sentence.
 *
 * @param winner the best at equal noise
 * @param next the variant after it
 */
export function sureSentence(winner: ComparedVariant, next: ComparedVariant): string {
  const quieter = next.sure.equalMargin?.quieter;
  if (!quieter)
    return `Equally warm, nothing can be said of the noise of ${winner.name} and ${next.name}: no solution.`;
  const { probability: share, standing } = quieter;
  const { than, louder } = standings[standing];
  if (standing === 'no-real-difference')
    return `Equally warm, there is no real difference in noise to ${next.name}: quieter with ${probability(1 - share)}.`;
  return `Equally warm, it is ${than} than ${next.name} (${probability(louder ? share : 1 - share)}).`;
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
