import { describe, expect, it } from 'vitest';
import { latinHypercube } from '../../src/numerics/latin-hypercube.ts';

describe('a Latin hypercube', () => {
  const count = 200;
  const orders = latinHypercube(count, 12, 5);

  it('has every stratum once in each dimension', () => {
    // Definition: McKay, Beckman and Conover (1979).
    for (const order of orders) expect([...order].sort((a, b) => a - b)).toEqual([...Array(count).keys()]);
  });

  it('is the same for the same seed, and another for another', () => {
    expect(latinHypercube(count, 12, 5)).toEqual(orders);
    expect(latinHypercube(count, 1, 6)[0]).not.toEqual(orders[0]);
    expect(latinHypercube(count, 3, 5)).toEqual(orders.slice(0, 3));
  });

  it('has dimensions that know nothing of each other', () => {
    // Rank correlation of two random orders of n: mean 0, deviation 1/√(n − 1) (Spearman); four of them here.
    const middle = (count - 1) / 2;
    const variance = (count ** 2 - 1) / 12;
    for (const one of orders) {
      for (const other of orders) {
        if (one === other) continue;
        const product = one.reduce(
          (sum, value, at) => sum + (value - middle) * ((other[at] as number) - middle),
          0,
        );
        expect(Math.abs(product / count / variance)).toBeLessThan(4 / Math.sqrt(count - 1));
      }
    }
  });
});
