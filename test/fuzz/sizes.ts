import { FINE, type Fineness, QUICK } from '../search/brute-force.ts';
import type { Size } from '../search/random-enclosure.ts';

const SIZES: readonly Size[] = [
  { banks: 1, mostBuilds: 40, mostDuties: 3 },
  { banks: 2, mostBuilds: 16, mostDuties: 3 },
  { banks: 3, mostBuilds: 6, mostDuties: 2 },
];

/** What a run is asked for: first seed, number of cases, banks (0: mixed), fine or quick lattices, simple airways. */
export interface Run {
  readonly seeds: readonly number[];
  readonly sizeOf: (seed: number) => Size;
  readonly fineness: Fineness;
}

/** Reads a run from the arguments of a script. */
export function runFrom(words: readonly string[]): Run {
  const [first = '1', count = '100', banks = '0', fineness = 'fine', plans = 'all'] = words;
  return {
    seeds: Array.from({ length: Number(count) }, (_, index) => Number(first) + index),
    sizeOf: (seed) => {
      const size = SIZES[banks === '0' ? seed % SIZES.length : Number(banks) - 1] as Size;
      return { ...size, simple: plans === 'simple' };
    },
    fineness: fineness === 'quick' ? QUICK : FINE,
  };
}
