import { fingerDistance } from '../../elements/finger-distance.ts';
import type { PerforatedSheet } from '../../elements/perforated-sheet.ts';
import { patternOf } from '../../elements/perforated-sheet.ts';
import type { Metres } from '../../quantities/dimensions.ts';
import { bladeDistance } from '../blade-distance.ts';
import { millimetres } from '../millimetres.ts';
import type { Change, Lever, Situation } from './lever.ts';
import { type SheetThere, sheetChange, sheetsIn } from './sheets-in.ts';

/** Growth of the holes in one step [-] (assumption). */
const GROWTH = 1.5;
/** Holes are made in steps of this [m] (common practice, no source). */
const STEP: Metres = 0.0005;

function rounded(size: Metres): Metres {
  return Math.round(size / STEP) * STEP;
}

function grown(sheet: PerforatedSheet, strength: number): PerforatedSheet {
  const length = sheet['slot-length'];
  const hole = rounded(sheet.hole * GROWTH ** strength);
  return { ...sheet, hole, ...(length === undefined ? {} : { 'slot-length': Math.max(length, hole) }) };
}

/** What a finger reaches through such holes, in words; undefined if it would reach the blades. */
function reachNote(situation: Situation, place: number, sheet: PerforatedSheet): string | undefined {
  const asked = fingerDistance(patternOf(sheet).hole);
  if (asked === undefined) return undefined;
  const there = bladeDistance(situation.enclosure, situation.build, place);
  const rule = `fingers of 14 years and over must be kept ${millimetres(asked)} from blades (ISO 13857, from memory)`;
  if (there === undefined) return `${rule}; the drawing does not tell what is within reach.`;
  return there >= asked ? `${rule}; ${millimetres(there)} are there.` : undefined;
}

function changeOf(situation: Situation, there: SheetThere, strength: number): readonly Change[] {
  const sheet = grown(there.sheet, strength);
  const note = reachNote(situation, there.place, sheet);
  if (note === undefined || sheet.hole <= there.sheet.hole) return [];
  const what = `holes of ${millimetres(sheet.hole)} for ${millimetres(there.sheet.hole)}`;
  return sheetChange(situation, there, sheet, what, [note]);
}

/** Larger holes in the same field, as far as fingers stay clear of the blades. */
export const largerHoles: Lever = {
  name: 'larger holes',
  eases: 'by flow',
  isFan: false,
  effort: 'cut',
  changes: (situation, strength) =>
    sheetsIn(situation).flatMap((there) => changeOf(situation, there, strength)),
};
