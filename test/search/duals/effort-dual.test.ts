import { describe, expect, it } from 'vitest';
import type { Effort } from '../../../src/search/bank-effort.ts';
import { lowerToDual, PRICES } from '../../../src/search/duals/effort-dual.ts';
import { type Random, seeded } from '../random.ts';

/** Rises that grow with the speed and energies that grow faster, more or less. */
function effort(random: Random, scatter: number): Effort {
  const length = random.whole(2, 60);
  const strength = random.spread(1, 300);
  const loudness = random.spread(1, 1e4);
  const ratios = Float64Array.from({ length }, (_, index) => 0.2 + (0.8 * index) / (length - 1));
  const scattered = (value: number): number => value * (1 + scatter * random.between(-1, 1));
  return {
    length,
    rises: ratios.map((ratio) => scattered(strength * (ratio * ratio - 0.2))),
    energies: ratios.map((ratio) => scattered(loudness * ratio ** 5.5)),
  };
}

/** By its definition, speed by speed. */
function plainDual({ energies, rises, length }: Effort, derating: number): readonly number[] {
  return [...PRICES].map((price) => {
    const values = Array.from({ length }, (_, index) => {
      const rise = rises[index] as number;
      return (energies[index] as number) - price * (rise > 0 ? derating * rise : rise);
    });
    return Math.min(...values);
  });
}

// Derived: the definition of the Lagrangian dual, the least over all speeds of energy minus price times rise.
describe('the dual of the effort of a bank', () => {
  it.each([
    ['in order', 0],
    ['a little out of order', 0.02],
    ['in no order', 0.8],
  ])('is the least over all speeds, rises %s', (_, scatter) => {
    for (let seed = 1; seed <= 200; seed++) {
      const random = seeded(seed);
      const own = effort(random, scatter);
      const derating = random.pick([1, 0.9, 0.6]);
      const best = new Float64Array(PRICES.length).fill(Number.POSITIVE_INFINITY);
      lowerToDual(own, derating, best);
      const plain = plainDual(own, derating);
      best.forEach((value, price) => {
        const scale = Math.abs(plain[price] as number) + 1;
        expect(Math.abs(value - (plain[price] as number)) / scale).toBeLessThan(1e-12);
      });
    }
  });

  it('lowers what is there only where it is lower', () => {
    const random = seeded(7);
    const first = effort(random, 0);
    const second = effort(random, 0);
    const best = new Float64Array(PRICES.length).fill(Number.POSITIVE_INFINITY);
    lowerToDual(first, 1, best);
    lowerToDual(second, 1, best);
    const both = plainDual(first, 1).map((value, price) =>
      Math.min(value, plainDual(second, 1)[price] as number),
    );
    best.forEach((value, price) => {
      expect(value).toBeCloseTo(both[price] as number, 6);
    });
  });
});
