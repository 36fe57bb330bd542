import { type CutDrawing, coordinate, type Outline } from './cut-outlines.ts';

/** Width of the lines [mm]: what cutters take for a line to cut. */
const HAIRLINE = '0.1';

function shapeOf(outline: Outline, height: number): string {
  const up = (y: number): string => coordinate(height - y);
  if (outline.kind === 'circle') {
    const { centre, radius } = outline;
    return `<circle cx="${coordinate(centre.x)}" cy="${up(centre.y)}" r="${coordinate(radius)}"/>`;
  }
  const { corners } = outline;
  const [first] = corners;
  const steps = corners.map((corner, index) => {
    const next = corners[(index + 1) % corners.length] ?? corner;
    const end = `${coordinate(next.x)} ${up(next.y)}`;
    if (!corner.round) return `L${end}`;
    const radius = coordinate(Math.hypot(next.x - corner.x, next.y - corner.y) / 2);
    return `A${radius} ${radius} 0 0 0 ${end}`;
  });
  return `<path d="M${coordinate(first?.x ?? 0)} ${up(first?.y ?? 0)}${steps.join('')}Z"/>`;
}

/**
 * Holes as a drawing to cut: SVG 1.1 with millimetres as user units, as large as the field.
 *
 * @param drawing what is cut
 * @returns text of the file
 */
export function cutSvg({ width, height, outlines }: CutDrawing): string {
  const size = `width="${coordinate(width)}mm" height="${coordinate(height)}mm"`;
  const box = `viewBox="0 0 ${coordinate(width)} ${coordinate(height)}"`;
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" version="1.1" ${size} ${box}>`,
    `<g fill="none" stroke="#000000" stroke-width="${HAIRLINE}">`,
    ...outlines.map((outline) => shapeOf(outline, height)),
    '</g>',
    '</svg>',
    '',
  ].join('\n');
}
