import type { Element } from '../../elements/element.ts';
import { endlessOpenShare } from '../../elements/hole-pattern.ts';
import { sheetOpening } from '../../elements/perforated.ts';
import { type PerforatedSheet, patternOf } from '../../elements/perforated-sheet.ts';
import type { Fraction, SquareMetres } from '../../quantities/dimensions.ts';

/** Equal holes, more or fewer of them: wider or narrower webs up to the narrowest, then a larger field. */
export interface HoleFamily {
  /** The sheet with its narrowest webs. */
  readonly sheet: PerforatedSheet;
  /** Open share of the field that its webs allow without edges [-]. */
  readonly mostOpen: Fraction;
  /** Free area at which the field has to grow [m²]. */
  readonly fieldFull: SquareMetres;
}

/**
 * The family of a sheet's holes.
 *
 * @param sheet holes, thickness, facing and field, its web the narrowest
 */
export function holeFamily(sheet: PerforatedSheet): HoleFamily {
  const mostOpen = endlessOpenShare(patternOf(sheet));
  const { width, height } = sheet.perforated;
  return { sheet, mostOpen, fieldFull: mostOpen * width * height };
}

/**
 * A member of a family by its free area, as if holes could be counted in fractions.
 *
 * @param family of holes
 * @param area free [m²], > 0
 */
export function familyOpening({ sheet, mostOpen }: HoleFamily, area: SquareMetres): Element {
  const { width, height } = sheet.perforated;
  return sheetOpening(sheet, area, Math.max(width * height, area / mostOpen));
}
