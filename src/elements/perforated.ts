import { z } from 'zod';
import type { Fraction, Metres } from '../quantities/dimensions.ts';
import { positive, written } from '../quantities/written.ts';
import { type Element, elementKind } from './element.ts';
import {
  type Arrangement,
  countHoles,
  endlessOpenShare,
  type Field,
  type HolePattern,
} from './hole-pattern.ts';
import { type HoleShape, holeFigures } from './hole-shape.ts';
import { orificeCoefficients } from './thick-orifice.ts';

/** Where a perforated sheet stands, which decides what its jets start from and end in. */
type Facing = 'vent' | 'shroud' | 'duct' | 'wall';

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

/** Which side of the sheet is as narrow as the field: there the open share counts, elsewhere the space is large. */
const narrowSides: Record<Facing, { readonly upstream: boolean; readonly downstream: boolean }> = {
  vent: { upstream: true, downstream: false },
  shroud: { upstream: false, downstream: true },
  duct: { upstream: true, downstream: true },
  wall: { upstream: false, downstream: false },
};

/** The pattern without edges may promise this much more than the field holds before it is worth a remark [-]. */
const EDGE_REMARK = 0.02;
/** Holes and webs below this share of the sheet's thickness are hard to make [-] (rule of laser and punch shops). */
const LEAST_CUT = 0.7;

const form = z
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
  return form.parse(fields);
}

function remarksOn(sheet: PerforatedSheet, count: number, openShare: Fraction, endless: Fraction): string[] {
  const remarks: string[] = [];
  if (endless / openShare > 1 + EDGE_REMARK) {
    const real = (100 * openShare).toFixed(1);
    const promised = (100 * endless).toFixed(1);
    remarks.push(
      `${count} whole holes fit and open ${real} % of the field; a pattern without edges would open ${promised} %`,
    );
  }
  if (Math.min(sheet.hole, sheet.web) < LEAST_CUT * sheet.sheet) {
    remarks.push('hole or web is below 0.7 of the sheet thickness, which is hard to cut or punch');
  }
  return remarks;
}

function build(sheet: PerforatedSheet): Element {
  const pattern = patternOf(sheet);
  const field = sheet.perforated;
  const face = field.width * field.height;
  const figures = holeFigures(pattern.hole);
  const count = countHoles(pattern, field);
  const area = count * figures.area;
  const openShare = area / face;
  const narrow = narrowSides[sheet.facing];
  const coefficients = orificeCoefficients({
    area,
    hydraulicDiameter: figures.hydraulicDiameter,
    thickness: sheet.sheet,
    laminarFriction: figures.laminarFriction,
    upstreamShare: narrow.upstream ? openShare : 0,
    downstreamShare: narrow.downstream ? openShare : 0,
  });
  return {
    ...coefficients,
    faint: 0,
    ventFace: face,
    face,
    freeArea: area,
    disturbance: 'panel',
    lossUncertainty: 0.25,
    remarks: remarksOn(sheet, count, openShare, endlessOpenShare(pattern)),
  };
}

/** Sheet with a field of equal holes: `{ perforated: 95 x 95 mm, hole: 4 mm, web: 1.5 mm, sheet: 1.5 mm }`. */
export const perforated = elementKind({
  key: 'perforated',
  summary: 'sheet with a field of holes: hole, web, sheet, shape, slot-length, pattern, facing',
  source:
    'Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagrams 4-11 and 4-12 (from memory); creeping part by ' +
    'Sampson (1891) and Poiseuille; which spaces count as large for which facing is a model assumption',
  form,
  build,
});
