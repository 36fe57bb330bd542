import { type CutDrawing, coordinate, type Outline } from './cut-outlines.ts';

/** A group of a DXF file: code and value. */
type Group = readonly [number, string];

const LAYER = 'HOLES';

function entityOf(outline: Outline): readonly Group[] {
  if (outline.kind === 'circle') {
    const { centre, radius } = outline;
    return [
      [0, 'CIRCLE'],
      [8, LAYER],
      [10, coordinate(centre.x)],
      [20, coordinate(centre.y)],
      [30, '0'],
      [40, coordinate(radius)],
    ];
  }
  return [
    [0, 'POLYLINE'],
    [8, LAYER],
    [66, '1'],
    [10, '0'],
    [20, '0'],
    [30, '0'],
    // Closed.
    [70, '1'],
    ...outline.corners.flatMap(({ x, y, round }): readonly Group[] => [
      [0, 'VERTEX'],
      [8, LAYER],
      [10, coordinate(x)],
      [20, coordinate(y)],
      [30, '0'],
      // Tangent of a quarter of the arc: half a circle.
      ...(round ? ([[42, '1']] as const) : []),
    ]),
    [0, 'SEQEND'],
    [8, LAYER],
  ];
}

function headOf({ width, height }: CutDrawing): readonly Group[] {
  return [
    [999, 'millimetres'],
    [0, 'SECTION'],
    [2, 'HEADER'],
    [9, '$ACADVER'],
    [1, 'AC1009'],
    [9, '$INSUNITS'],
    [70, '4'],
    [9, '$EXTMIN'],
    [10, '0'],
    [20, '0'],
    [30, '0'],
    [9, '$EXTMAX'],
    [10, coordinate(width)],
    [20, coordinate(height)],
    [30, '0'],
    [0, 'ENDSEC'],
    [0, 'SECTION'],
    [2, 'TABLES'],
    [0, 'TABLE'],
    [2, 'LAYER'],
    [70, '1'],
    [0, 'LAYER'],
    [2, LAYER],
    [70, '0'],
    [62, '7'],
    [6, 'CONTINUOUS'],
    [0, 'ENDTAB'],
    [0, 'ENDSEC'],
  ];
}

/**
 * Holes as a drawing to cut: DXF of release 12 in millimetres, circles and closed polylines on one layer.
 *
 * Source: DXF reference (from memory).
 *
 * @param drawing what is cut
 * @returns text of the file
 */
export function cutDxf(drawing: CutDrawing): string {
  const groups: readonly Group[] = [
    ...headOf(drawing),
    [0, 'SECTION'],
    [2, 'ENTITIES'],
    ...drawing.outlines.flatMap(entityOf),
    [0, 'ENDSEC'],
    [0, 'EOF'],
  ];
  return groups.map(([code, value]) => `${String(code).padStart(3)}\n${value}\n`).join('');
}
