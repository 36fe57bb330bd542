import type {
  CubicMetresPerSecond,
  KilogramsPerCubicMetre,
  PascalSeconds,
  Pascals,
} from '../quantities/dimensions.ts';
import type { FlowLaw } from './element.ts';
import { REFERENCE_DENSITY, REFERENCE_VISCOSITY } from './reference-air.ts';

/** A loss known at one flow, and how fast it grows. */
export interface PowerLaw {
  /** n in Δp ~ Qⁿ [-], 1 ≤ n < 2. */
  readonly exponent: number;
  /** Loss at `flow` in air of 1.2 kg/m³ and 1.81e-5 Pa·s [Pa], > 0. */
  readonly pressure: Pascals;
  /** [m³/s], > 0. */
  readonly flow: CubicMetresPerSecond;
}

/** Below this share of the stated flow the power law gives way to a linear and quadratic one [-] (assumption). */
const BLEND_SHARE = 0.02;

/**
 * Loss that grows with a power of the flow: Δp = p₀·(ρ/ρ₀)^(n-1)·(µ/µ₀)^(2-n)·(Q/Q₀)ⁿ.
 *
 * The powers of density and viscosity are those that dimensions demand. Below 2 % of the stated flow the loss is
 * (2-n)·x + (n-1)·x² of that at the seam, which meets the power law in value and slope and keeps a finite slope at
 * zero.
 *
 * Source: definition and dimensional analysis; the blend is a model assumption, no source.
 *
 * @param law exponent, pressure and flow
 */
export function powerLawLoss({ exponent, pressure, flow: reference }: PowerLaw): FlowLaw {
  const seam = BLEND_SHARE * reference;
  const seamPressure = pressure * BLEND_SHARE ** exponent;
  const scaleAt = (density: KilogramsPerCubicMetre, viscosity: PascalSeconds) =>
    seamPressure *
    (density / REFERENCE_DENSITY) ** (exponent - 1) *
    (viscosity / REFERENCE_VISCOSITY) ** (2 - exponent);
  return {
    loss: (flow, density, viscosity) => {
      const x = Math.abs(flow) / seam;
      const shape = x < 1 ? x * (2 - exponent + (exponent - 1) * x) : x ** exponent;
      return Math.sign(flow) * scaleAt(density, viscosity) * shape;
    },
    slope: (flow, density, viscosity) => {
      const x = Math.abs(flow) / seam;
      const steepness = x < 1 ? 2 - exponent + 2 * (exponent - 1) * x : exponent * x ** (exponent - 1);
      return (scaleAt(density, viscosity) * steepness) / seam;
    },
  };
}
