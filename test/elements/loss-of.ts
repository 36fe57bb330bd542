import type { Air } from '../../src/air/air.ts';
import type { Element, ElementKind } from '../../src/elements/element.ts';

/** Density and viscosity at which losses are usually stated: 20 °C at sea level, rounded. */
export const USUAL = { density: 1.2, viscosity: 1.81e-5 };

/** Dry air at 25 °C and 101 325 Pa. Source: US Standard Atmosphere 1976 formulas, computed with the library fluids. */
export const AIR_AT_25: Air = {
  temperature: 298.15,
  density: 101_325 / (287.05287 * 298.15),
  viscosity: (1.458e-6 * 298.15 ** 1.5) / (298.15 + 110.4),
  conductivity: (2.64638e-3 * 298.15 ** 1.5) / (298.15 + 245.4 * 10 ** (-12 / 298.15)),
  specificHeat: 1006,
  pressure: 101_325,
};

interface State {
  readonly density: number;
  readonly viscosity: number;
}

/** Loss of an element [Pa] as the contract states it. */
export function lossOf(element: Element, flow: number, { density, viscosity }: State = USUAL): number {
  const linear = element.viscous * viscosity + element.faint * density;
  const own = element.law?.loss(flow, density, viscosity) ?? 0;
  return linear * flow + element.inertial * density * flow * Math.abs(flow) + own;
}

/** Slope of the loss [Pa·s/m³]. */
export function slopeOf(element: Element, flow: number, { density, viscosity }: State = USUAL): number {
  const linear = element.viscous * viscosity + element.faint * density;
  const own = element.law?.slope(flow, density, viscosity) ?? 0;
  return linear + 2 * element.inertial * density * Math.abs(flow) + own;
}

/** The one flow at which an increasing loss reaches a pressure, by bisection [m³/s]. */
export function flowAt(loss: (flow: number) => number, pressure: number): number {
  let low = 0;
  let high = 1;
  for (let round = 0; round < 100; round++) {
    const middle = (low + high) / 2;
    if (loss(middle) < pressure) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** What a kind says about fields that do not fit: one line each, empty if they fit. */
export function problemsOf(kind: ElementKind, fields: unknown): string[] {
  const outcome = kind.form.safeParse(fields);
  return outcome.success
    ? []
    : outcome.error.issues.map((issue) => `${issue.path.join('.')}: ${issue.message}`);
}

/** Distance from an expected value as a share of it [-]. */
export function off(found: number, expected: number): number {
  return Math.abs(found / expected - 1);
}
