import { holeCentres } from '../../elements/hole-pattern.ts';
import type { Hole } from '../../elements/hole-shape.ts';
import { type PerforatedSheet, patternOf } from '../../elements/perforated-sheet.ts';

/** A point of a drawing [mm]; the origin is the lower left corner of the field. */
export interface CutPoint {
  readonly x: number;
  readonly y: number;
}

/** A line that is cut, closed: a circle, or straight edges of which some bulge to half a circle. */
export type Outline =
  | { readonly kind: 'circle'; readonly centre: CutPoint; readonly radius: number }
  | {
      readonly kind: 'path';
      /** Anticlockwise; after a round one follows half a circle to the next, bulging outwards. */
      readonly corners: readonly (CutPoint & { readonly round: boolean })[];
    };

/** What is cut from a sheet [mm]. */
export interface CutDrawing {
  readonly width: number;
  readonly height: number;
  readonly outlines: readonly Outline[];
}

const MILLIMETRES = 1000;

function polygon(corners: readonly (readonly [number, number])[], { x, y }: CutPoint): Outline {
  return {
    kind: 'path',
    corners: corners.map(([across, up]) => ({ x: x + across, y: y + up, round: false })),
  };
}

/** Two flats stand across the row, so that neighbours in a row face each other with them. */
function hexagon(size: number, centre: CutPoint): Outline {
  const radius = size / Math.sqrt(3);
  const corners = Array.from({ length: 6 }, (_, index) => {
    const angle = Math.PI / 2 + (index * Math.PI) / 3;
    return [radius * Math.cos(angle), radius * Math.sin(angle)] as const;
  });
  return polygon(corners, centre);
}

function slot(size: number, length: number, { x, y }: CutPoint): Outline {
  const half = size / 2;
  const reach = (length - size) / 2;
  if (!(reach > 0)) return { kind: 'circle', centre: { x, y }, radius: half };
  return {
    kind: 'path',
    corners: [
      { x: x - reach, y: y - half, round: false },
      { x: x + reach, y: y - half, round: true },
      { x: x + reach, y: y + half, round: false },
      { x: x - reach, y: y + half, round: true },
    ],
  };
}

function outlineOf({ shape, size: metres, length }: Hole, centre: CutPoint): Outline {
  const size = MILLIMETRES * metres;
  const half = size / 2;
  switch (shape) {
    case 'round':
      return { kind: 'circle', centre, radius: half };
    case 'hexagon':
      return hexagon(size, centre);
    case 'slot':
      return slot(size, MILLIMETRES * length, centre);
    default:
      return polygon(
        [
          [-half, -half],
          [half, -half],
          [half, half],
          [-half, half],
        ],
        centre,
      );
  }
}

/**
 * What is cut for a perforated sheet: its holes and nothing else, in millimetres.
 *
 * @param sheet with its holes
 */
export function cutDrawing(sheet: PerforatedSheet): CutDrawing {
  const pattern = patternOf(sheet);
  const { width, height } = sheet.perforated;
  return {
    width: MILLIMETRES * width,
    height: MILLIMETRES * height,
    outlines: holeCentres(pattern, sheet.perforated).map(([x, y]) =>
      outlineOf(pattern.hole, { x: MILLIMETRES * x, y: MILLIMETRES * y }),
    ),
  };
}

/** A coordinate as it is written: to a ten-thousandth of a millimetre [mm]. */
export function coordinate(value: number): string {
  return String(Number(value.toFixed(4)) + 0);
}
