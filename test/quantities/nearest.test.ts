import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editDistance, nearestName } from '../../src/quantities/nearest.ts';

const word = fc.string({ maxLength: 8, unit: fc.constantFrom('a', 'b', 'c') });

describe('edit distance', () => {
  it.each([
    [
      'kitten',
      'sitting',
      3,
      'Jurafsky & Martin, Speech and Language Processing, edit distance (from memory)',
    ],
    ['saturday', 'sunday', 3, 'common textbook example (from memory)'],
    ['ca', 'abc', 3, 'optimal string alignment, where Damerau would give 2 (from memory)'],
    ['form', 'from', 1, 'derived: one swap of neighbours'],
    ['', 'abc', 3, 'derived: three insertions'],
    ['same', 'same', 0, 'derived'],
  ])('%s to %s is %d', (one, other, distance) => {
    expect(editDistance(one, other)).toBe(distance);
  });

  it('is symmetric, zero only for equal words, and at most the longer length', () => {
    fc.assert(
      fc.property(word, word, (one, other) => {
        const distance = editDistance(one, other);
        expect(distance).toBe(editDistance(other, one));
        expect(distance === 0).toBe(one === other);
        expect(distance).toBeLessThanOrEqual(Math.max(one.length, other.length));
        expect(distance).toBeGreaterThanOrEqual(Math.abs(one.length - other.length));
      }),
      { seed: 20_260_303 },
    );
  });
});

describe('nearest name', () => {
  it.each([
    ['hol', ['web', 'hole', 'sheet'], 'hole'],
    ['HOLE', ['web', 'hole'], 'hole'],
    ['x', ['y'], undefined],
    ['lenght', ['length', 'height'], 'length'],
    ['through', ['from', 'to'], undefined],
    ['a', [], undefined],
    ['q'.repeat(101), ['q'.repeat(100)], undefined],
  ])('of %s among %j is %s', (written, known, nearest) => {
    expect(nearestName(written, known)).toBe(nearest);
  });
});
