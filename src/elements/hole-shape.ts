import type { Metres, SquareMetres } from '../quantities/dimensions.ts';
import { rectangularFriction } from './laminar-friction.ts';

/** Shape of a hole in a sheet. */
export type HoleShape = 'round' | 'square' | 'hexagon' | 'slot';

/** One hole, its rows running along the width. */
export interface Hole {
  readonly shape: HoleShape;
  /** Diameter, side, distance across flats or width of the slot [m]. */
  readonly size: Metres;
  /** Whole length of a slot with round ends [m]; other shapes ignore it. */
  readonly length: Metres;
}

/** What the flow and the drawing need of one hole. */
export interface HoleFigures {
  readonly area: SquareMetres;
  /** Four times the area over the perimeter [m]. */
  readonly hydraulicDiameter: Metres;
  /** Darcy friction factor times Reynolds number of a long laminar passage of this shape [-]. */
  readonly laminarFriction: number;
  /** Extent along the rows [m]. */
  readonly width: Metres;
  /** Extent across the rows [m]. */
  readonly height: Metres;
}

/** f·Re of a hexagonal duct. Source: Shah & London (1978), Fanning 15.054, from memory. */
const HEXAGON_FRICTION = 4 * 15.054;

const figures: Record<HoleShape, (hole: Hole) => HoleFigures> = {
  round: ({ size }) => ({
    area: (Math.PI / 4) * size * size,
    hydraulicDiameter: size,
    laminarFriction: 64,
    width: size,
    height: size,
  }),
  square: ({ size }) => ({
    area: size * size,
    hydraulicDiameter: size,
    laminarFriction: rectangularFriction(1),
    width: size,
    height: size,
  }),
  // Two flats stand across the row, so that neighbours in a row face each other with them.
  hexagon: ({ size }) => ({
    area: (Math.sqrt(3) / 2) * size * size,
    hydraulicDiameter: size,
    laminarFriction: HEXAGON_FRICTION,
    width: size,
    height: (2 / Math.sqrt(3)) * size,
  }),
  slot: ({ size, length }) => {
    const area = size * (length - size) + (Math.PI / 4) * size * size;
    const perimeter = 2 * (length - size) + Math.PI * size;
    return {
      area,
      hydraulicDiameter: (4 * area) / perimeter,
      laminarFriction: rectangularFriction(size / length),
      width: length,
      height: size,
    };
  },
};

/**
 * Area, hydraulic diameter and extent of a hole. A slot's friction is that of the rectangle of its sides.
 *
 * Source: plane geometry; friction from Shah & London (1978), from memory.
 *
 * @param hole shape and sizes [m], > 0; a slot is at least as long as it is wide
 */
export function holeFigures(hole: Hole): HoleFigures {
  return figures[hole.shape](hole);
}
