import { entry } from '../numerics/entry.ts';
import { type CurvePoint, evaluate, type MonotoneCurve, monotoneCurve } from '../numerics/monotone-curve.ts';
import { upperBound } from '../numerics/polynomial-bound.ts';
import type {
  CubicMetresPerSecond,
  Fraction,
  KilogramsPerCubicMetre,
  Pascals,
  Watts,
} from '../quantities/dimensions.ts';
import { fallingPoints, LEAST_SLOPE_SHARE, lastPeak } from './envelope.ts';
import type { CurvePoints } from './fan-model.ts';

/** Density all fan curves refer to [kg/m³]. Source: ISO 5801, standard air (from memory). */
export const REFERENCE_DENSITY: KilogramsPerCubicMetre = 1.2;

/** Pressure against flow at full speed and reference density, for every flow, forwards and backwards. */
export interface FanCurve {
  /** Points as given. */
  readonly raw: CurvePoints;
  /** Falling curve from zero flow to zero pressure. */
  readonly curve: MonotoneCurve;
  /** Flow at zero pressure, > 0. */
  readonly freeDelivery: CubicMetresPerSecond;
  /** Pressure of the falling curve at zero flow. */
  readonly shutOff: Pascals;
  /** Flow of the last pressure peak of the points as given, left of which the fan may stall; 0 if none. */
  readonly peakFlow: CubicMetresPerSecond;
  /** Slope just beyond free delivery [Pa·s/m³], < 0. */
  readonly overdriveSlope: number;
  /** Gain of pressure per reversed flow [Pa·s/m³], > 0. */
  readonly reverseSlope: number;
  /** Resistance of the stopped fan [Pa·s²/m⁶], shut-off pressure over the square of free delivery. */
  readonly quadratic: number;
  /** True if made from box figures only. */
  readonly synthesised: boolean;
}

/** Pressure rise [Pa] and its slope against flow [Pa·s/m³]: an out-parameter. */
export interface Rise {
  rise: number;
  slope: number;
}

/**
 * Completes a falling curve to all flows: beyond free delivery and in reverse flow a slope that joins on and the
 * square law of the stopped fan.
 *
 * @param raw points to show and to judge stall by
 * @param curve falling from (0, shut-off) to (free delivery, 0)
 * @param synthesised whether the curve is made from box figures only
 * @throws RangeError if the curve does not begin at zero flow above zero pressure or does not end at zero pressure
 *
 * Source: derived: the only such continuation of degree two in flow and speed together, so that the fan laws and
 * the stopped fan follow from one function. The square term is a model assumption, no source.
 */
export function completeCurve(raw: CurvePoints, curve: MonotoneCurve, synthesised: boolean): FanCurve {
  const last = curve.x.length - 1;
  const freeDelivery = entry(curve.x, last);
  const shutOff = entry(curve.y, 0);
  if (entry(curve.x, 0) !== 0 || !(shutOff > 0) || entry(curve.y, last) !== 0) {
    throw new RangeError('a fan curve goes from shut-off pressure at zero flow to zero pressure');
  }
  const leastSlope = (LEAST_SLOPE_SHARE * shutOff) / freeDelivery;
  return {
    raw,
    curve,
    freeDelivery,
    shutOff,
    peakFlow: lastPeak(raw),
    overdriveSlope: Math.min(entry(curve.slopes, last), -leastSlope),
    reverseSlope: Math.max(-entry(curve.slopes, 0), leastSlope),
    quadratic: shutOff / freeDelivery ** 2,
    synthesised,
  };
}

/**
 * Fan curve from digitised points at full speed and reference density.
 *
 * @param points flows [m³/s], zero or more and strictly ascending, and pressures [Pa], the first above zero; two
 * points or more. Missing ends are drawn straight to zero flow and zero pressure.
 * @throws RangeError if the points are unusable (see `curveFault`)
 *
 * Source: as `fallingPoints`, `pchipSlopes` and `completeCurve`.
 */
export function curveFromPoints(points: CurvePoints): FanCurve {
  const { flows, pressures } = fallingPoints(points);
  return completeCurve(points, monotoneCurve(flows, pressures), false);
}

const onCurve: CurvePoint = { value: 0, slope: 0 };

