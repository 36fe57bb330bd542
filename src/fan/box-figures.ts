import { hermiteCurve } from '../numerics/monotone-curve.ts';
import type { CubicMetresPerSecond, Fraction, Pascals } from '../quantities/dimensions.ts';
import { completeCurve, type FanCurve } from './curve.ts';
import type { CurvePoints } from './fan-model.ts';

/**
 * Linear share a of the curve p/p0 = 1 − a·x − (1 − a)·x², x = Q/Q0, taken for axial fans [-]. Model assumption,
 * no source: midway between the straight line (1) and the parabola (0) that bound typical curves.
 */
export const AXIAL_LINEAR_SHARE: Fraction = 0.5;

/** The same for centrifugal fans, whose curves are close to a parabola [-]. Model assumption, no source. */
export const CENTRIFUGAL_LINEAR_SHARE: Fraction = 0;

/** Relative band of a flow, low ≤ 0 ≤ high [-]. */
export interface FlowBand {
  readonly low: Fraction;
  readonly high: Fraction;
}

/** Uncertainty of a flow computed with a curve made from box figures. */
export interface BoxUncertainty {
  /** Share of free delivery that parts the two bands [-]. */
  readonly divide: Fraction;
  /** At or below the divide, where a stall dip may hide. */
  readonly nearShutOff: FlowBand;
  /** Above the divide. */
  readonly nearFreeDelivery: FlowBand;
}

/** Default uncertainty. Model assumption, no source; covers the spread between straight line and parabola. */
export const BOX_UNCERTAINTY: BoxUncertainty = {
  divide: 0.5,
  nearShutOff: { low: -0.2, high: 0.08 },
  nearFreeDelivery: { low: -0.08, high: 0.08 },
};

const SHOWN_POINTS = 11;

function shownPoints(freeDelivery: number, shutOff: number, linearShare: number): CurvePoints {
  const shares = Array.from({ length: SHOWN_POINTS }, (_, i) => i / (SHOWN_POINTS - 1));
  return {
    flows: shares.map((x) => x * freeDelivery),
    pressures: shares.map((x) => shutOff * (1 - x) * (1 + (1 - linearShare) * x)),
  };
}

/**
 * Fan curve from the two figures on the box, at full speed and reference density.
 *
 * @param freeDelivery flow at zero pressure [m³/s], > 0
 * @param shutOff pressure at zero flow [Pa], > 0
 * @param linearShare linear share of the curve [-], 0 (parabola) … 1 (straight line); default for axial fans
 * @throws RangeError outside those ranges
 *
 * Source: model assumption, no source: curves of fans lie between a straight line and a parabola.
 */
export function curveFromBox(
  freeDelivery: CubicMetresPerSecond,
  shutOff: Pascals,
  linearShare: Fraction = AXIAL_LINEAR_SHARE,
): FanCurve {
  const usable = freeDelivery > 0 && shutOff > 0 && Number.isFinite(freeDelivery) && Number.isFinite(shutOff);
  if (!usable || !(linearShare >= 0 && linearShare <= 1)) {
    throw new RangeError(
      `no fan curve from ${freeDelivery} m³/s, ${shutOff} Pa, linear share ${linearShare}`,
    );
  }
  const mean = shutOff / freeDelivery;
  // One cubic piece with the parabola's own end slopes is that parabola, exactly.
  const curve = hermiteCurve(
    [0, freeDelivery],
    [shutOff, 0],
    [-linearShare * mean, (linearShare - 2) * mean],
  );
  return completeCurve(shownPoints(freeDelivery, shutOff, linearShare), curve, true);
}

/**
 * Band of a flow computed with a curve made from box figures.
 *
 * @param relativeFlow flow over free delivery at the same speed [-]
 * @param uncertainty bands; default {@link BOX_UNCERTAINTY}
 *
 * Source: model assumption, no source.
 */
export function boxFlowBand(relativeFlow: Fraction, uncertainty: BoxUncertainty = BOX_UNCERTAINTY): FlowBand {
  return relativeFlow > uncertainty.divide ? uncertainty.nearFreeDelivery : uncertainty.nearShutOff;
}
