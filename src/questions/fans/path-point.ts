import { pressureRise } from '../../fan/curve.ts';
import type { FanModel } from '../../fan/fan-model.ts';
import { bracketedRoot } from '../../numerics/roots.ts';
import type { CubicMetresPerSecond, Decibels, Fraction, Pascals } from '../../quantities/dimensions.ts';
import { fanLevel, levelAtRatio, speedModel, workingPointTerm } from '../../sound/fan-noise.ts';
import type { SoundAssumptions } from '../../sound/sound-assumptions.ts';

/** A path whose loss grows with the square of the flow, known by one point of it. */
export interface KnownPath {
  /** Asked flow [m³/s], > 0. */
  readonly flow: CubicMetresPerSecond;
  /** What the path loses at that flow in air of 1.2 kg/m³ [Pa], > 0. */
  readonly pressure: Pascals;
}

/** One fan that moves the asked flow through a path. */
export interface PathPoint {
  /** System resistance number R·Q0²/p0 of the path against the fan [-]: small is open, large is tight. */
  readonly resistance: number;
  /** Speed over full speed at which it moves the asked flow [-]; above 1 it is too weak. */
  readonly ratio: Fraction;
  /** Flow over free delivery at that speed [-]. */
  readonly flowShare: Fraction;
  /** Level at that speed, 1 m, free field [dB(A)]; that of the hold floor if the fan can turn no slower. */
  readonly level: Decibels;
  readonly reach: 'reached' | 'too weak' | 'below hold';
}

/** Accuracy of the working point, as a share of free delivery [-]. */
const ACCURACY = 1e-12;

/** Where the curve at full speed crosses the path [m³/s]. */
function crossing({ curve }: FanModel, path: KnownPath): CubicMetresPerSecond {
  const excess = (flow: number): number =>
    pressureRise(curve, flow, 1, 1) - path.pressure * (flow / path.flow) ** 2;
  const root = bracketedRoot(excess, 0, curve.freeDelivery, {
    tolerance: ACCURACY * curve.freeDelivery,
    maxCalls: 200,
  });
  if (root.ok) return root.root;
  throw new Error(`a curve does not cross its path: ${root.reason}`);
}

/**
 * What a fan has to do to move a flow through a path, and how loud it then is.
 *
 * Along a path of square law the working point keeps its place on the curve at every speed, so that one crossing at
 * full speed tells all. Source: fan laws, ASHRAE Handbook HVAC Systems and Equipment (from memory); level as in
 * `speedModel`, `workingPointTerm` and `fanLevel`.
 *
 * @param fan of a catalog
 * @param path asked flow and the loss at it
 * @param sound exponent, working point and floor of the level
 */
export function pathPoint(fan: FanModel, path: KnownPath, sound: SoundAssumptions): PathPoint {
  const { freeDelivery, shutOff } = fan.curve;
  const flow = crossing(fan, path);
  const ratio = path.flow / flow;
  const flowShare = flow / freeDelivery;
  const model = speedModel(fan.ratings, fan.fullSpeed, sound);
  const turns = Math.max(ratio, fan.holdFloor);
  const rise = workingPointTerm(flowShare, sound);
  return {
    resistance: ((path.pressure / path.flow ** 2) * freeDelivery ** 2) / shutOff,
    ratio,
    flowShare,
    level: fanLevel(levelAtRatio(model, turns) + rise, sound.fanFloor),
    reach: ratio > 1 ? 'too weak' : ratio < fan.holdFloor ? 'below hold' : 'reached',
  };
}
