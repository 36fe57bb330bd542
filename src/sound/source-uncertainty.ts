import type { Decibels, Fraction } from '../quantities/dimensions.ts';
import type { SpeedLevel } from './fan-noise.ts';
import type { SoundAssumptions } from './sound-assumptions.ts';
import { sumUncertainty } from './uncertainty.ts';

/**
 * Uncertainty the way from the rated speeds to another brings [dB]; 0 between and at ratings that are interpolated.
 *
 * Source: propagation of the exponent's uncertainty.
 *
 * @param model compiled by `speedModel`
 * @param ratio speed over full speed [-], > 0; at rest it is infinite
 */
export function speedUncertainty(model: SpeedLevel, ratio: Fraction): Decibels {
  const at = ratio > 0 ? Math.log(ratio) : Number.NEGATIVE_INFINITY;
  const beyond = Math.max(0, model.rated.from - at, at - model.rated.to);
  return (model.exponentUncertainty * beyond) / Math.LN10;
}

/**
 * Uncertainty of the working-point term [dB].
 *
 * Source: model assumption, no source.
 *
 * @param flowShare flow over free delivery at the same speed [-]
 * @param stalled true where the measured pressure curve rises with flow
 * @param assumptions `workingPoint`, `stall`, `overdrivenUncertainty`
 */
export function workingPointUncertainty(
  flowShare: Fraction,
  stalled: boolean,
  assumptions: SoundAssumptions,
): Decibels {
  if (stalled) return assumptions.stall.uncertainty;
  if (flowShare > 1) return assumptions.overdrivenUncertainty;
  const knots = assumptions.workingPoint;
  const below = knots.findLast((knot) => flowShare >= knot.flowShare) ?? knots[0];
  return below?.uncertainty ?? 0;
}

/** What the uncertainty of a fan's level depends on. */
export interface FanCircumstances {
  /** True if distance and basis of the rating were stated. */
  readonly basisStated: boolean;
  /** From `speedUncertainty` [dB]. */
  readonly speed: Decibels;
  /** From `workingPointUncertainty` [dB]. */
  readonly workingPoint: Decibels;
  /** Installation term [dB], ≥ 0; 0 is a clear fan and brings no uncertainty. */
  readonly installation: Decibels;
  /** Level before the floor is added [dB]. */
  readonly level: Decibels;
}

/**
 * One-sigma uncertainty of one fan's level, without what all builds have in common [dB].
 *
 * Source: root of squares of the parts, then shared with the floor by energy (GUM); sizes: model assumption, no source.
 *
 * @param fan circumstances of the fan
 * @param assumptions `uncertainty`, `fanFloor`
 */
export function fanUncertainty(fan: FanCircumstances, assumptions: SoundAssumptions): Decibels {
  const sizes = assumptions.uncertainty;
  const rating = fan.basisStated ? sizes.ratingStated : Math.hypot(sizes.ratingUnstated, sizes.basisUnstated);
  const installation =
    fan.installation > 0 ? Math.max(sizes.installationLeast, sizes.installationShare * fan.installation) : 0;
  const own = Math.hypot(rating, fan.speed, fan.workingPoint, installation);
  const terms = [
    { level: fan.level, uncertainty: own },
    { level: assumptions.fanFloor, uncertainty: sizes.floor },
  ];
  return sumUncertainty(terms, () => 0);
}

/**
 * One-sigma uncertainty common to all builds: panel and way out [dB]. It belongs in absolute claims only.
 *
 * Source: model assumption, no source.
 *
 * @param assumptions `uncertainty`
 */
export function commonUncertainty(assumptions: SoundAssumptions): Decibels {
  return Math.hypot(assumptions.uncertainty.panelMounting, assumptions.uncertainty.attenuation);
}