/**
 * Pressure rise of the fan and its slope, without allocating.
 *
 * Falls strictly with flow; the slope is at least as steep as the least slope of the curve, except at rest
 * without flow, where it is zero.
 *
 * @param curve the fan's curve
 * @param flow volume flow at the fan's own density [m³/s], any sign
 * @param ratio speed over full speed [-], ≥ 0; 0 is a stopped fan
 * @param densityRatio local density over reference density [-], > 0
 * @param out receives rise and slope
 *
 * Source: fan laws (derived), ASHRAE Handbook HVAC Systems and Equipment, chapter on fans (from memory).
 */
export function evaluateRise(
  curve: FanCurve,
  flow: CubicMetresPerSecond,
  ratio: Fraction,
  densityRatio: Fraction,
  out: Rise,
): void {
  const excess = flow - ratio * curve.freeDelivery;
  if (flow < 0) {
    const gain = curve.reverseSlope * ratio;
    out.rise = densityRatio * (curve.shutOff * ratio * ratio - flow * (gain - curve.quadratic * flow));
    out.slope = densityRatio * (2 * curve.quadratic * flow - gain);
  } else if (excess >= 0) {
    const fall = curve.overdriveSlope * ratio;
    out.rise = densityRatio * excess * (fall - curve.quadratic * excess);
    out.slope = densityRatio * (fall - 2 * curve.quadratic * excess);
  } else {
    evaluate(curve.curve, flow / ratio, onCurve);
    const leastSlope = LEAST_SLOPE_SHARE * curve.quadratic * curve.freeDelivery;
    out.rise = densityRatio * ratio * ratio * onCurve.value;
    out.slope = densityRatio * ratio * Math.min(onCurve.slope, -leastSlope);
  }
}

/**
 * Pressure rise of the fan [Pa]; negative when the fan is overdriven or stopped.
 *
 * @param curve the fan's curve
 * @param flow volume flow at the fan's own density [m³/s], any sign
 * @param ratio speed over full speed [-], ≥ 0
 * @param densityRatio local density over reference density [-], > 0
 *
 * Source: as {@link evaluateRise}.
 */
export function pressureRise(
  curve: FanCurve,
  flow: CubicMetresPerSecond,
  ratio: Fraction,
  densityRatio: Fraction,
): Pascals {
  const out: Rise = { rise: 0, slope: 0 };
  evaluateRise(curve, flow, ratio, densityRatio, out);
  return out.rise;
}

/**
 * Whether a running fan works left of its pressure peak, where it may stall, hunt and be loud. Reverse flow
 * counts as stall; a stopped fan cannot stall.
 *
 * @param curve the fan's curve
 * @param flow volume flow through one fan [m³/s], any sign
 * @param ratio speed over full speed [-], ≥ 0
 *
 * Source: common practice, no source; that the peak moves in proportion to the speed follows from the fan laws.
 */
export function isStalled(curve: FanCurve, flow: CubicMetresPerSecond, ratio: Fraction): boolean {
  return ratio > 0 && flow < ratio * curve.peakFlow;
}

const PEAK_TOLERANCE = 5e-7;

/** Control values of flow times pressure over one piece of the curve. */
function airPowerControls(curve: MonotoneCurve, piece: number): number[] {
  const start = entry(curve.x, piece);
  const end = entry(curve.x, piece + 1);
  const third = (end - start) / 3;
  const first = entry(curve.y, piece);
  const last = entry(curve.y, piece + 1);
  const second = first + third * entry(curve.slopes, piece);
  const beforeLast = last - third * entry(curve.slopes, piece + 1);
  return [
    start * first,
    (3 * start * second + end * first) / 4,
    (start * beforeLast + end * second) / 2,
    (start * last + 3 * end * beforeLast) / 4,
    end * last,
  ];
}

/**
 * Greatest air power, flow times pressure, at full speed and reference density [W]: an upper bound, never below
 * the true maximum of the curve and less than 1e-6 of it above.
 *
 * @param curve the fan's curve
 *
 * Source: derived; bounded as `upperBound` says.
 */
export function peakAirPower(curve: FanCurve): Watts {
  const pieces = Array.from({ length: curve.curve.x.length - 1 }, (_, i) => airPowerControls(curve.curve, i));
  return upperBound(pieces, PEAK_TOLERANCE);
}
