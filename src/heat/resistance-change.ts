import type { Fraction } from '../quantities/dimensions.ts';
import { resistanceOf, type SteadyReading } from './panel-test.ts';

/** What is taken as known when two readings are compared. */
export interface ChangeAssumptions {
  /** Share of the later resistance that depends on the flow [-], > 0 to 1; usually 0.6 to 1. */
  readonly share: Fraction;
  /** Exponent of the flow in that share [-]; usually 0.5 to 0.8. */
  readonly exponent: number;
  /** Slope of the fan over the later loss of the path, K_fan/K, for a fan p = p₀ − K_fan·Q² [-], ≥ 0; usually 0 to 1. */
  readonly fanSlope: number;
}

/** What must have changed between two readings, later over earlier or the other way round as named. */
export interface ResistanceChange {
  /** Thermal resistance before over that after [-]. */
  readonly resistance: Fraction;
  /** Flow after over flow before [-]. */
  readonly flow: Fraction;
  /** Loss coefficient of the whole path before over that after [-]. */
  readonly loss: Fraction;
}

/**
 * What a change of an opening did to flow and loss, from a temperature before and one after, fans at the same speed:
 * Q₂/Q₁ = [1 + (R₁/R₂ − 1)/s]^(1/m), K₁/K₂ = (1 + κ)·(Q₂/Q₁)² − κ.
 *
 * Source: derived; a common error of the room's temperature hardly changes the ratios.
 *
 * @param before reading before the change
 * @param after reading after it, above its room
 * @param assumed share, exponent and slope of the fan
 * @returns undefined if the readings allow of no such change: the loss would be negative, or the flow none
 */
export function resistanceChange(
  before: SteadyReading,
  after: SteadyReading,
  assumed: ChangeAssumptions,
): ResistanceChange | undefined {
  const { share, exponent, fanSlope } = assumed;
  const resistance = resistanceOf(before) / resistanceOf(after);
  const base = 1 + (resistance - 1) / share;
  if (!(base > 0 && Number.isFinite(base))) return undefined;
  const flow = base ** (1 / exponent);
  const loss = (1 + fanSlope) * flow ** 2 - fanSlope;
  return loss > 0 ? { resistance, flow, loss } : undefined;
}
