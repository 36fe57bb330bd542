import { countHoles } from '../../elements/hole-pattern.ts';
import { perforatedElement } from '../../elements/perforated.ts';
import { type PerforatedSheet, patternOf } from '../../elements/perforated-sheet.ts';
import type { Change, Situation } from './lever.ts';
import { withElement } from './with-occupant.ts';

/** A perforated sheet of a build. */
export interface SheetThere {
  readonly place: number;
  readonly id: string;
  readonly sheet: PerforatedSheet;
}

/**
 * All perforated sheets that air passes in a build.
 *
 * @param situation the build
 */
export function sheetsIn({ enclosure, build }: Situation): readonly SheetThere[] {
  const passed = enclosure.legs.flatMap(({ through }) => through);
  return enclosure.places.flatMap((place, index) => {
    if (place.kind !== 'element' || !passed.includes(index)) return [];
    const sheet = place.options[build[index] ?? 0]?.element.sheet;
    return sheet ? [{ place: index, id: place.id, sheet }] : [];
  });
}

/**
 * The change of one sheet for another in the same place.
 *
 * @param situation the build
 * @param there the sheet as it stands
 * @param sheet the new one
 * @param what is done, in words
 * @param notes what it costs
 * @returns nothing if no hole fits
 */
export function sheetChange(
  { enclosure, build }: Situation,
  there: SheetThere,
  sheet: PerforatedSheet,
  what: string,
  notes: readonly string[],
): readonly Change[] {
  if (countHoles(patternOf(sheet), sheet.perforated) === 0) return [];
  const changed = withElement(enclosure, build, there.place, perforatedElement(sheet));
  return [{ at: there.id, what, notes, ...changed }];
}
