import type { CubicMetresPerSecond } from '../../quantities/dimensions.ts';

/** Step of the grid of volume flows [natural logarithm]: a step is worth about 22 dB times itself. */
export const FLOW_STEP = 0.01;
/** Least flow of the grid [m³/s]; below it no flow is taken. */
const LEAST_FLOW: CubicMetresPerSecond = 1e-7;
/** Step that stands for no flow. */
export const NO_FLOW = Number.NEGATIVE_INFINITY;

/** Flow at a step of the grid [m³/s]; 0 for `NO_FLOW`, infinite for infinity. */
export function flowAt(step: number): CubicMetresPerSecond {
  return LEAST_FLOW * Math.exp(step * FLOW_STEP);
}

/**
 * The greatest step on a grid so many times as wide whose flow is no greater than one.
 *
 * @param flow [m³/s], ≥ 0
 * @param span steps between those that count, ≥ 1
 */
export function stepBelow(flow: CubicMetresPerSecond, span: number): number {
  if (!(flow > LEAST_FLOW)) return NO_FLOW;
  return span * Math.floor(Math.log(flow / LEAST_FLOW) / (span * FLOW_STEP));
}

/**
 * Least number of steps that multiply a flow by no less than a factor.
 *
 * @param factor ≥ 1; may be infinite
 */
export function stepsFor(factor: number): number {
  // A factor of whole steps may have lost its last digits.
  return Math.ceil(Math.log(factor) / FLOW_STEP - 1e-6);
}
