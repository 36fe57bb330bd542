import type { Fraction, SquareMetres } from '../quantities/dimensions.ts';
import { type Element, elementKind } from './element.ts';
import { countHoles, endlessOpenShare } from './hole-pattern.ts';
import { holeFigures } from './hole-shape.ts';
import { type Facing, type PerforatedSheet, patternOf, sheetForm } from './perforated-sheet.ts';
import { orificeCoefficients } from './thick-orifice.ts';

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

/**
 * Holes of a sheet with any free area at all in a face, as if they could be counted in fractions.
 *
 * Source: as `orificeCoefficients`; which spaces count as large for which facing is a model assumption.
 *
 * @param sheet holes, thickness and facing; its field and web do not count
 * @param area of all holes together [m²], > 0, less than the face
 * @param face gross [m²]
 */
export function sheetOpening(sheet: PerforatedSheet, area: SquareMetres, face: SquareMetres): Element {
  const { hydraulicDiameter, laminarFriction } = holeFigures(patternOf(sheet).hole);
  const openShare = area / face;
  const narrow = narrowSides[sheet.facing];
  const coefficients = orificeCoefficients({
    area,
    hydraulicDiameter,
    thickness: sheet.sheet,
    laminarFriction,
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
    remarks: [],
  };
}

/**
 * A perforated sheet with as many whole holes as its field holds.
 *
 * Source: as `sheetOpening`; the number of holes by plane geometry.
 *
 * @param sheet as the form gives it [m]; at least one hole fits
 */
export function perforatedElement(sheet: PerforatedSheet): Element {
  const pattern = patternOf(sheet);
  const { width, height } = sheet.perforated;
  const face = width * height;
  const count = countHoles(pattern, sheet.perforated);
  const area = count * holeFigures(pattern.hole).area;
  return {
    ...sheetOpening(sheet, area, face),
    sheet,
    remarks: remarksOn(sheet, count, area / face, endlessOpenShare(pattern)),
  };
}

/** Sheet with a field of equal holes: `{ perforated: 95 x 95 mm, hole: 4 mm, web: 1.5 mm, sheet: 1.5 mm }`. */
export const perforated = elementKind({
  key: 'perforated',
  summary: 'sheet with a field of holes: hole, web, sheet, shape, slot-length, pattern, facing',
  source:
    'Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagrams 4-11 and 4-12 (from memory); creeping part by ' +
    'Sampson (1891) and Poiseuille; which spaces count as large for which facing is a model assumption',
  form: sheetForm,
  build: perforatedElement,
});
