import { entry } from './entry.ts';
import { bracketedRoot } from './roots.ts';

/** A piecewise cubic Hermite curve; between two knots it never leaves the range of their values. */
export interface MonotoneCurve {
  /** Knots, strictly ascending. */
  readonly x: Float64Array;
  /** Values at the knots. */
  readonly y: Float64Array;
  /** Slopes at the knots. */
  readonly slopes: Float64Array;
  /** Square coefficient of each piece, in powers of the distance from its left knot. */
  readonly square: Float64Array;
  /** Cubic coefficient of each piece. */
  readonly cubic: Float64Array;
}

/** Value and slope at one place; an out-parameter, so that nothing is allocated in a hot loop. */
export interface CurvePoint {
  value: number;
  slope: number;
}

function secant(x: ArrayLike<number>, y: ArrayLike<number>, index: number): number {
  return (entry(y, index + 1) - entry(y, index)) / (entry(x, index + 1) - entry(x, index));
}

function interiorSlope(left: number, right: number, widthLeft: number, widthRight: number): number {
  if (left * right <= 0) return 0;
  const weightLeft = 2 * widthRight + widthLeft;
  const weightRight = widthRight + 2 * widthLeft;
  return (weightLeft + weightRight) / (weightLeft / left + weightRight / right);
}

function endSlope(own: number, next: number, widthOwn: number, widthNext: number): number {
  const slope = ((2 * widthOwn + widthNext) * own - widthOwn * next) / (widthOwn + widthNext);
  if (Math.sign(slope) !== Math.sign(own)) return 0;
  if (Math.sign(own) !== Math.sign(next) && Math.abs(slope) > 3 * Math.abs(own)) return 3 * own;
  return slope;
}

/**
 * Knot slopes that keep a cubic Hermite curve monotone wherever the points are monotone.
 *
 * @param x knots, strictly ascending, at least two [any unit]
 * @param y values at the knots, as many as knots [any unit]
 * @returns slope at each knot [unit of the values over that of the knots]
 * @throws RangeError if there are fewer than two knots, the lists differ in length, or the knots do not ascend
 *
 * Source: Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300 (from memory): weighted harmonic mean of
 * the secants inside; three-point shape-preserving formula at the ends, as in SciPy's PchipInterpolator.
 */
export function pchipSlopes(x: ArrayLike<number>, y: ArrayLike<number>): Float64Array {
  const last = x.length - 1;
  if (last < 1 || y.length !== x.length)
    throw new RangeError('a curve needs two or more points, x and y alike');
  for (let i = 0; i < last; i += 1) {
    if (!(entry(x, i + 1) > entry(x, i)))
      throw new RangeError(`knot ${i + 1} does not lie right of knot ${i}`);
  }
  const slopes = new Float64Array(last + 1);
  if (last === 1) return slopes.fill(secant(x, y, 0));
  const width = (i: number) => entry(x, i + 1) - entry(x, i);
  for (let i = 1; i < last; i += 1) {
    slopes[i] = interiorSlope(secant(x, y, i - 1), secant(x, y, i), width(i - 1), width(i));
  }
  slopes[0] = endSlope(secant(x, y, 0), secant(x, y, 1), width(0), width(1));
  slopes[last] = endSlope(secant(x, y, last - 1), secant(x, y, last - 2), width(last - 1), width(last - 2));
  return slopes;
}

/**
 * Curve with given values and slopes at its knots. It is monotone if each slope has the sign of the secants beside
 * it and no more than three times their steepness; that is not checked.
 *
 * @param x knots, strictly ascending, at least two [any unit]
 * @param y values at the knots [any unit]
 * @param slopes slopes at the knots [unit of the values over that of the knots]
 */
