import type { Metres } from '../quantities/dimensions.ts';

/** Efficiency of a fin [-] at a heat transfer coefficient [W/(m²·K)]. */
export type FinEfficiency = (heatTransfer: number) => number;

/** Metal of a fin. */
export interface FinMetal {
  /** [m] */
  readonly thickness: Metres;
  /** [W/(m·K)] */
  readonly conductivity: number;
}

/** Rectangular plate about a pipe, the cell that belongs to one pipe of a bundle. */
export interface PipeCell {
  /** Outer radius of the pipe [m]. */
  readonly radius: Metres;
  /** Half of the shorter side [m], > radius. */
  readonly halfShort: Metres;
  /** Half of the longer side [m]. */
  readonly halfLong: Metres;
}

/** tanh(x)/x, and 1 at x = 0. */
function profile(x: number): number {
  return x === 0 ? 1 : Math.tanh(x) / x;
}

/** Decay of temperature along a fin wetted on both sides [1/m]. */
function decay(metal: FinMetal, heatTransfer: number): number {
  return Math.sqrt((2 * heatTransfer) / (metal.conductivity * metal.thickness));
}

/**
 * Straight fin with a closed tip: tanh(m·l)/(m·l), m = √(2h/(k·t)).
 *
 * Source: Incropera & DeWitt, Fundamentals of Heat and Mass Transfer (from memory).
 *
 * @param metal thickness [m] and conductivity [W/(m·K)], > 0
 * @param reach from the root to the tip [m], or half the spacing of two roots, > 0
 */
export function straightFin(metal: FinMetal, reach: Metres): FinEfficiency {
  return (heatTransfer) => profile(decay(metal, heatTransfer) * reach);
}

/**
 * Plate fin about a pipe, as a round fin of equivalent radius: tanh(m·r·φ)/(m·r·φ),
 * Re/r = 1.28·ψ·√(β - 0.2), φ = (Re/r - 1)·(1 + 0.35·ln(Re/r)), ψ = halfShort/r, β = halfLong/halfShort.
 *
 * Source: Schmidt, Refrigerating Engineering 57 (1949), from memory; within 1 % of the exact round fin.
 *
 * @param metal thickness [m] and conductivity [W/(m·K)], > 0
 * @param cell of one pipe [m]
 */
export function plateAboutPipe(metal: FinMetal, cell: PipeCell): FinEfficiency {
  const slimness = cell.halfLong / cell.halfShort;
  const ratio = ((1.28 * cell.halfShort) / cell.radius) * Math.sqrt(slimness - 0.2);
  const reach = cell.radius * (ratio - 1) * (1 + 0.35 * Math.log(ratio));
  return (heatTransfer) => profile(decay(metal, heatTransfer) * reach);
}
