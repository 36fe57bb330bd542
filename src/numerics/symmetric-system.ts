/**
 * Solves A·x = b for a symmetric, positive definite A, in place of `b`, without allocating.
 *
 * No pivots are looked for: a positive definite matrix needs none. Zeros left of the diagonal are passed over, which
 * is quick where few unknowns are coupled.
 * Source: elimination as L·D·Lᵀ; Golub and Van Loan, Matrix Computations (from memory).
 *
 * @param matrix row-major n × n coefficients, of which the lower triangle is read [any unit]; overwritten
 * @param rhs n right-hand sides, overwritten by the solution [any unit]
 * @param size n [-], ≥ 1
 * @returns false if the matrix is not positive definite to working precision or holds no numbers; `rhs` is then left
 * unspecified
 */
export function solveSymmetric(matrix: Float64Array, rhs: Float64Array, size: number): boolean {
  for (let column = 0; column < size; column++) {
    const pivot = matrix[column * size + column] as number;
    if (!(pivot > 0)) return false;
    for (let row = column + 1; row < size; row++) {
      const value = matrix[row * size + column] as number;
      if (value !== 0) eliminate(matrix, rhs, size, column, row, value / pivot);
    }
  }
  return substitute(matrix, rhs, size);
}

/** Takes a column out of one row, from its diagonal leftwards to the column. */
function eliminate(
  matrix: Float64Array,
  rhs: Float64Array,
  size: number,
  column: number,
  row: number,
  factor: number,
): void {
  const start = row * size;
  for (let other = column + 1; other <= row; other++) {
    const at = start + other;
    matrix[at] = (matrix[at] as number) - factor * (matrix[other * size + column] as number);
  }
  rhs[row] = (rhs[row] as number) - factor * (rhs[column] as number);
}

/** Backwards through the columns of what elimination left. */
function substitute(matrix: Float64Array, rhs: Float64Array, size: number): boolean {
  let finite = true;
  for (let row = size - 1; row >= 0; row--) {
    let sum = rhs[row] as number;
    for (let below = row + 1; below < size; below++) {
      sum -= (matrix[below * size + row] as number) * (rhs[below] as number);
    }
    const value = sum / (matrix[row * size + row] as number);
    rhs[row] = value;
    finite &&= Number.isFinite(value);
  }
  return finite;
}
