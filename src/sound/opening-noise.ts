import type {
  CubicMetresPerSecond,
  Decibels,
  KilogramsPerCubicMetre,
  MetresPerSecond,
  Pascals,
  SquareMetres,
} from '../quantities/dimensions.ts';
import { energy } from './levels.ts';
import type { SoundAssumptions } from './sound-assumptions.ts';

/** Area over which the power of a source on a wall spreads at 1 m [m²]. */
const HALF_SPHERE = 2 * Math.PI;

/** Smooth step from 0 to 1 without a kink (3t² - 2t³); a hard step if both edges are equal. */
function smoothStep(value: number, edges: { readonly from: number; readonly to: number }): number {
  if (value <= edges.from) return 0;
  if (value >= edges.to) return 1;
  const t = (value - edges.from) / (edges.to - edges.from);
  return t * t * (3 - 2 * t);
}

/**
 * Flow noise of a vent or grille: relative squared pressure, A-weighted, at 1 m over the half space [-].
 *
 * LWA = 3.5 + 10 lg S + 30 lg ζ + 67.6 lg v, less 10 lg 2π; ζ = Δp/(ρv²/2) and v = Q/S both on the gross face.
 * The energy fades to nothing at small velocity and small loss. Fitted on building terminals of 0.01 to 1 m² at
 * 1 to 8 m/s; smaller openings are an extrapolation.
 * Source: Long, Architectural Acoustics, 2nd ed., equations 13.27 to 13.33 after Reynolds (published: phonometry,
 * hvac.py), A-weighted with its octave shape for round devices and fitted; fades: model assumption, no source.
 *
 * @param face gross face area [m²], > 0
 * @param flow volume flow through it, at its own density [m³/s], sign ignored; 0 gives 0
 * @param loss pressure lost in it, laminar part included [Pa], sign ignored
 * @param density density of the air in it [kg/m³], > 0
 * @param assumptions constants in `opening`
 */
export function openingEnergy(
  face: SquareMetres,
  flow: CubicMetresPerSecond,
  loss: Pascals,
  density: KilogramsPerCubicMetre,
  assumptions: SoundAssumptions,
): number {
  const law = assumptions.opening;
  const speed = Math.abs(flow) / face;
  const moving = smoothStep(speed, law.velocityFade);
  if (moving === 0) return 0;
  const zeta = Math.abs(loss) / (0.5 * density * speed * speed);
  const lossy = smoothStep(zeta, law.lossFade);
  if (lossy === 0) return 0;
  const power = face * zeta ** (law.lossFactor / 10) * speed ** (law.velocityFactor / 10);
  return (energy(law.constant) * power * moving * lossy) / HALF_SPHERE;
}

/**
 * Unweighted sound power level of a vent or grille [dB]: 10 + 10 lg S + 30 lg ζ + 60 lg v.
 *
 * Source: Long, Architectural Acoustics, 2nd ed., equation 13.27, constant -31.3 in square feet and feet per second
 * (published: phonometry, hvac.py), rounded in SI.
 *
 * @param face gross face area [m²], > 0
 * @param velocity velocity on that face [m/s], > 0
 * @param zeta loss coefficient on that velocity [-], > 0
 */
export function openingPower(face: SquareMetres, velocity: MetresPerSecond, zeta: number): Decibels {
  return 10 + 10 * Math.log10(face) + 30 * Math.log10(zeta) + 60 * Math.log10(velocity);
}

/**
 * Face velocity at which a vent reaches a level at 1 m [m/s]; below about 1 m/s the fade makes it quieter still.
 *
 * Source: the law of `openingEnergy` solved for the velocity.
 *
 * @param face gross face area [m²], > 0
 * @param zeta loss coefficient on the face velocity [-], > 0
 * @param level A-weighted level at 1 m over the half space [dB]
 * @param assumptions constants in `opening`
 */
export function velocityForLevel(
  face: SquareMetres,
  zeta: number,
  level: Decibels,
  assumptions: SoundAssumptions,
): MetresPerSecond {
  const { constant, lossFactor, velocityFactor } = assumptions.opening;
  const power = level + 10 * Math.log10(HALF_SPHERE);
  return 10 ** ((power - constant - 10 * Math.log10(face) - lossFactor * Math.log10(zeta)) / velocityFactor);
}
