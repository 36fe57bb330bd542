import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { solveSymmetric } from '../../src/numerics/symmetric-system.ts';
import { between, chance, logBetween, seededRandom } from '../airway/seeded-random.ts';

/** A random network of conductances over ten decades, each unknown tied to ground or to one before it. */
function laplacian(random: () => number, size: number): Float64Array {
  const matrix = new Float64Array(size * size);
  const join = (one: number, other: number, conductance: number): void => {
    for (const [row, column] of [
      [one, other],
      [other, one],
    ] as const) {
      if (row < 0) continue;
      matrix[row * size + row] = (matrix[row * size + row] ?? 0) + conductance;
      if (column >= 0) matrix[row * size + column] = (matrix[row * size + column] ?? 0) - conductance;
    }
  };
  for (let row = 0; row < size; row++) {
    join(row, Math.floor(between(random, -1, row)), logBetween(random, 1e-7, 1e3));
    if (chance(random, 0.5) && row > 0) join(row, row - 1, logBetween(random, 1e-7, 1e3));
  }
  return matrix;
}

describe('a symmetric positive definite system', () => {
  it('has the solution of a library that knows nothing of symmetry', () => {
    // Computed with ml-matrix 6.15.1, LU with pivoting, on mild random systems AᵀA + 1.
    const random = seededRandom(61);
    for (let trial = 0; trial < 300; trial++) {
      const size = 1 + Math.floor(random() * 12);
      const half = Matrix.zeros(size, size).apply(function fill(row, column) {
        this.set(row, column, between(random, -1, 1));
      });
      const whole = half.transpose().mmul(half).add(Matrix.eye(size));
      const rhs = Float64Array.from({ length: size }, () => between(random, -1, 1));
      const expected = solve(whole, Matrix.columnVector(rhs)).to1DArray();
      const given = Float64Array.from(whole.to1DArray());
      expect(solveSymmetric(given, rhs, size)).toBe(true);
      expected.forEach((value, row) => {
        expect(rhs[row]).toBeCloseTo(value, 11);
      });
    }
  });

  it('leaves next to no residue in networks of very unequal conductances', () => {
    // Theory: for diagonally dominant matrices elimination without pivots is stable backwards.
    const random = seededRandom(62);
    for (let trial = 0; trial < 300; trial++) {
      const size = 3 + Math.floor(random() * 10);
      const matrix = laplacian(random, size);
      const rhs = Float64Array.from({ length: size }, () => between(random, -1, 1));
      const found = Float64Array.from(rhs);
      expect(solveSymmetric(Float64Array.from(matrix), found, size)).toBe(true);
      for (let row = 0; row < size; row++) {
        const terms = Array.from(
          found,
          (value, column) => value * (matrix[row * size + column] ?? Number.NaN),
        );
        const sum = terms.reduce((total, term) => total + term, 0);
        const scale = terms.reduce((total, term) => total + Math.abs(term), 1);
        expect(Math.abs(sum - (rhs[row] ?? Number.NaN)) / scale).toBeLessThan(1e-14);
      }
    }
  });

  it.each([
    ['singular', [1, -1, 0, -1, 1, 0, 0, 0, 1]],
    ['not positive', [1, 2, 0, 2, 1, 0, 0, 0, 1]],
    ['not a number', [1, 0, 0, Number.NaN, 1, 0, 0, 0, 1]],
    ['infinite', [Number.POSITIVE_INFINITY, 0, 0, Number.POSITIVE_INFINITY, 1, 0, 0, 0, 1]],
  ])('has none if the matrix is %s', (_, matrix) => {
    expect(solveSymmetric(Float64Array.from(matrix), Float64Array.of(1, 1, 1), 3)).toBe(false);
  });
});
