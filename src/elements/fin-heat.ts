import type { Air } from '../air/air.ts';
import type { CubicMetresPerSecond, KelvinsPerWatt, Metres, SquareMetres } from '../quantities/dimensions.ts';
import { channelArea, type FinChannels } from './fin-channels.ts';
import type { FinEfficiency } from './fin-efficiency.ts';

/** Heat side of a fin stack. */
export interface FinHeat {
  readonly channels: FinChannels;
  readonly efficiency: FinEfficiency;
  /** Wetted area of the base between the fins [m²]; 0 for fins on pipes. */
  readonly baseArea: SquareMetres;
  /** True of a flat base without fins: the base is the only warm wall of its channel. */
  readonly flat?: boolean;
}

/** Flow in a channel is laminar up to the first and turbulent from the second Reynolds number. */
const TRANSITION = { from: 2300, to: 4000 } as const;

/**
 * Mean Nusselt number of a laminar flow that develops between two plates of one temperature, on twice the gap [-].
 *
 * 7.55 + 0.024·x^-1.14/(1 + 0.0358·Pr^0.17·x^-0.64), x = (L/2b)/(Re·Pr); for the logarithmic mean of the temperature
 * difference, so that the air's own warming is still to be counted.
 *
 * Source: Stephan (1959); Shah & Bhatti, Handbook of Single-Phase Convective Heat Transfer (1987) (from memory).
 *
 * @param distance x [-], > 0
 * @param prandtl [-], 0.1 to 1000
 */
export function laminarNusselt(distance: number, prandtl: number): number {
  // One logarithm serves both powers; a search evaluates this very often.
  const logarithm = Math.log(distance);
  const entry = 0.024 * Math.exp(-1.14 * logarithm);
  return 7.55 + entry / (1 + 0.0358 * Math.exp(0.17 * Math.log(prandtl) - 0.64 * logarithm));
}

/**
 * The same where one of the two plates gives off no heat [-]: (4.861³ + (1.841·x^-⅓)³ + ((2/(1 + 22·Pr))^⅙·x^-½)³)^⅓.
 *
 * Source: VDI Heat Atlas, section Gb (published: opened library Modelica.Fluid.Dissipation, kc_evenGapLaminar).
 *
 * @param distance x [-], > 0
 * @param prandtl [-], 0.1 to 10
 */
export function oneSidedNusselt(distance: number, prandtl: number): number {
  const entry = (2 / (1 + 22 * prandtl)) ** 0.5 * distance ** -1.5;
  return Math.cbrt(4.861 ** 3 + 1.841 ** 3 / distance + entry);
}

/**
 * Nusselt number of a developed turbulent flow, on the hydraulic diameter [-]:
 * (f/8)·(Re - 1000)·Pr/(1 + 12.7·√(f/8)·(Pr^⅔ - 1)), f = (0.79·ln Re - 1.64)^-2.
 *
 * Source: Gnielinski (1976) with Petukhov's friction, as in the library ht (from memory); Re 3000 to 5e6.
 *
 * @param reynolds [-]
 * @param prandtl [-], 0.5 to 2000
 */
export function turbulentNusselt(reynolds: number, prandtl: number): number {
  const eighth = (0.79 * Math.log(reynolds) - 1.64) ** -2 / 8;
  return (eighth * (reynolds - 1000) * prandtl) / (1 + 12.7 * Math.sqrt(eighth) * (prandtl ** (2 / 3) - 1));
}

/**
 * Mean Nusselt number between two plates at any Reynolds number, both on twice the gap [-].
 *
 * Laminar to Re 2300, turbulent with an entrance factor 1 + (Dh/L)^⅔ from Re 4000, linear in Re between them. Where a
 * channel is so short that the turbulent formula lies below the laminar value at Re 2300, that value holds, so that
 * more flow never cools less (model assumption).
 *
 * Source: as `laminarNusselt` and `turbulentNusselt`; transition by the VDI Heat Atlas (from memory).
 *
 * @param reynolds [-], > 0
 * @param prandtl [-]
 * @param relativeDepth length over twice the gap [-], > 0
 * @param laminarLaw of the laminar flow: both plates warm, unless given
 */
export function finNusselt(
  reynolds: number,
  prandtl: number,
  relativeDepth: number,
  laminarLaw: typeof laminarNusselt = laminarNusselt,
): number {
  const laminar = laminarLaw(relativeDepth / (Math.min(reynolds, TRANSITION.from) * prandtl), prandtl);
  if (reynolds <= TRANSITION.from) return laminar;
  const entrance = 1 + relativeDepth ** (-2 / 3);
  const beyond = Math.max(TRANSITION.to, reynolds);
  const turbulent = Math.max(laminar, entrance * turbulentNusselt(beyond, prandtl));
  if (reynolds >= TRANSITION.to) return turbulent;
  const weight = (reynolds - TRANSITION.from) / (TRANSITION.to - TRANSITION.from);
  return (1 - weight) * laminar + weight * turbulent;
}

/** Intermediate figures of a fin stack at one flow, for explanations. */
export interface FinState {
  /** Velocity between the fins [m/s]. */
  readonly velocity: number;
  /** On twice the gap [-]. */
  readonly reynolds: number;
  /** [W/(m²·K)] */
  readonly heatTransfer: number;
  /** [-] */
  readonly efficiency: number;
  /** Number of transfer units [-]. */
  readonly transferUnits: number;
  /** From the base to the entering air [K/W]. */
  readonly resistance: KelvinsPerWatt;
}

/**
 * How well a fin stack gives off heat at one flow. R = 1/(ε·C), ε = 1 - exp(-NTU), NTU = h·(A_base + η·A_fin)/C,
 * C = ρ·Q·cp: never below 1/C, because air cannot leave warmer than the base.
 *
 * Source: Incropera & DeWitt, effectiveness of a stream along a wall of one temperature (from memory).
 *
 * @param fins heat side
 * @param flow volume flow at the inlet [m³/s], sign ignored; at 0 the resistance is infinite
 * @param inlet air entering
 */
export function finState(fins: FinHeat, flow: CubicMetresPerSecond, inlet: Air): FinState {
  const { count, gap, height, depth } = fins.channels;
  const diameter: Metres = 2 * gap;
  const velocity = Math.abs(flow) / channelArea(fins.channels);
  const reynolds = (inlet.density * velocity * diameter) / inlet.viscosity;
  const prandtl = (inlet.viscosity * inlet.specificHeat) / inlet.conductivity;
  const laminarLaw = fins.flat ? oneSidedNusselt : laminarNusselt;
  const nusselt = finNusselt(reynolds, prandtl, depth / diameter, laminarLaw);
  const heatTransfer = (nusselt * inlet.conductivity) / diameter;
  const efficiency = fins.efficiency(heatTransfer);
  const finArea: SquareMetres = fins.flat ? 0 : 2 * count * height * depth;
  const capacity = inlet.density * Math.abs(flow) * inlet.specificHeat;
  const transferUnits = (heatTransfer * (fins.baseArea + efficiency * finArea)) / capacity;
  const resistance = 1 / (-Math.expm1(-transferUnits) * capacity);
  return { velocity, reynolds, heatTransfer, efficiency, transferUnits, resistance };
}
