import { describe, expect, it } from 'vitest';
import { entry } from '../../src/numerics/entry.ts';

describe('an entry', () => {
  it('is the value at its place', () => {
    expect(entry([3, 5], 1)).toBe(5);
    expect(entry(Float64Array.of(3, 5), 0)).toBe(3);
  });

  it('outside the list is a mistake', () => {
    expect(() => entry([3, 5], 2)).toThrow(RangeError);
    expect(() => entry([], 0)).toThrow(RangeError);
  });
});
