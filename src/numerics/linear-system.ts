import { Matrix, solve } from 'ml-matrix';

/**
 * Solves A·x = b for a small dense system, in place of `b`.
 *
 * One and two unknowns are written out, because the airways of most boxes have no more and this stands in
 * the innermost loop; larger systems go to the library (LU with pivoting).
 *
 * @param matrix row-major n × n coefficients [any unit]
 * @param rhs n right-hand sides, overwritten by the solution [any unit]
 * @param size n [-], ≥ 1
 * @returns false if the matrix is singular to working precision; `rhs` is then left unspecified
 */
export function solveLinear(matrix: Float64Array, rhs: Float64Array, size: number): boolean {
  if (size === 1) return solveOne(matrix, rhs);
  if (size === 2) return solveTwo(matrix, rhs);
  return solveMany(matrix, rhs, size);
}

function solveOne(a: Float64Array, b: Float64Array): boolean {
  const x = (b[0] as number) / (a[0] as number);
  b[0] = x;
  return Number.isFinite(x);
}

/** Elimination with a pivot: the closed form loses digits where one coefficient dwarfs the others. */
function solveTwo(a: Float64Array, b: Float64Array): boolean {
  const [a00, a01, a10, a11] = a as unknown as [number, number, number, number];
  const [b0, b1] = b as unknown as [number, number];
  if (Math.abs(a00) >= Math.abs(a10)) {
    const factor = a10 / a00;
    b[1] = (b1 - factor * b0) / (a11 - factor * a01);
    b[0] = (b0 - a01 * b[1]) / a00;
  } else {
    const factor = a00 / a10;
    b[1] = (b0 - factor * b1) / (a01 - factor * a11);
    b[0] = (b1 - a11 * b[1]) / a10;
  }
  return Number.isFinite(b[0]) && Number.isFinite(b[1]);
}

function solveMany(a: Float64Array, b: Float64Array, size: number): boolean {
  const coefficients = new Matrix(size, size);
  const right = new Matrix(size, 1);
  for (let row = 0; row < size; row++) {
    right.set(row, 0, b[row] as number);
    for (let column = 0; column < size; column++) {
      coefficients.set(row, column, a[row * size + column] as number);
    }
  }
  let solution: Matrix;
  try {
    solution = solve(coefficients, right);
  } catch {
    // The library's only way to say "singular" is to throw.
    return false;
  }
  let finite = true;
  for (let row = 0; row < size; row++) {
    b[row] = solution.get(row, 0);
    finite &&= Number.isFinite(b[row]);
  }
  return finite;
}
