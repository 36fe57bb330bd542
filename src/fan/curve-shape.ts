import { type MonotoneCurve, monotoneCurve, valueAt } from '../numerics/monotone-curve.ts';
import type { CubicMetresPerSecond, Fraction, Pascals } from '../quantities/dimensions.ts';
import { type FanCurve, pressureRise } from './curve.ts';

/** Even steps from the least flow shown to free delivery [-]. */
const STEPS = 40;
/** How far a drawing goes beyond a flow that runs backwards, as a multiple of it [-]. */
const BEYOND = 1.25;

/** One flow of a drawn curve. */
export interface ShapePoint {
  /** Of one fan [m³/s]. */
  readonly flow: CubicMetresPerSecond;
  /** By the curve the fan is computed with. */
  readonly counted: Pascals;
  /** By the points as given, with their dip; absent outside of them. */
  readonly raw?: Pascals;
}

/** The curve of a fan at its speed and density, to be drawn, and where it works. */
export interface CurveShape {
  /** By rising flow. */
  readonly points: readonly ShapePoint[];
  readonly working: ShapePoint;
  /** Flow of the last pressure peak, left of which the fan may stall [m³/s]; 0 if the points never rise. */
  readonly peakFlow: CubicMetresPerSecond;
}

function withinPoints(full: number, { flows }: FanCurve['raw']): boolean {
  return full >= (flows[0] ?? Number.NaN) && full <= (flows.at(-1) ?? Number.NaN);
}

/**
 * A fan's curve at its speed and density, as its points give it and as it is computed with: at even flows up to free
 * delivery, from rest or from beyond a reversed flow, and at the points given.
 *
 * Source: fan laws as `evaluateRise`; interpolation as `pchipSlopes`.
 *
 * @param curve the fan's curve
 * @param flow volume flow of one fan at its own density [m³/s], any sign
 * @param ratio speed over full speed [-], > 0
 * @param densityRatio local density over reference density [-], > 0
 */
export function curveShape(
  curve: FanCurve,
  flow: CubicMetresPerSecond,
  ratio: Fraction,
  densityRatio: Fraction,
): CurveShape {
  const given: MonotoneCurve = monotoneCurve(curve.raw.flows, curve.raw.pressures);
  const scale = densityRatio * ratio * ratio;
  const pointAt = (at: CubicMetresPerSecond): ShapePoint => {
    const full = at / ratio;
    const counted = pressureRise(curve, at, ratio, densityRatio);
    return withinPoints(full, curve.raw)
      ? { flow: at, counted, raw: scale * valueAt(given, full) }
      : { flow: at, counted };
  };
  const least = Math.min(0, BEYOND * flow);
  const most = Math.max(flow, ratio * curve.freeDelivery);
  const even = Array.from({ length: STEPS + 1 }, (_, step) => least + ((most - least) * step) / STEPS);
  const knots = curve.raw.flows.map((knot) => ratio * knot).filter((knot) => knot <= most);
  const flows = [...new Set([...even, ...knots])].sort((one, other) => one - other);
  return { points: flows.map(pointAt), working: pointAt(flow), peakFlow: ratio * curve.peakFlow };
}
