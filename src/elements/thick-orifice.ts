import type { Fraction, Metres, SquareMetres } from '../quantities/dimensions.ts';

/** Below this thickness over hydraulic diameter an edge counts as sharp and thin. Source: as `orificeLoss`. */
const THIN = 0.015;
/** Root of the contraction loss of a sharp edge, 0.5, rounded as the handbook prints it [-]. */
const CONTRACTION_ROOT = 707 / 1000;

/** A hole, or many equal holes side by side, between two spaces. */
export interface Orifice {
  /** Area of all holes together [m²]. */
  readonly area: SquareMetres;
  /** Of one hole [m]. */
  readonly hydraulicDiameter: Metres;
  /** Of the sheet [m]. */
  readonly thickness: Metres;
  /** Darcy friction factor times Reynolds number of a long laminar hole [-]; 64 if round. */
  readonly laminarFriction: number;
  /** Area of the holes over the area the stream comes from [-]; 0 for a large space. */
  readonly upstreamShare: Fraction;
  /** Area of the holes over the area the stream goes to [-]; 0 for a large space. */
  readonly downstreamShare: Fraction;
}

/**
 * Factor τ of the interplay between contraction and expansion, which fades as the stream fills a thick hole [-].
 *
 * τ = (2.4 - l)·10^-(0.25 + 0.535·l⁸/(0.05 + l⁷)), nothing from l = 2.4 on. With an exponent 8 in the
 * denominator, as some codes have it, the formula misses the table it stands for.
 *
 * Source: Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagram 4-12 (from memory).
 *
 * @param relativeThickness thickness over hydraulic diameter [-], ≥ 0
 */
export function thicknessFactor(relativeThickness: number): number {
  if (relativeThickness >= 2.4) return 0;
  const seventh = relativeThickness ** 7;
  return (2.4 - relativeThickness) * 10 ** -(0.25 + (0.535 * relativeThickness * seventh) / (0.05 + seventh));
}

/**
 * Loss of a sharp-edged hole in a thin sheet in turbulent flow, in heads of the velocity in the hole [-].
 *
 * Source: Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagram 4-14 (from memory); the special cases
 * agree with published code of the Modelica Standard Library and of ThermoSysPro.
 *
 * @param upstreamShare area of the hole over the area before it [-], 0 to 1
 * @param downstreamShare area of the hole over the area behind it [-], 0 to 1
 */
export function thinOrificeLoss(upstreamShare: Fraction, downstreamShare: Fraction): number {
  return (1 - downstreamShare + CONTRACTION_ROOT * (1 - upstreamShare) ** 0.375) ** 2;
}

/**
 * Loss of a sharp-edged hole in turbulent flow, in heads of the velocity in the hole [-].
 *
 * 0.5·(1-fu)^0.75 + τ(l)·(1-fu)^0.375·(1-fd) + (1-fd)². It contains the exit loss into a large space.
 *
 * Source: Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagrams 4-11 and 4-12 (from memory).
 *
 * @param upstreamShare area of the hole over the area before it [-], 0 to 1
 * @param downstreamShare area of the hole over the area behind it [-], 0 to 1
 * @param relativeThickness thickness over hydraulic diameter [-], ≥ 0; friction is left to the laminar part
 */
export function orificeLoss(
  upstreamShare: Fraction,
  downstreamShare: Fraction,
  relativeThickness: number,
): number {
  if (relativeThickness < THIN) return thinOrificeLoss(upstreamShare, downstreamShare);
  const before = 1 - upstreamShare;
  const behind = 1 - downstreamShare;
  return 0.5 * before ** 0.75 + thicknessFactor(relativeThickness) * before ** 0.375 * behind + behind ** 2;
}

/**
 * Coefficients of a hole at any flow: the turbulent loss and, added to it, the creeping one of
 * (12π + f·Re·l)/Re heads.
 *
 * Source: turbulent as `orificeLoss`; creeping 12π/Re by Sampson (1891), exact for a thin round hole, and within
 * 8 % of Hasimoto's slit (1958) when the Reynolds number is on the hydraulic diameter; length by Poiseuille. That
 * the two add is a model assumption, on the safe side by 0 to 20 % at Reynolds numbers of 300 to 3000.
 *
 * @param orifice areas and sizes, > 0
 * @returns viscous [1/m³] and inertial [1/m⁴] coefficient
 */
export function orificeCoefficients(orifice: Orifice): {
  readonly viscous: number;
  readonly inertial: number;
} {
  const { area, hydraulicDiameter, laminarFriction } = orifice;
  const relativeThickness = orifice.thickness / hydraulicDiameter;
  const turbulent = orificeLoss(orifice.upstreamShare, orifice.downstreamShare, relativeThickness);
  return {
    viscous: (12 * Math.PI + laminarFriction * relativeThickness) / (2 * hydraulicDiameter * area),
    inertial: turbulent / (2 * area * area),
  };
}
