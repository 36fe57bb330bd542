import type { Fraction, Metres } from '../quantities/dimensions.ts';
import { type Hole, holeFigures } from './hole-shape.ts';

/** `staggered`: every other row moved by half a pitch; rows of round holes and hexagons nest at 60°. */
export type Arrangement = 'staggered' | 'square';

/** Equal holes repeated without end. */
export interface HolePattern {
  readonly hole: Hole;
  /** Least metal between neighbouring holes [m]. */
  readonly web: Metres;
  readonly arrangement: Arrangement;
}

/** Sides of the field to be filled [m]. Rows run along the width. */
export interface Field {
  readonly width: Metres;
  readonly height: Metres;
}

/** Distances at which a pattern repeats. */
export interface Pitches {
  /** From hole to hole in a row [m]. */
  readonly hole: Metres;
  /** From row to row [m]. */
  readonly row: Metres;
  /** By which every other row is moved along [m]. */
  readonly shift: Metres;
}

interface Layout extends Pitches {
  readonly rows: number;
  /** Holes in the first, third, fifth row. */
  readonly inOdd: number;
  /** Holes in the second, fourth, sixth row. */
  readonly inEven: number;
}

/** Slack for a pattern that fits its field exactly but for rounding, in pitches [-]. */
const ROUNDING = 1e-9;

/**
 * Distances at which a pattern repeats, from hole size and web.
 *
 * Source: plane geometry.
 *
 * @param pattern holes, web and arrangement
 */
export function pitches(pattern: HolePattern): Pitches {
  const { hole, web, arrangement } = pattern;
  const { width, height } = holeFigures(hole);
  const pitch = width + web;
  const staggered = arrangement === 'staggered';
  const nests = staggered && (hole.shape === 'round' || hole.shape === 'hexagon');
  return {
    hole: pitch,
    row: nests ? (Math.sqrt(3) / 2) * pitch : height + web,
    shift: staggered ? pitch / 2 : 0,
  };
}

/**
 * Open share of a pattern without edges: area of a hole over the area of its cell [-].
 *
 * Source: plane geometry.
 *
 * @param pattern holes, web and arrangement
 */
export function endlessOpenShare(pattern: HolePattern): Fraction {
  const { hole, row } = pitches(pattern);
  return holeFigures(pattern.hole).area / (hole * row);
}

/**
 * Number of holes that fit whole into a field. A pattern without edges promises more than a small field
 * can hold.
 *
 * Source: plane geometry.
 *
 * @param pattern holes, web and arrangement
 * @param field sides [m]
 * @returns the number [-], 0 if no hole fits
 */
export function countHoles(pattern: HolePattern, field: Field): number {
  const { rows, inOdd, inEven } = layOut(pattern, field);
  return Math.ceil(rows / 2) * inOdd + Math.floor(rows / 2) * inEven;
}

/**
 * Centres of the holes that fit whole into a field, the pattern in its middle.
 *
 * Source: plane geometry.
 *
 * @param pattern holes, web and arrangement
 * @param field sides [m]; the origin is its lower left corner
 * @returns places [m], row by row; as many as `countHoles` says
 */
export function holeCentres(pattern: HolePattern, field: Field): readonly (readonly [Metres, Metres])[] {
  const layout = layOut(pattern, field);
  const evenEnd = layout.rows > 1 && layout.inEven > 0 ? layout.shift + (layout.inEven - 1) * layout.hole : 0;
  const left = (field.width - Math.max((layout.inOdd - 1) * layout.hole, evenEnd)) / 2;
  const bottom = (field.height - (layout.rows - 1) * layout.row) / 2;
  const centres: (readonly [Metres, Metres])[] = [];
  for (let row = 0; row < layout.rows; row++) {
    const even = row % 2 === 1;
    const start = even ? left + layout.shift : left;
    for (let index = 0; index < (even ? layout.inEven : layout.inOdd); index++) {
      centres.push([start + index * layout.hole, bottom + row * layout.row]);
    }
  }
  return centres;
}

function layOut(pattern: HolePattern, field: Field): Layout {
  const repeat = pitches(pattern);
  const { width, height } = holeFigures(pattern.hole);
  return {
    ...repeat,
    rows: fitting(field.height - height, repeat.row),
    inOdd: fitting(field.width - width, repeat.hole),
    inEven: fitting(field.width - width - repeat.shift, repeat.hole),
  };
}

/** Number of things a pitch apart whose outermost centres may lie `span` apart. */
function fitting(span: Metres, pitch: Metres): number {
  return Math.max(0, Math.floor(span / pitch + ROUNDING) + 1);
}
