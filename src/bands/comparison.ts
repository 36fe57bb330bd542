import type { Fraction } from '../quantities/dimensions.ts';
import { normalProbability } from '../sound/normal-distribution.ts';
import type { SoundAssumptions } from '../sound/sound-assumptions.ts';
import { type Verdict, verdict } from '../sound/uncertainty.ts';
import { joined } from './band.ts';
import { HALF_WIDTH } from './doubt.ts';
import type { Effect, Response } from './response.ts';

/** The level two builds are compared by. */
export type ComparedLevel = 'mean' | 'loudest';

/** Where the levels stand from the end of the results: mean, loudest, power of the fans. */
const FROM_END: Readonly<Record<ComparedLevel, number>> = { mean: 3, loudest: 2 };

function levelIn(values: Float64Array, by: ComparedLevel): number {
  return values[values.length - FROM_END[by]] as number;
}

/** How far a level moves, by what is off. */
function movesOf(
  effects: readonly Effect[],
  by: ComparedLevel,
): ReadonlyMap<string, readonly [number, number]> {
  return new Map(
    effects.map(({ key, below, above }) => [key, [levelIn(below, by), levelIn(above, by)] as const] as const),
  );
}

const UNMOVED = [0, 0] as const;

/**
 * Probability that one build is truly quieter than another [-]; builds of equal level and the same doubts give 0.5.
 * What is off about both moves both, so that it cancels as far as it moves them alike.
 *
 * Source: difference of two results of correlated inputs (JCGM 100, 5.2.2), normal on either side of its middle.
 *
 * @param one response of a build
 * @param other response of another build of the same enclosure
 * @param by level compared; the mean over time if absent
 */
export function probabilityOfQuieter(one: Response, other: Response, by: ComparedLevel = 'mean'): Fraction {
  const gap = levelIn(other.expected, by) - levelIn(one.expected, by);
  // Two silent builds are as quiet as each other.
  if (gap === 0 || Number.isNaN(gap)) return 0.5;
  const own = movesOf(one.effects, by);
  const others = movesOf(other.effects, by);
  const keys = [...new Set([...own.keys(), ...others.keys()])];
  const { below, above } = joined(
    keys.map((key) => {
      const [ownBelow, ownAbove] = own.get(key) ?? UNMOVED;
      const [otherBelow, otherAbove] = others.get(key) ?? UNMOVED;
      return [otherBelow - ownBelow, otherAbove - ownAbove] as const;
    }),
  );
  const spread = (gap > 0 ? below : above) / HALF_WIDTH;
  return normalProbability(gap / spread);
}

/** What can be said of two builds. */
export interface Comparison {
  /** Probability that the first is truly quieter [-]. */
  readonly probability: Fraction;
  readonly verdict: Verdict;
}

/**
 * Whether there is a real difference between two builds.
 *
 * @param one response of a build
 * @param other response of another build of the same enclosure
 * @param assumptions probabilities from which a difference is clear or probable
 * @param by level compared; the mean over time if absent
 */
export function compared(
  one: Response,
  other: Response,
  assumptions: SoundAssumptions,
  by: ComparedLevel = 'mean',
): Comparison {
  const probability = probabilityOfQuieter(one, other, by);
  return { probability, verdict: verdict(Math.max(probability, 1 - probability), assumptions) };
}
