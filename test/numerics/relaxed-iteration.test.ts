import { describe, expect, it } from 'vitest';
import { createRelaxedIteration } from '../../src/numerics/relaxed-iteration.ts';

/** Values after some rounds of x ← f(x), relaxed, or as they come. */
function iterate(
  map: (values: Float64Array) => Float64Array,
  start: Float64Array,
  rounds: number,
  isRelaxed: boolean,
) {
  const relaxed = createRelaxedIteration(start.length);
  const values = Float64Array.from(start);
  relaxed.begin();
  for (let round = 0; round < rounds; round++) {
    relaxed.assume([values]);
    values.set(map(values));
    if (isRelaxed) relaxed.correct([values]);
  }
  return values;
}

describe('a relaxed iteration', () => {
  it('comes to rest where corrections taken whole swing ever wider', () => {
    // By hand: x = 10 - 3·x at x = 2.5; a linear map of one value is met in two rounds.
    const map = (values: Float64Array): Float64Array => values.map((value) => 10 - 3 * value);
    expect(Math.abs(iterate(map, Float64Array.of(0), 8, false)[0] as number)).toBeGreaterThan(1000);
    expect(iterate(map, Float64Array.of(0), 3, true)[0]).toBeCloseTo(2.5, 12);
  });

  it('comes to rest for several values of which each swings', () => {
    // By hand: (1, 2) stays; the matrix has the eigenvalues -1.5 and -3.
    const map = ([x, y]: Float64Array): Float64Array =>
      Float64Array.of(1 - 2 * (x as number) + (y as number), 6.5 + 0.5 * (x as number) - 2.5 * (y as number));
    const found = iterate(map, Float64Array.of(0, 0), 40, true);
    expect(found[0]).toBeCloseTo(1, 9);
    expect(found[1]).toBeCloseTo(2, 9);
  });

  it('leaves a map that comes near by itself from one side as it is', () => {
    const map = (values: Float64Array): Float64Array => values.map((value) => 1 + 0.5 * value);
    expect(iterate(map, Float64Array.of(0), 10, true)).toEqual(iterate(map, Float64Array.of(0), 10, false));
  });
});
