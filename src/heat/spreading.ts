import type { KelvinsPerWatt, Metres, WattsPerMetreKelvin } from '../quantities/dimensions.ts';

/** Sides of a rectangle [m]. */
interface Sides {
  readonly width: Metres;
  readonly height: Metres;
}

/** A solid plate between a small source of heat in its middle and what carries the heat off on its other face. */
export interface BasePlate {
  /** Where the heat enters. */
  readonly footprint: Sides;
  readonly plate: Sides;
  readonly thickness: Metres;
  readonly conductivity: WattsPerMetreKelvin;
}

/** Resistances of a plate at one resistance beyond it. */
export interface Spreading {
  /** From the hottest point of the footprint, beyond what even conduction takes [K/W]. */
  readonly max: KelvinsPerWatt;
  /** From the mean of the footprint, the same way [K/W]. */
  readonly mean: KelvinsPerWatt;
  /** Straight through the plate, if the heat used all of it: t/(k·A) [K/W]. */
  readonly through: KelvinsPerWatt;
}

/**
 * Resistances of a plate [K/W] with the source in the middle of one face: ε = a/b of the round source and plate of
 * the same areas, τ = t/b, Bi = b/(k·A·R₀), λ = π + 1/(√π·ε), φ = (tanh λτ + λ/Bi)/(1 + (λ/Bi)·tanh λτ),
 * R_max = (1 − ε)·φ/(π·k·a), R_mean = ½·(1 − ε)^1.5·φ/(√π·k·a).
 *
 * R_max comes out up to 4 % and R_mean up to 8 % below exact series for plates of equal sides; the error grows where one
 * side is more than twice the other. Several sources on one plate are taken one by one, each in the middle, which
 * leaves out that they warm each other's footprints unevenly (model assumption).
 *
 * Source: Song, Lee & Au, IEPS (1994); Lee, Electronics Cooling 4 (1998) (from memory).
 *
 * @param base the plate; lengths [m] > 0, conductivity [W/(m·K)] > 0; nothing spreads if the footprint is not smaller
 *   than the plate
 * @param beyond R₀, from the other face to the air [K/W], finite, ≥ 0
 */
export function spreading(base: BasePlate, beyond: KelvinsPerWatt): Spreading {
  const { footprint, plate, thickness, conductivity } = base;
  const area = plate.width * plate.height;
  const source = Math.sqrt((footprint.width * footprint.height) / Math.PI);
  const radius = Math.sqrt(area / Math.PI);
  const relative = Math.min(1, source / radius);
  const decay = Math.PI + 1 / (Math.sqrt(Math.PI) * relative);
  const depth = Math.tanh((decay * thickness) / radius);
  const overBiot = (decay * conductivity * area * beyond) / radius;
  const profile = (depth + overBiot) / (1 + overBiot * depth);
  return {
    max: ((1 - relative) * profile) / (Math.PI * conductivity * source),
    mean: (0.5 * (1 - relative) ** 1.5 * profile) / (Math.sqrt(Math.PI) * conductivity * source),
    through: thickness / (conductivity * area),
  };
}
