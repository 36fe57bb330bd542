import type { KilogramsPerCubicMetre, PascalSeconds } from '../quantities/dimensions.ts';

/** Density at which given losses hold [kg/m³]: common practice for fans and filters (air at 20 °C, sea level). */
export const REFERENCE_DENSITY: KilogramsPerCubicMetre = 1.2;
/** Dynamic viscosity at which given losses hold [Pa·s]: air at 20 °C, Sutherland's formula, rounded. */
export const REFERENCE_VISCOSITY: PascalSeconds = 1.81e-5;
