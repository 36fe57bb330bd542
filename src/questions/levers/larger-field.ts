import type { Field } from '../../elements/hole-pattern.ts';
import type { Metres } from '../../quantities/dimensions.ts';
import { millimetres } from '../millimetres.ts';
import type { Lever } from './lever.ts';
import { sheetChange, sheetsIn } from './sheets-in.ts';

/** Growth of the field's area in one step [-] (assumption). */
const GROWTH = 1.5;
/** Sides are rounded to this [m]. */
const STEP: Metres = 0.001;

function grown({ width, height }: Field, strength: number): Field {
  const factor = Math.sqrt(GROWTH ** strength);
  const side = (length: Metres): Metres => Math.round((length * factor) / STEP) * STEP;
  return { width: side(width), height: side(height) };
}

/** The same holes over a larger field. */
export const largerField: Lever = {
  name: 'larger field',
  eases: 'by flow',
  isFan: false,
  effort: 'cut',
  changes: (situation, strength) =>
    sheetsIn(situation).flatMap((there) => {
      const field = grown(there.sheet.perforated, strength);
      const was = there.sheet.perforated;
      const sides = `${millimetres(field.width).replace(' mm', '')} x ${millimetres(field.height)}`;
      const before = `${millimetres(was.width).replace(' mm', '')} x ${millimetres(was.height)}`;
      const notes = ['needs that much free wall, and what stands behind it must let the air through.'];
      return sheetChange(
        situation,
        there,
        { ...there.sheet, perforated: field },
        `field of ${sides} for ${before}`,
        notes,
      );
    }),
};
