import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { apportion } from '../../src/presentation/apportion.ts';

describe('the method of largest remainders', () => {
  it('gives the seats of the textbook example', () => {
    // Six parties, 100 000 votes, ten seats by the Hare quota: a much printed example (from memory); the
    // seats follow by hand from the quotas 4.7, 1.6, 1.59, 1.2, 0.6, 0.31.
    const votes = [47_000, 16_000, 15_900, 12_000, 6_000, 3_100];
    expect(
      apportion(
        votes.map((vote) => vote / 10_000),
        10,
      ),
    ).toEqual([5, 2, 1, 1, 1, 0]);
  });

  it('takes steps away from those that lost least', () => {
    expect(apportion([2, -1.1], 0)).toEqual([2, -2]);
    expect(apportion([2, 3.4], 4)).toEqual([1, 3]);
  });

  it('sums to the total with every amount within one step', () => {
    const amounts = fc.array(fc.double({ min: -1e4, max: 1e4, noNaN: true }), { minLength: 1, maxLength: 9 });
    fc.assert(
      fc.property(amounts, (list) => {
        const total = Math.round(list.reduce((sum, amount) => sum + amount, 0));
        const steps = apportion(list, total);
        expect(steps.reduce((sum, step) => sum + step, 0)).toBe(total + 0);
        list.forEach((amount, index) => {
          expect(Math.abs((steps[index] ?? Number.NaN) - amount)).toBeLessThan(1 + 1e-9);
        });
      }),
      { seed: 12, numRuns: 300 },
    );
  });
});
