import { hermiteCurve } from '../numerics/monotone-curve.ts';
import type { Fraction } from '../quantities/dimensions.ts';
import { completeCurve, type FanCurve } from './curve.ts';

/**
 * A fan curve moved along parabolas through the origin: flow times a factor, pressure times its square. Through any
 * quadratic resistance such a fan gives the factor times the flow.
 *
 * Source: derived; a curve as of a fan that turns so much faster, by the fan laws.
 *
 * @param curve of the fan
 * @param factor on the flow [-], > 0
 */
export function stretchedCurve({ raw, curve, synthesised }: FanCurve, factor: Fraction): FanCurve {
  const square = factor * factor;
  const points = {
    flows: raw.flows.map((flow) => flow * factor),
    pressures: raw.pressures.map((pressure) => pressure * square),
  };
  const moved = hermiteCurve(
    curve.x.map((flow) => flow * factor),
    curve.y.map((pressure) => pressure * square),
    curve.slopes.map((slope) => slope * factor),
  );
  return completeCurve(points, moved, synthesised);
}
