/** A repeatable row of numbers from 0 to below 1. */
function generator(seed: number): () => number {
  let state = Math.imul(seed, 0x9e3779b1) | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/**
 * A Latin hypercube: for each dimension an order of the numbers 0 to count − 1. Draw i of a dimension lies in the
 * stratum of its i-th number, so that every dimension is covered evenly.
 *
 * Source: McKay, Beckman and Conover, Technometrics 21 (1979) 239 (from memory); orders by the shuffle of Fisher and
 * Yates, with the "mulberry32" generator, public domain (from memory).
 *
 * @param count strata and draws [-], ≥ 1
 * @param dimensions how many orders [-]
 * @param seed whole number [-]; the same gives the same orders
 */
export function latinHypercube(count: number, dimensions: number, seed: number): readonly Uint32Array[] {
  const unit = generator(seed);
  return Array.from({ length: dimensions }, () => {
    const order = Uint32Array.from({ length: count }, (_, index) => index);
    for (let last = count - 1; last > 0; last--) {
      const other = Math.floor(unit() * (last + 1));
      const swapped = order[last] as number;
      order[last] = order[other] as number;
      order[other] = swapped;
    }
    return order;
  });
}
