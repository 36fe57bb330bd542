import type { KilogramsPerSecond, Pascals } from '../quantities/dimensions.ts';

/**
 * Pressure lost along a leg as a function of its mass flow. `evaluate` leaves its two results in the
 * object, so that the innermost loop of the program allocates nothing.
 */
export interface LegLaw {
  /** Computes `loss` and `slope` at a mass flow [kg/s] of either sign. */
  evaluate(flow: KilogramsPerSecond): void;
  /** Total pressure at the start of the leg less that at its end [Pa]; negative where fans push. */
  readonly loss: Pascals;
  /** Derivative of the loss with respect to the mass flow [Pa·s/kg], > 0. */
  readonly slope: number;
}
