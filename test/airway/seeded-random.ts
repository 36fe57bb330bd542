/** Even random numbers in [0, 1), the same on every machine. */
export type Random = () => number;

/**
 * Starts a stream of random numbers.
 *
 * Source: mulberry32, public domain (from memory).
 */
export function seededRandom(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** A number between two bounds. */
export function between(random: Random, low: number, high: number): number {
  return low + (high - low) * random();
}

/** A number between two positive bounds, even in its logarithm. */
export function logBetween(random: Random, low: number, high: number): number {
  return low * (high / low) ** random();
}

/** A whole number between two bounds, both included. */
export function wholeBetween(random: Random, low: number, high: number): number {
  return low + Math.floor(random() * (high - low + 1));
}

/** One of a list that is not empty. */
export function oneOf<Item>(random: Random, items: readonly Item[]): Item {
  const item = items[Math.floor(random() * items.length)];
  if (item === undefined) throw new RangeError('nothing to choose from');
  return item;
}

/** True with a probability. */
export function chance(random: Random, probability: number): boolean {
  return random() < probability;
}
