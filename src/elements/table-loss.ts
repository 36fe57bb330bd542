import { entry } from '../numerics/entry.ts';
import { type CurvePoint, evaluate, hermiteCurve, pchipSlopes } from '../numerics/monotone-curve.ts';
import type { CubicMetresPerSecond, Pascals } from '../quantities/dimensions.ts';
import type { FlowLaw } from './element.ts';
import { REFERENCE_DENSITY } from './reference-air.ts';

/** Least slope at rest, as a share of that of the line to the first point [-] (assumption). */
const LEAST_REST_SLOPE = 0.01;

/**
 * Loss through measured points: a monotone curve from rest to the last of them, and beyond it on with its last slope and
 * a square law. It goes with the density.
 *
 * Source: interpolation as `pchipSlopes`; the slope at rest, what comes beyond the points and that viscosity does not
 * count are model assumptions.
 *
 * @param flows strictly ascending [m³/s], the first > 0
 * @param pressures as many [Pa], strictly ascending, the first > 0, in air of 1.2 kg/m³
 */
export function tableLoss(flows: readonly CubicMetresPerSecond[], pressures: readonly Pascals[]): FlowLaw {
  const x = [0, ...flows];
  const y = [0, ...pressures];
  const slopes = pchipSlopes(x, y);
  slopes[0] = Math.max(entry(slopes, 0), (LEAST_REST_SLOPE * entry(y, 1)) / entry(x, 1));
  const last = x.length - 1;
  // Two points or a sharp last turn may leave the end without a slope of its own.
  slopes[last] = Math.max(entry(slopes, last), (LEAST_REST_SLOPE * entry(y, last)) / entry(x, last));
  const curve = hermiteCurve(x, y, slopes);
  const end = entry(x, last);
  const square = entry(y, last) / end ** 2;
  const at: CurvePoint = { value: 0, slope: 0 };
  const look = (flow: number): void => {
    const beyond = Math.max(0, flow - end);
    evaluate(curve, flow, at);
    at.value += square * beyond ** 2;
    at.slope += 2 * square * beyond;
  };
  return {
    loss: (flow, density) => {
      look(Math.abs(flow));
      return (Math.sign(flow) * at.value * density) / REFERENCE_DENSITY;
    },
    slope: (flow, density) => {
      look(Math.abs(flow));
      return (at.slope * density) / REFERENCE_DENSITY;
    },
  };
}
