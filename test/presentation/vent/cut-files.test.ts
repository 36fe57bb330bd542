import { describe, expect, it } from 'vitest';
import { perforatedElement } from '../../../src/elements/perforated.ts';
import { readPerforatedSheet } from '../../../src/elements/perforated-sheet.ts';
import { cutDxf } from '../../../src/presentation/vent/cut-dxf.ts';
import { cutDrawing } from '../../../src/presentation/vent/cut-outlines.ts';
import { cutSvg } from '../../../src/presentation/vent/cut-svg.ts';
import { measuredDxf, measuredSvg } from './measured-area.ts';

const sheets = (['round', 'square', 'hexagon', 'slot'] as const).flatMap((shape) =>
  (['staggered', 'square'] as const).flatMap((pattern) =>
    ['3 mm', '4.7 mm'].map((hole) => ({
      perforated: '120 x 60 mm',
      hole,
      web: '1.3 mm',
      sheet: '1 mm',
      shape,
      pattern,
      ...(shape === 'slot' ? { 'slot-length': '21.3 mm' } : {}),
    })),
  ),
);

describe('drawings to cut', () => {
  it.each(sheets.map((sheet) => [`${sheet.shape} ${sheet.hole}, ${sheet.pattern}`, sheet] as const))(
    'of %s have the free area of the sheet, in millimetres and inside the field',
    (_, fields) => {
      const sheet = readPerforatedSheet(fields);
      const free = (perforatedElement(sheet).freeArea ?? 0) * 1e6;
      const drawing = cutDrawing(sheet);
      for (const measured of [measuredSvg(cutSvg(drawing)), measuredDxf(cutDxf(drawing))]) {
        // What is asked is 0.1 %. Coordinates have four decimals; the path library makes cubic curves of arcs.
        expect(Math.abs(measured.area / free - 1)).toBeLessThan(5e-4);
        expect([measured.width, measured.height]).toEqual([120, 60]);
        expect(measured.outlines).toBe(drawing.outlines.length);
        expect(Math.min(measured.box.left, measured.box.low)).toBeGreaterThanOrEqual(-1e-3);
        expect(measured.box.right).toBeLessThanOrEqual(120.001);
        expect(measured.box.high).toBeLessThanOrEqual(60.001);
      }
    },
  );

  it('show both the same way up', () => {
    // Derived: SVG counts down, DXF up, so the sum of both heights of a hole is that of the field.
    const sheet = readPerforatedSheet({ perforated: '60 x 21 mm', hole: '6 mm', web: '3 mm', sheet: '1 mm' });
    const drawing = cutDrawing(sheet);
    const up = [...cutDxf(drawing).matchAll(/CIRCLE\n[^C]*? 20\n([\d.]+)\n/g)].map(([, y]) => Number(y));
    const down = [...cutSvg(drawing).matchAll(/cy="([\d.]+)"/g)].map(([, y]) => Number(y));
    expect(up.length).toBeGreaterThan(5);
    expect(down).toHaveLength(up.length);
    up.forEach((y, index) => {
      expect(y + (down[index] ?? 0)).toBeCloseTo(21, 3);
    });
  });

  it('draw a slot no longer than it is wide as the circle it is', () => {
    const sheet = readPerforatedSheet({
      perforated: '60 x 20 mm',
      hole: '6 mm',
      web: '3 mm',
      sheet: '1 mm',
      shape: 'slot',
      'slot-length': '6 mm',
    });
    expect(cutDrawing(sheet).outlines.every(({ kind }) => kind === 'circle')).toBe(true);
  });
});
