import type { Place } from '../enclosure/enclosure.ts';
import { readBankPlace } from './bank-place.ts';
import type { Catalog } from './catalog-file.ts';
import { readKind } from './element-fields.ts';
import { readElementPlace } from './element-place.ts';
import { entriesOf, type Findings, isMap } from './findings.ts';
import { valueAt } from './form-tree.ts';
import { unknownName } from './name-findings.ts';

/** The places of a scenario. */
export interface PlacesSection {
  /** All names in the order of the file, also of places that could not be read. */
  readonly names: readonly string[];
  readonly places: ReadonlyMap<string, Place>;
}

/** The two sections that together say what may stand where, as written. */
export interface WrittenPlaces {
  readonly elements: unknown;
  readonly choices: unknown;
}

/**
 * Reads `elements` and `choices`.
 *
 * @param written both sections
 * @param catalog fans and stock that may stand in them
 * @param others names that are no elements, with what they are, for choices put on the wrong thing
 * @param findings receives what is wrong
 */
export function readPlaces(
  written: WrittenPlaces,
  catalog: Catalog,
  others: ReadonlyMap<string, string>,
  findings: Findings,
): PlacesSection {
  const places = new Map<string, Place>();
  const entries = entriesOf(written.elements, ['elements'], findings);
  const names = entries.map(([name]) => name);
  if (isMap(written.elements) && names.length === 0) {
    findings.push({ code: 'missing-key', path: ['elements'], at: 'key', message: 'there are no elements' });
  }
  for (const [name] of entriesOf(written.choices, ['choices'], findings)) {
    if (names.length > 0 && !names.includes(name)) refuseChoice(name, names, others, findings);
  }
  for (const [name, value] of entries) {
    const place = readPlace(name, value, valueAt(written.choices, [name]), catalog, findings);
    if (place) places.set(name, place);
  }
  return { names, places };
}

function readPlace(
  name: string,
  value: unknown,
  choice: unknown,
  catalog: Catalog,
  findings: Findings,
): Place | undefined {
  const known = readKind(value, ['elements', name], findings);
  if (!known) return undefined;
  return known.kind
    ? readElementPlace({ id: name, kind: known.kind, fields: known.fields, choice }, catalog.stock, findings)
    : readBankPlace(name, known.fields, choice, catalog.fans, findings);
}

function refuseChoice(
  name: string,
  names: readonly string[],
  others: ReadonlyMap<string, string>,
  findings: Findings,
): void {
  const path = ['choices', name];
  const other = others.get(name);
  if (other === undefined) {
    findings.push(unknownName('element', name, names, path, 'key'));
    return;
  }
  const message = `"${name}" is ${other}: only what stands under "elements" can be chosen`;
  findings.push({ code: 'conflict', path, at: 'key', message });
}
