import { solveLinear } from './linear-system.ts';

/** The values with the least sum of squares and how far they can be trusted, or why there are none. */
export type LeastSquares =
  | {
      readonly ok: true;
      readonly values: readonly number[];
      /** Sum of the squared residuals [-]. */
      readonly misfit: number;
      /** Inverse of JᵀJ: with residuals in standard deviations, variances and covariances of the values. */
      readonly covariance: readonly (readonly number[])[];
    }
  | { readonly ok: false; readonly reason: 'not-finite' | 'too-many-steps' | 'undetermined' };

/** Residuals at some values, each over its standard deviation [-]. */
export type Residuals = (values: readonly number[]) => readonly number[];

const MOST_STEPS = 200;
/** Step of a difference quotient, over the value or 1 [-]: balances rounding and curvature. */
const NUDGE = 1e-5;
const FIRST_DAMPING = 1e-3;
/** Beyond this damping no step is left to take. */
const MOST_DAMPING = 1e12;
/** Relative step below which the values are found [-]. */
const SETTLED = 1e-11;
/** So many times the variance that a value would have if all others were known: then nothing tells it apart [-]. */
const INSEPARABLE = 1e9;

function sumOfSquares(residuals: readonly number[]): number {
  return residuals.reduce((sum, residual) => sum + residual * residual, 0);
}

/** Derivatives of all residuals, one list for each value. */
function derivatives(residuals: Residuals, values: readonly number[]): readonly (readonly number[])[] {
  return values.map((value, index) => {
    const nudge = NUDGE * Math.max(1, Math.abs(value));
    const after = residuals(values.with(index, value + nudge));
    const before = residuals(values.with(index, value - nudge));
    return after.map((residual, row) => (residual - (before[row] as number)) / (2 * nudge));
  });
}

function dot(one: readonly number[], other: readonly number[]): number {
  return one.reduce((sum, value, index) => sum + value * (other[index] as number), 0);
}

/** JᵀJ, row by row. */
function normalMatrix(columns: readonly (readonly number[])[]): readonly (readonly number[])[] {
  return columns.map((one) => columns.map((other) => dot(one, other)));
}

function solved(
  matrix: readonly (readonly number[])[],
  rhs: readonly number[],
): readonly number[] | undefined {
  const solution = Float64Array.from(rhs);
  return solveLinear(Float64Array.from(matrix.flat()), solution, rhs.length) ? [...solution] : undefined;
}

/** Inverse of JᵀJ; undefined if some value can be traded against others at no cost. */
function inverse(matrix: readonly (readonly number[])[]): readonly (readonly number[])[] | undefined {
  const scales = matrix.map((row, index) => Math.sqrt(row[index] as number));
  if (scales.some((scale) => !(scale > 0))) return undefined;
  const even = matrix.map((row, i) =>
    row.map((value, j) => value / ((scales[i] as number) * (scales[j] as number))),
  );
  const rows = even.map((_, i) =>
    solved(
      even,
      even.map((__, j) => (i === j ? 1 : 0)),
    ),
  );
  if (rows.some((row, i) => !row || !((row[i] as number) > 0 && (row[i] as number) < INSEPARABLE)))
    return undefined;
  return rows.map((row, i) =>
    (row ?? []).map((value, j) => value / ((scales[i] as number) * (scales[j] as number))),
  );
}

interface Point {
  readonly values: readonly number[];
  readonly residuals: readonly number[];
  readonly misfit: number;
}

function pointAt(residuals: Residuals, values: readonly number[]): Point {
  const found = residuals(values);
  return { values, residuals: found, misfit: sumOfSquares(found) };
}

/** A step from a point that lessens the misfit, with the damping that did; undefined if there is none. */
function better(
  residuals: Residuals,
  at: Point,
  columns: readonly (readonly number[])[],
  first: number,
): { readonly point: Point; readonly damping: number } | undefined {
  const matrix = normalMatrix(columns);
  const slope = columns.map((column) => -dot(column, at.residuals));
  for (let damping = first; damping <= MOST_DAMPING; damping *= 10) {
    const damped = matrix.map((row, i) => row.with(i, (row[i] as number) * (1 + damping)));
    const step = solved(damped, slope);
    if (!step) continue;
    const point = pointAt(
      residuals,
      at.values.map((value, index) => value + (step[index] as number)),
    );
    if (point.misfit < at.misfit) return { point, damping };
  }
  return undefined;
}

function farthest(from: readonly number[], to: readonly number[]): number {
  return Math.max(
    ...from.map((value, index) => Math.abs((to[index] as number) - value) / Math.max(1, Math.abs(value))),
  );
}

/**
 * Values with the least sum of squared residuals, near a start. Values should be scaled to the order of 1, for example
 * by taking logarithms.
 *
 * Source: Levenberg (1944), Marquardt (1963) (from memory); covariance of a linearised fit, any text on regression.
 *
 * @param residuals of the values, each over its standard deviation; what is not finite counts as worse than anything
 * @param start where to begin [unit of each value], finite, with finite residuals; at least as many of these as values
 */
export function leastSquares(residuals: Residuals, start: readonly number[]): LeastSquares {
  let at = pointAt(residuals, start);
  if (!Number.isFinite(at.misfit)) return { ok: false, reason: 'not-finite' };
  let damping = FIRST_DAMPING;
  for (let step = 0; step < MOST_STEPS; step++) {
    const columns = derivatives(residuals, at.values);
    if (!columns.flat().every(Number.isFinite)) return { ok: false, reason: 'not-finite' };
    const next = better(residuals, at, columns, damping);
    if (next && farthest(at.values, next.point.values) > SETTLED) {
      at = next.point;
      damping = Math.max(next.damping / 10, Number.EPSILON);
      continue;
    }
    const covariance = inverse(normalMatrix(columns));
    if (!covariance) return { ok: false, reason: 'undetermined' };
    return { ok: true, values: at.values, misfit: at.misfit, covariance };
  }
  return { ok: false, reason: 'too-many-steps' };
}