export function hermiteCurve(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  slopes: ArrayLike<number>,
): MonotoneCurve {
  const square = new Float64Array(x.length - 1);
  const cubic = new Float64Array(x.length - 1);
  for (let i = 0; i < square.length; i += 1) {
    const width = entry(x, i + 1) - entry(x, i);
    const rise = secant(x, y, i);
    const excess = (entry(slopes, i) + entry(slopes, i + 1) - 2 * rise) / width;
    square[i] = (rise - entry(slopes, i)) / width - excess;
    cubic[i] = excess / width;
  }
  return {
    x: Float64Array.from(x),
    y: Float64Array.from(y),
    slopes: Float64Array.from(slopes),
    square,
    cubic,
  };
}

/**
 * Monotone curve through points. Where the points rise or fall, so does the curve; it has no peaks of its own.
 *
 * @param x knots, strictly ascending, at least two [any unit]
 * @param y values at the knots [any unit]
 * @throws RangeError as {@link pchipSlopes}
 */
export function monotoneCurve(x: ArrayLike<number>, y: ArrayLike<number>): MonotoneCurve {
  return hermiteCurve(x, y, pchipSlopes(x, y));
}

function beyond(curve: MonotoneCurve, end: number, x: number, out: CurvePoint): void {
  out.slope = entry(curve.slopes, end);
  out.value = entry(curve.y, end) + out.slope * (x - entry(curve.x, end));
}

/**
 * Value and slope at x, without allocating. Left and right of the knots the curve goes on straight with its end
 * slope.
 *
 * @param curve the curve
 * @param x place, any finite number [unit of the knots]
 * @param out receives value and slope
 */
export function evaluate(curve: MonotoneCurve, x: number, out: CurvePoint): void {
  const knots = curve.x;
  const last = knots.length - 1;
  if (x < entry(knots, 0) || x >= entry(knots, last)) {
    beyond(curve, x < entry(knots, 0) ? 0 : last, x, out);
    return;
  }
  // Curves here have about a dozen knots: a scan is quicker than halving.
  let i = 0;
  while (x >= entry(knots, i + 1)) i += 1;
  const step = x - entry(knots, i);
  const slope = entry(curve.slopes, i);
  const square = entry(curve.square, i);
  const bend = entry(curve.cubic, i) * step;
  out.value = entry(curve.y, i) + step * (slope + step * (square + bend));
  out.slope = slope + step * (2 * square + 3 * bend);
}

/**
 * Value at x [unit of the values]; outside the knots on the straight continuation.
 *
 * @param curve the curve
 * @param x place, any finite number [unit of the knots]
 */
export function valueAt(curve: MonotoneCurve, x: number): number {
  const point = { value: 0, slope: 0 };
  evaluate(curve, x, point);
  return point.value;
}

/**
 * Slope at x [unit of the values over that of the knots]; outside the knots the end slope.
 *
 * @param curve the curve
 * @param x place, any finite number [unit of the knots]
 */
export function slopeAt(curve: MonotoneCurve, x: number): number {
  const point = { value: 0, slope: 0 };
  evaluate(curve, x, point);
  return point.slope;
}

/**
 * The place where a rising or falling curve takes the value y, to rounding. On a flat piece its left end.
 *
 * @param curve a curve whose knot values only rise or only fall
 * @param y wanted value [unit of the values]
 * @returns the place [unit of the knots], or undefined if the curve does not take the value between its first and last knot
 */
export function inverseAt(curve: MonotoneCurve, y: number): number | undefined {
  const last = curve.x.length - 1;
  const direction = Math.sign(entry(curve.y, last) - entry(curve.y, 0));
  let i = 0;
  while (i <= last && direction * (entry(curve.y, i) - y) < 0) i += 1;
  if (i > last) return undefined;
  if (entry(curve.y, i) === y) return entry(curve.x, i);
  if (i === 0) return undefined;
  const point = { value: 0, slope: 0 };
  const found = bracketedRoot(
    (x) => {
      evaluate(curve, x, point);
      return point.value - y;
    },
    entry(curve.x, i - 1),
    entry(curve.x, i),
    { tolerance: 0 },
  );
  return found.ok ? found.root : found.best;
}
