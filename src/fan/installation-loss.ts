import type { Fraction, Metres, SquareMetres } from '../quantities/dimensions.ts';
import type { FanAssumptions, PlenumReach } from './fan-assumptions.ts';

/** Equal fans side by side as they sit in a panel. */
export interface FanRow {
  /** Side of one square frame [m], > 0. */
  readonly size: Metres;
  /** Number of frames [-], ≥ 1. */
  readonly count: number;
}

/**
 * Diameter of the circle that the blades pass [m].
 *
 * Source: model assumption, no source, for its share of the frame.
 *
 * @param size side of the frame [m], > 0
 * @param assumptions `bladeCircle`
 */
function bladeCircle(size: Metres, assumptions: FanAssumptions): Metres {
  return assumptions.bladeCircle * size;
}

/**
 * Area of the blade circle [m²].
 *
 * Source: plane geometry.
 *
 * @param size side of the frame [m], > 0
 * @param assumptions `bladeCircle`
 */
export function discArea(size: Metres, assumptions: FanAssumptions): SquareMetres {
  return (Math.PI / 4) * bladeCircle(size, assumptions) ** 2;
}

/**
 * Area of the ring between hub and blade circle [m²], all the air has of the frame.
 *
 * Source: plane geometry.
 *
 * @param size side of the frame [m], > 0
 * @param assumptions `bladeCircle`, `hub`
 */
export function ringArea(size: Metres, assumptions: FanAssumptions): SquareMetres {
  return discArea(size, assumptions) * (1 - assumptions.hub ** 2);
}

/**
 * Loss of a disc through which air turns from or into the gap before a parallel wall, in heads of the velocity
 * through the disc [-]: (D/4h)², one head of the velocity through the curtain πDh between their rims.
 *
 * Source: model assumption, no source, for the one head; the areas are derived.
 *
 * @param distance from the disc to the wall h [m], > 0
 * @param diameter of the disc D [m], > 0
 */
export function curtainLoss(distance: Metres, diameter: Metres): number {
  return (diameter / (4 * distance)) ** 2;
}

/** Distances to parallel walls [m], > 0; absent where there is none. */
export interface Walls {
  readonly inlet?: Metres | undefined;
  readonly outlet?: Metres | undefined;
}

/**
 * Inertial coefficient [1/m⁴] of walls close to fans side by side: the loss is that times density times flow
 * squared. A wall at half a diameter or more does not count.
 *
 * Source: as {@link curtainLoss}; no loss from half a diameter on by an ASHRAE study of 2005 (abstract).
 *
 * @param row the fans
 * @param walls their distances [m], > 0
 * @param assumptions `wall`, `bladeCircle`
 */
export function wallCoefficient(row: FanRow, walls: Walls, assumptions: FanAssumptions): number {
  const { reach, inlet, outlet } = assumptions.wall;
  const diameter = bladeCircle(row.size, assumptions);
  const area = row.count * discArea(row.size, assumptions);
  const heads = (distance: Metres | undefined, share: Fraction): number =>
    distance === undefined || distance >= reach * diameter
      ? 0
      : Math.max(0, share) * curtainLoss(distance, diameter);
  return (heads(walls.inlet, inlet) + heads(walls.outlet, outlet)) / (2 * area * area);
}

/**
 * Share of a face close to fans that their air uses [-], 0 < share ≤ 1, never falling with the distance.
 *
 * In touch it is the ring that the blades sweep. Of a face that reaches beyond the frames, the part beyond is
 * reached through the gap round them, as two equal losses in series. Up to `ringUpTo` diameters that is all; from
 * `fullFrom` on the whole face is used, and in between the used area grows evenly.
 * Source: model assumption, no source.
 *
 * @param row the fans
 * @param gap clear distance from the frames to the face [m], ≥ 0
 * @param face gross area [m²], > 0
 * @param reach distances in diameters of the blade circle
 * @param assumptions `bladeCircle`, `hub`
 */
export function usedShare(
  row: FanRow,
  gap: Metres,
  face: SquareMetres,
  reach: PlenumReach,
  assumptions: FanAssumptions,
): Fraction {
  const diameter = bladeCircle(row.size, assumptions);
  const full = reach.fullFrom * diameter;
  if (gap >= full) return 1;
  const near = Math.min(full, reach.ringUpTo * diameter);
  const close = areaInReach(row, Math.min(gap, near), face, assumptions);
  return gap <= near ? close / face : (close + ((gap - near) / (full - near)) * (face - close)) / face;
}

function areaInReach(
  { size, count }: FanRow,
  gap: Metres,
  face: SquareMetres,
  assumptions: FanAssumptions,
): SquareMetres {
  const ring = Math.min(face, count * ringArea(size, assumptions));
  const beyond = face - count * size * size;
  if (beyond <= 0 || gap <= 0) return ring;
  // The rim of the frames if they stand as compactly as they can.
  const curtain = 4 * size * Math.sqrt(count) * gap;
  return ring + (beyond * curtain) / Math.hypot(beyond, curtain);
}
