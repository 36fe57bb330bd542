import { describe, expect, it } from 'vitest';
import { bankPrice } from '../../src/enclosure/build-costs.ts';
import { shippedFans } from '../scenarios/shipped.ts';

const [fan] = shippedFans;
if (!fan) throw new Error('the catalog has no fans');
const { price, ...unpriced } = fan;

// Definitions: what is bought times its price.
describe('the price of a bank', () => {
  it('counts fans that are there, dead ones too, and missing ones not', () => {
    expect(bankPrice(null)).toBe(0);
    expect(bankPrice({ fan, count: 2 })).toBe(2 * (price ?? Number.NaN));
    expect(bankPrice({ fan, count: 1, lost: { dead: 1, missing: 0 } })).toBe(2 * (price ?? Number.NaN));
    expect(bankPrice({ fan, count: 1, lost: { dead: 0, missing: 1 } })).toBe(price);
  });

  it('is beyond every limit if nobody knows it, and nothing if nothing is bought', () => {
    expect(bankPrice({ fan: unpriced, count: 1 })).toBe(Number.POSITIVE_INFINITY);
    expect(bankPrice({ fan: unpriced, count: 0, lost: { dead: 0, missing: 2 } })).toBe(0);
  });
});
