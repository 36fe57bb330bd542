import type { SquareMetres } from '../quantities/dimensions.ts';

/** Face velocity at which the small linear part of a loss given as K is stated [m/s] (assumption). */
const FAINT_VELOCITY = 1;
/** Linear part of a loss given as K, as a share of its quadratic part at that velocity [-] (assumption). */
const FAINT_SHARE = 1e-3;

/** Coefficients of an element whose loss is known in velocity heads. */
export interface HeadLoss {
  readonly viscous: number;
  readonly inertial: number;
  readonly faint: number;
}

/**
 * Small linear part that keeps a loss strictly increasing through zero flow, so that a network has one
 * smooth solution.
 *
 * Source: model assumption, no source.
 *
 * @param heads loss in velocity heads [-], > 0
 * @param area area that the velocity refers to [m²], > 0
 * @returns coefficient on density times flow [1/(m·s)]
 */
export function faintPart(heads: number, area: SquareMetres): number {
  return (FAINT_SHARE * heads * FAINT_VELOCITY) / (2 * area);
}

/**
 * Loss of K velocity heads: Δp = K·ρ·V²/2 with V = Q/A, and a small linear part beside it.
 *
 * Source: definition of the loss coefficient; the linear part is a model assumption, no source.
 *
 * @param heads loss coefficient K [-], > 0
 * @param area area that the velocity refers to [m²], > 0
 */
export function headLoss(heads: number, area: SquareMetres): HeadLoss {
  return { viscous: 0, inertial: heads / (2 * area * area), faint: faintPart(heads, area) };
}
