/** Repeatable random numbers. */
export interface Random {
  /** At least 0, below 1. */
  readonly unit: () => number;
  readonly between: (low: number, high: number) => number;
  /** Evenly spread in the logarithm. */
  readonly spread: (low: number, high: number) => number;
  /** Whole number, both ends included. */
  readonly whole: (low: number, high: number) => number;
  readonly chance: (share: number) => boolean;
  readonly pick: <Item>(items: readonly Item[]) => Item;
}

/**
 * Random numbers that are the same on every machine.
 *
 * Source: the "mulberry32" generator, public domain (from memory); good enough to scatter test cases.
 *
 * @param seed whole number
 */
export function seeded(seed: number): Random {
  let state = Math.imul(seed, 0x9e3779b1) | 0;
  const unit = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const between = (low: number, high: number): number => low + (high - low) * unit();
  const whole = (low: number, high: number): number => low + Math.floor((high - low + 1) * unit());
  return {
    unit,
    between,
    spread: (low, high) => Math.exp(between(Math.log(low), Math.log(high))),
    whole,
    chance: (share) => unit() < share,
    pick: <Item>(items: readonly Item[]): Item => items[whole(0, items.length - 1)] as Item,
  };
}
