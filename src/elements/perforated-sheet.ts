import { z } from 'zod';
import type { Metres } from '../quantities/dimensions.ts';
import { positive, written } from '../quantities/written.ts';
import { type Arrangement, countHoles, type Field, type HolePattern } from './hole-pattern.ts';
import type { HoleShape } from './hole-shape.ts';

/** Where a perforated sheet stands, which decides what its jets start from and end in. */
export type Facing = 'vent' | 'shroud' | 'duct' | 'wall';

/** A field of equal holes in a sheet [m]. */
export interface PerforatedSheet {
  readonly perforated: Field;
  readonly hole: Metres;
  readonly web: Metres;
  readonly sheet: Metres;
  readonly shape: HoleShape;
  /** Whole length of a slot [m]; only for slots. */
  readonly 'slot-length'?: Metres | undefined;
  readonly pattern: Arrangement;
  readonly facing: Facing;
}

/** Form of a perforated sheet as written. */
export const sheetForm = z
  .strictObject({
    perforated: positive(written.rectangle),
    hole: positive(written.length),
    web: positive(written.length),
    sheet: positive(written.length),
    shape: z.enum(['round', 'square', 'hexagon', 'slot']).default('round'),
    'slot-length': positive(written.length).optional(),
    pattern: z.enum(['staggered', 'square']).default('staggered'),
    facing: z.enum(['vent', 'shroud', 'duct', 'wall']).default('vent'),
  })
  .superRefine((fields, context) => {
    const problem = misfit(fields);
    if (problem) context.addIssue({ code: 'custom', path: [problem.field], message: problem.message });
  });

function misfit(fields: PerforatedSheet): { readonly field: string; readonly message: string } | undefined {
  const length = fields['slot-length'];
  if (fields.shape !== 'slot' && length !== undefined) {
    return { field: 'slot-length', message: `found a slot length for shape ${fields.shape}, expected none` };
  }
  if (fields.shape === 'slot' && length === undefined) {
    return { field: 'slot-length', message: 'found nothing, expected the length of a slot, such as 20 mm' };
  }
  if (length !== undefined && length < fields.hole) {
    return {
      field: 'slot-length',
      message: 'found a slot shorter than it is wide, expected slot-length >= hole',
    };
  }
  if (countHoles(patternOf(fields), fields.perforated) === 0) {
    return {
      field: 'perforated',
      message: 'found a field that no whole hole fits into, expected a larger one',
    };
  }
  return undefined;
}

/**
 * Pattern of the holes of a perforated sheet, for those who draw it.
 *
 * @param sheet as the form gives it [m]
 */
export function patternOf(sheet: PerforatedSheet): HolePattern {
  const hole = { shape: sheet.shape, size: sheet.hole, length: sheet['slot-length'] ?? sheet.hole };
  return { hole, web: sheet.web, arrangement: sheet.pattern };
}

/**
 * Reads the fields of a perforated sheet as written, units and all, into SI.
 *
 * @param fields as a file has them
 * @throws ZodError on misfit
 */
export function readPerforatedSheet(fields: unknown): PerforatedSheet {
  return sheetForm.parse(fields);
}
