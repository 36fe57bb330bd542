import type { Duty } from '../enclosure/enclosure.ts';
import type { Machine } from '../enclosure/machine.ts';

/** A build in a state of use, as it might truly be. */
export interface Situation {
  readonly machine: Machine;
  readonly duty: Duty;
}

/**
 * Something that may be off, apart from everything else that may be off. Two builds that have a doubt of the same key
 * are off by the same amount.
 */
export interface Doubt {
  readonly key: string;
  /**
   * The situation if this is off.
   *
   * @param situation as described
   * @param amount how far, in half-widths of the 90 % band [-]; negative is below
   */
  readonly moved: (situation: Situation, amount: number) => Situation;
}

/**
 * Standard deviations from the middle of a normal distribution to the end of its 90 % band [-].
 *
 * Source: the 95 % quantile of the standard normal distribution (JCGM 100, table G.1: coverage factor for 90 %).
 */
export const HALF_WIDTH = 1.6448536269514722;

/** Factor by which a figure is off that may be off by a share either way [-]. */
export function factorOf(share: number, amount: number): number {
  return (1 + share) ** amount;
}
