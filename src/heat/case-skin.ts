import { type Air, G } from '../air/air.ts';
import type { Fraction, Kelvins, Metres, Watts } from '../quantities/dimensions.ts';

/** Stefan-Boltzmann constant [W/(m²·K⁴)]. Source: CODATA 2018. */
const STEFAN_BOLTZMANN = 5.670374e-8;

/** A closed box in still air. */
export interface CaseBox {
  /** Sides of its base [m]. */
  readonly width: Metres;
  readonly depth: Metres;
  readonly height: Metres;
  /** Of its outer face, for heat radiation [-]: paint and anodised sheet 0.85 to 0.9, bare sheet 0.1. */
  readonly emissivity: Fraction;
  /** Whether air gets under it: it stands on feet. */
  readonly onFeet: boolean;
}

/** Heat that a warm skin gives to the room [W], by the way it takes. */
export interface SkinHeat {
  readonly sides: Watts;
  readonly top: Watts;
  readonly underside: Watts;
  readonly radiation: Watts;
}

/** Rayleigh number of a height or length [-]: g·β·ΔT·L³·ρ²·cp/(µ·k), β = 1/T. */
function rayleigh(air: Air, difference: number, length: Metres): number {
  const buoyancy = (G * difference * length ** 3) / air.temperature;
  return (buoyancy * air.density ** 2 * air.specificHeat) / (air.viscosity * air.conductivity);
}

/** Mean Nusselt number of an upright wall [-]. */
function uprightNusselt(ra: number, prandtl: number): number {
  const weight = (1 + (0.492 / prandtl) ** (9 / 16)) ** (8 / 27);
  return (0.825 + (0.387 * ra ** (1 / 6)) / weight) ** 2;
}

/**
 * Heat that the skin of a closed box gives to still air and to the walls of the room [W], if it is equally warm all
 * over: an upper estimate, since a real skin is warm in places.
 *
 * Source: sides by Churchill & Chu (1975), top 0.54·Ra^¼ and underside 0.27·Ra^¼ on area over perimeter by McAdams (both
 * as in the opened library ht, conv_free_immersed.py); radiation by Stefan and Boltzmann.
 *
 * @param box in still air; lengths [m] > 0
 * @param skin temperature of its skin [K], ≥ that of the room
 * @param room temperature of the room and its walls [K]
 * @param film air at the mean of both temperatures
 */
export function skinHeat(box: CaseBox, skin: Kelvins, room: Kelvins, film: Air): SkinHeat {
  const { width, depth, height, emissivity, onFeet } = box;
  const difference = skin - room;
  const flat = width * depth;
  const upright = 2 * (width + depth) * height;
  const length = flat / (2 * (width + depth));
  const prandtl = (film.viscosity * film.specificHeat) / film.conductivity;
  const sides = (uprightNusselt(rayleigh(film, difference, height), prandtl) * film.conductivity) / height;
  const level = (rayleigh(film, difference, length) ** 0.25 * film.conductivity) / length;
  const radiating = upright + (onFeet ? 2 : 1) * flat;
  return {
    sides: sides * upright * difference,
    top: 0.54 * level * flat * difference,
    underside: onFeet ? 0.27 * level * flat * difference : 0,
    radiation: emissivity * STEFAN_BOLTZMANN * (skin ** 4 - room ** 4) * radiating,
  };
}
