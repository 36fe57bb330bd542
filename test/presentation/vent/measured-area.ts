import dxfParser from 'dxf-parser';
import { XMLParser } from 'fast-xml-parser';
import svgPath from 'svgpath';
import { z } from 'zod';

/** The package is CommonJS while its types are those of a module. */
const DxfParser = z
  .custom<new () => { parseSync: (text: string) => unknown }>((value) => typeof value === 'function')
  .parse(dxfParser);

/** What another library makes of a drawing [mm], [mm²]. */
export interface Measured {
  readonly width: number;
  readonly height: number;
  readonly outlines: number;
  readonly area: number;
  /** Least and greatest coordinates of all outlines. */
  readonly box: {
    readonly left: number;
    readonly right: number;
    readonly low: number;
    readonly high: number;
  };
}

const numeric = z.coerce.number();
const svgForm = z.object({
  svg: z.object({
    '@_width': z.string().regex(/mm$/),
    '@_height': z.string().regex(/mm$/),
    '@_viewBox': z.string(),
    g: z.object({
      circle: z.array(z.object({ '@_cx': numeric, '@_cy': numeric, '@_r': numeric })).default([]),
      path: z.array(z.object({ '@_d': z.string() })).default([]),
    }),
  }),
});

function boxOf(xs: readonly number[], ys: readonly number[]): Measured['box'] {
  return { left: Math.min(...xs), right: Math.max(...xs), low: Math.min(...ys), high: Math.max(...ys) };
}

/** Points a curve is measured by: of half a circle the area between them is short by a part in 40 000. */
const CURVE_POINTS = 200;

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Points along a closed path, whose arcs the library has turned into cubic curves. */
function pointsOf(d: string): readonly Point[] {
  const points: Point[] = [];
  svgPath(d)
    .abs()
    .unarc()
    .iterate((segment, _, x, y) => {
      const [command, ...numbers] = segment;
      if (command === 'M' || command === 'L') {
        points.push({ x: numbers[0] ?? Number.NaN, y: numbers[1] ?? Number.NaN });
      } else if (command === 'C') {
        const [ax = 0, ay = 0, bx = 0, by = 0, ex = 0, ey = 0] = numbers;
        for (let step = 1; step <= CURVE_POINTS; step++) {
          const t = step / CURVE_POINTS;
          const of = (from: number, a: number, b: number, to: number): number =>
            (1 - t) ** 3 * from + 3 * (1 - t) ** 2 * t * a + 3 * (1 - t) * t * t * b + t ** 3 * to;
          points.push({ x: of(x, ax, bx, ex), y: of(y, ay, by, ey) });
        }
      } else if (command !== 'Z' && command !== 'z') throw new Error(`a path with ${command}`);
    });
  return points;
}

/** Area of a polygon by the surveyor's formula. */
function polygonArea(points: readonly Point[]): number {
  return points.reduce((sum, { x, y }, index) => {
    const next = points[(index + 1) % points.length] ?? { x, y };
    return sum + (x * next.y - next.x * y) / 2;
  }, 0);
}

/** An SVG opened by an XML parser; its paths by a library for them. */
export function measuredSvg(text: string): Measured {
  const options = {
    ignoreAttributes: false,
    isArray: (name: string) => name === 'circle' || name === 'path',
  };
  const { svg } = svgForm.parse(new XMLParser(options).parse(text, true));
  const { circle, path } = svg.g;
  const paths = path.map(({ '@_d': d }) => pointsOf(d));
  const [left = 0, low = 0, width = 0, height = 0] = svg['@_viewBox'].split(' ').map(Number);
  // One user unit is one millimetre.
  if (left !== 0 || low !== 0 || `${width}mm` !== svg['@_width'] || `${height}mm` !== svg['@_height'])
    throw new Error('the view box is not the size in millimetres');
  return {
    width,
    height,
    outlines: circle.length + path.length,
    area:
      circle.reduce((sum, { '@_r': r }) => sum + Math.PI * r * r, 0) +
      paths.reduce((sum, points) => sum + Math.abs(polygonArea(points)), 0),
    box: boxOf(
      [...circle.flatMap(({ '@_cx': x, '@_r': r }) => [x - r, x + r]), ...paths.flat().map(({ x }) => x)],
      [...circle.flatMap(({ '@_cy': y, '@_r': r }) => [y - r, y + r]), ...paths.flat().map(({ y }) => y)],
    ),
  };
}

const corner = z.object({ x: z.number(), y: z.number(), bulge: z.number().optional() });
const entity = z.discriminatedUnion('type', [
  z.object({
    type: z.literal('CIRCLE'),
    center: z.object({ x: z.number(), y: z.number() }),
    radius: z.number(),
  }),
  z.object({ type: z.literal('POLYLINE'), shape: z.literal(true), vertices: z.array(corner) }),
]);
const dxfForm = z.object({
  header: z.object({
    $INSUNITS: z.number(),
    $EXTMAX: z.object({ x: z.number(), y: z.number() }),
  }),
  entities: z.array(entity),
});

/**
 * Area of a closed polyline with bulges: the polygon by the surveyor's formula, and a segment of a circle for each bulge
 * b, the tangent of a quarter of its angle. Derived: angle θ = 4·atan b, radius c·(1 + b²)/(4b), segment r²·(θ - sin θ)/2.
 */
function polylineArea(vertices: readonly z.output<typeof corner>[]): number {
  let area = 0;
  vertices.forEach(({ x, y, bulge = 0 }, index) => {
    const next = vertices[(index + 1) % vertices.length] ?? { x, y };
    area += (x * next.y - next.x * y) / 2;
    if (bulge === 0) return;
    const angle = 4 * Math.atan(bulge);
    const radius = (Math.hypot(next.x - x, next.y - y) * (1 + bulge * bulge)) / (4 * bulge);
    area += (radius * radius * (angle - Math.sin(angle))) / 2;
  });
  return area;
}

/** A DXF opened by a parser for that format. */
export function measuredDxf(text: string): Measured {
  const { header, entities } = dxfForm.parse(new DxfParser().parseSync(text));
  // 4 is millimetres (DXF reference, from memory).
  if (header.$INSUNITS !== 4) throw new Error('the unit is not the millimetre');
  const areas = entities.map((each) =>
    each.type === 'CIRCLE' ? Math.PI * each.radius ** 2 : polylineArea(each.vertices),
  );
  const ends = entities.flatMap((each) => {
    if (each.type === 'POLYLINE') return each.vertices;
    const { center, radius } = each;
    return [-radius, radius].map((reach) => ({ x: center.x + reach, y: center.y + reach }));
  });
  return {
    width: header.$EXTMAX.x,
    height: header.$EXTMAX.y,
    outlines: entities.length,
    area: areas.reduce((sum, area) => sum + area, 0),
    box: boxOf(
      ends.map(({ x }) => x),
      ends.map(({ y }) => y),
    ),
  };
}
