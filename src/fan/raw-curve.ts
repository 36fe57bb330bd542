import { entry } from '../numerics/entry.ts';
import { monotoneCurve, valueAt } from '../numerics/monotone-curve.ts';
import type { CubicMetresPerSecond, Fraction, Pascals } from '../quantities/dimensions.ts';
import { type FanCurve, pressureRise } from './curve.ts';

/** Least difference that is told, as a share of the shut-off pressure at the same speed [-]. */
const TELLING = 1e-3;

/**
 * Pressure rise by the points as given, with their dip [Pa], where it is not the one the fan is computed with;
 * undefined where it is, outside the points and for a stopped fan.
 *
 * Source: interpolation as `pchipSlopes`; fan laws as `evaluateRise`.
 *
 * @param curve the fan's curve
 * @param flow volume flow at the fan's own density [m³/s], any sign
 * @param ratio speed over full speed [-], ≥ 0
 * @param densityRatio local density over reference density [-], > 0
 */
export function rawRise(
  curve: FanCurve,
  flow: CubicMetresPerSecond,
  ratio: Fraction,
  densityRatio: Fraction,
): Pascals | undefined {
  const { flows, pressures } = curve.raw;
  const full = flow / ratio;
  const inside = full >= entry(flows, 0) && full <= entry(flows, flows.length - 1);
  if (curve.peakFlow === 0 || !inside) return undefined;
  const scale = densityRatio * ratio * ratio;
  const raw = scale * valueAt(monotoneCurve(flows, pressures), full);
  const own = pressureRise(curve, flow, ratio, densityRatio);
  return Math.abs(raw - own) > TELLING * scale * curve.shutOff ? raw : undefined;
}
