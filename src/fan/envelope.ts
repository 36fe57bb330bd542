import { entry } from '../numerics/entry.ts';
import type { Pascals } from '../quantities/dimensions.ts';
import type { CurvePoints } from './fan-model.ts';

/**
 * Least fall of a curve, as a share of shut-off pressure over free delivery [-]. A curve that never levels out
 * gives one flow for one pressure. Source: Modelica Buildings library, Fluid.Movers (published): kRes with
 * delta = 0.05, so delta²/10.
 */
export const LEAST_SLOPE_SHARE = 2.5e-4;

/** Most a curve may be drawn out to zero pressure, in multiples of its last flow [-]. Assumption, no source. */
const MOST_EXTENSION = 4;

/** Most the shut-off pressure may exceed that of the first point, as a ratio [-]. Assumption, no source. */
const MOST_SHUT_OFF = 2;

/** Why points cannot be the curve of a fan. */
export type CurveFault =
  | 'too-few-points'
  | 'unequal-lengths'
  | 'not-finite'
  | 'flows-not-ascending'
  | 'negative-flow'
  | 'no-pressure'
  | 'does-not-fall';

interface Point {
  readonly flow: number;
  readonly pressure: number;
}

/**
 * Lower monotone envelope: the running minimum of the pressures in order of flow. It lies nowhere above the
 * points, so it promises no more than was measured.
 *
 * @param pressures pressures in order of rising flow [Pa]
 * @returns their running minimum [Pa]
 *
 * Source: definition; that a fan is computed with it is a model assumption, no source.
 */
export function lowerEnvelope(pressures: readonly Pascals[]): Pascals[] {
  let least = Number.POSITIVE_INFINITY;
  return pressures.map((pressure) => {
    least = Math.min(least, pressure);
    return least;
  });
}

/**
 * Flow of the last pressure peak [m³/s], that is, the end of the last rising piece; 0 if the points never rise.
 *
 * @param points points of the curve as given
 *
 * Source: definition.
 */
export function lastPeak(points: CurvePoints): number {
  const { flows, pressures } = points;
  let peak = 0;
  for (let i = 1; i < pressures.length; i += 1) {
    if (entry(pressures, i) > entry(pressures, i - 1)) peak = entry(flows, i);
  }
  return peak;
}

/** Ends the envelope at zero pressure: cut between two points, or drawn out with the steeper of two slopes. */
function closeAtZero(points: readonly Point[]): Point[] {
  const beyond = points.findIndex((point) => point.pressure <= 0);
  const kept = beyond < 0 ? [...points] : points.slice(0, beyond);
  const [first] = kept;
  const last = kept.at(-1);
  if (first === undefined || last === undefined) return [];
  const next = points[kept.length];
  if (next !== undefined) {
    const share = last.pressure / (last.pressure - next.pressure);
    return [...kept, { flow: last.flow + share * (next.flow - last.flow), pressure: 0 }];
  }
  const before = kept.at(-2) ?? first;
  const fall = Math.max(
    (before.pressure - last.pressure) / (last.flow - before.flow),
    (first.pressure - last.pressure) / (last.flow - first.flow),
  );
  return [...kept, { flow: last.flow + last.pressure / fall, pressure: 0 }];
}

/** Begins the envelope at zero flow, going straight back from its first two points, but not far up. */
function openAtShutOff(points: readonly Point[]): Point[] {
  const [first, second] = points;
  if (first === undefined || second === undefined || first.flow === 0) return [...points];
  const slope = (second.pressure - first.pressure) / (second.flow - first.flow);
  const pressure = Math.min(first.pressure - slope * first.flow, MOST_SHUT_OFF * first.pressure);
  return [{ flow: 0, pressure }, ...points];
}

/** Makes every piece fall at least as steeply as the least slope; leaves steeper pieces as they are. */
function tiltFlats(points: readonly Point[]): Point[] {
  const delivery = points.at(-1)?.flow ?? 0;
  const slope = (LEAST_SLOPE_SHARE * (points[0]?.pressure ?? 0)) / delivery;
  let least = Number.POSITIVE_INFINITY;
  return points.map((point) => {
    const line = slope * (delivery - point.flow);
    const above = point.pressure - line;
    if (above >= 0 && above <= least) {
      least = above;
      return point;
    }
    least = Math.max(0, Math.min(least, above));
    return { flow: point.flow, pressure: line + least };
  });
}

function faultInNumbers({ flows, pressures }: CurvePoints): CurveFault | undefined {
  if (flows.length !== pressures.length) return 'unequal-lengths';
  if (flows.length < 2) return 'too-few-points';
  if (![...flows, ...pressures].every(Number.isFinite)) return 'not-finite';
  if (flows.some((flow) => flow < 0)) return 'negative-flow';
  if (flows.some((flow, i) => i > 0 && flow <= entry(flows, i - 1))) return 'flows-not-ascending';
  return entry(pressures, 0) > 0 ? undefined : 'no-pressure';
}

function inLists(points: readonly Point[]): CurvePoints {
  return { flows: points.map((point) => point.flow), pressures: points.map((point) => point.pressure) };
}

function closedEnvelope({ flows, pressures }: CurvePoints): Point[] {
  const envelope = lowerEnvelope(pressures);
  return openAtShutOff(closeAtZero(flows.map((flow, i) => ({ flow, pressure: entry(envelope, i) }))));
}

/**
 * What is wrong with points that cannot be a fan's curve, or undefined if they can.
 *
 * @param points flows [m³/s], zero or more and strictly ascending, and pressures [Pa], the first above zero
 *
 * Source: model assumption, no source, for how far a curve may be drawn out.
 */
export function curveFault(points: CurvePoints): CurveFault | undefined {
  const fault = faultInNumbers(points);
  if (fault !== undefined) return fault;
  const closed = inLists(closedEnvelope(points));
  const most = MOST_EXTENSION * entry(points.flows, points.flows.length - 1);
  if (!(entry(closed.flows, closed.flows.length - 1) <= most)) return 'does-not-fall';
  // Closing can fail in rounding where pressures differ beyond all measure.
  return faultInNumbers(closed);
}

/**
 * The strictly falling points a fan is computed with, from zero flow to zero pressure: the lower envelope, closed
 * at both ends by straight lines, with level pieces tilted by the least slope.
 *
 * @param points as for {@link curveFault}
 * @throws RangeError if the points are unusable
 *
 * Source: closing and least slope as in the Modelica Buildings library, Fluid.Movers (published).
 */
export function fallingPoints(points: CurvePoints): CurvePoints {
  const fault = curveFault(points);
  if (fault !== undefined) throw new RangeError(`points of a fan curve: ${fault}`);
  return inLists(tiltFlats(closedEnvelope(points)));
}
