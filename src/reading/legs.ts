import { z } from 'zod';
import { type Leg, OUTSIDE } from '../enclosure/enclosure.ts';
import { bounded, written } from '../quantities/written.ts';
import { checkChambers, readChambers } from './chambers.ts';
import { check, type Findings, itemsOf, keysOnly } from './findings.ts';
import { valueAt } from './form-tree.ts';
import { name, names } from './name.ts';
import { distinctNames, refuseUnknown } from './name-findings.ts';
import type { Path } from './problem.ts';

/** Most a leg may rise or fall [m]. */
const MOST_RISE = 10;

/** Form of one entry of `airway.legs`. */
const legForm = z.strictObject({
  leg: name,
  from: name,
  to: name,
  through: names,
  recirculation: bounded(
    written.percent,
    'from 0 % to less than 100 %',
    (share) => share >= 0 && share < 1,
  ).default(0),
  /** How much higher the end lies than the start. */
  rise: bounded(
    written.length,
    'a height from -10 m to 10 m',
    (metres) => Math.abs(metres) <= MOST_RISE,
  ).optional(),
});

type LegFields = z.output<typeof legForm>;

/** Form of `airway`. */
export const airwayForm = z.strictObject({ chambers: names.min(1), legs: z.array(legForm).min(1) });

const airwayKeys = keysOnly(airwayForm);

/** The airway of a scenario. */
export interface AirwaySection {
  /** Index 0 is outside. */
  readonly chambers: readonly string[];
  /** In the order of the file; undefined where one could not be read. */
  readonly legs: readonly (Leg | undefined)[];
}

/**
 * Reads `airway` and checks that every element stands in one leg and every chamber has a way to the room.
 *
 * @param value as written
 * @param placeNames names of all places, in the order of the file
 * @param findings receives what is wrong
 */
export function readAirway(value: unknown, placeNames: readonly string[], findings: Findings): AirwaySection {
  if (value !== undefined) check(airwayKeys, value, ['airway'], findings);
  const path = ['airway', 'legs'];
  const before = findings.length;
  const chambers = readChambers(valueAt(value, ['chambers']), findings);
  const chambersFit = findings.length === before && chambers.length > 1;
  const items = itemsOf(valueAt(value, ['legs']), path, findings);
  distinctNames('leg', 'leg', items, path, findings);
  const legs = items.map((item, index) => readLeg(item, [...path, index], chambers, placeNames, findings));
  checkUse(items, placeNames, findings);
  if (chambersFit && legs.length > 0 && legs.every((leg) => leg !== undefined))
    checkChambers(chambers, legs, findings);
  return { chambers, legs };
}

function readLeg(
  item: unknown,
  path: Path,
  chambers: readonly string[],
  placeNames: readonly string[],
  findings: Findings,
): Leg | undefined {
  const fields = check(legForm, item, path, findings);
  if (!fields) return undefined;
  const from = chambers.indexOf(fields.from);
  const to = chambers.indexOf(fields.to);
  const known = chambers.length > 1 ? chambers : [];
  if (from < 0) refuseUnknown('chamber', fields.from, known, [...path, 'from'], findings);
  if (to < 0) refuseUnknown('chamber', fields.to, known, [...path, 'to'], findings);
  if (from < 0 || to < 0) return undefined;
  checkEnds(fields, from, to, path, findings);
  const through = fields.through.map((place) => placeNames.indexOf(place));
  const { recirculation, rise } = fields;
  return { id: fields.leg, from, to, through, recirculation, ...(rise === undefined ? {} : { rise }) };
}

function checkEnds(fields: LegFields, from: number, to: number, path: Path, findings: Findings): void {
  if (from === to) {
    const message = `the leg "${fields.leg}" begins and ends in "${fields.to}"`;
    findings.push({ code: 'conflict', path: [...path, 'to'], at: 'value', message });
  }
  if (fields.rise && fields.through.length === 0) {
    const message = 'nothing in this leg holds back the air that its height moves';
    findings.push({ code: 'conflict', path: [...path, 'rise'], at: 'value', message });
  }
  if (fields.recirculation > 0 && from !== OUTSIDE && to !== OUTSIDE) {
    const message = 'only a leg from or to outside can take in the exhaust of the box';
    findings.push({ code: 'conflict', path: [...path, 'recirculation'], at: 'value', message });
  }
}

/** One mention of a place in a leg. */
interface Use {
  readonly place: string;
  readonly leg: unknown;
  readonly path: Path;
}

/** Every element stands in exactly one leg. Legs that could not be read count as well. */
function checkUse(items: readonly unknown[], placeNames: readonly string[], findings: Findings): void {
  const users = new Map<string, Use>();
  for (const use of items.flatMap(usesIn)) {
    const { place, path } = use;
    const user = users.get(place);
    if (!placeNames.includes(place)) {
      refuseUnknown('element', place, placeNames, path, findings);
    } else if (user) {
      const message = `"${place}" stands in the leg "${user.leg}" already, and one thing has one place`;
      findings.push({ code: 'used-twice', path, at: 'value', message });
    }
    users.set(place, use);
  }
  // An unknown name in a leg is most likely the unused element: one finding is enough.
  const misspelt = [...users.keys()].some((place) => !placeNames.includes(place));
  if (misspelt || items.length === 0) return;
  for (const place of placeNames.filter((each) => !users.has(each))) {
    const message = `"${place}" stands in no leg, so no air passes it`;
    findings.push({ code: 'unused', path: ['elements', place], at: 'key', message });
  }
}

function usesIn(item: unknown, legIndex: number): readonly Use[] {
  const through = valueAt(item, ['through']);
  if (!Array.isArray(through)) return [];
  const leg = valueAt(item, ['leg']);
  return through.flatMap((place: unknown, index) => {
    const path = ['airway', 'legs', legIndex, 'through', index];
    return typeof place === 'string' ? [{ place, leg, path }] : [];
  });
}
