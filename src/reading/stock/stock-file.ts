import { z } from 'zod';
import type { Element, ElementKind } from '../../elements/element.ts';
import { elementKinds } from '../../elements/kinds.ts';
import { bounded, written } from '../../quantities/written.ts';
import { makeElement } from '../element-fields.ts';
import { check, type Findings, isMap, itemsOf, keysOnly, type WrittenMap } from '../findings.ts';
import { unknownKey } from '../form-issues.ts';
import { formAt, keysOf } from '../form-tree.ts';
import { name } from '../name.ts';
import { duplicate } from '../name-findings.ts';
import type { Path } from '../problem.ts';
import type { YamlSource } from '../yaml-source.ts';
import type { StockItem } from './stock-item.ts';

const kindNames = elementKinds.map(({ key }) => key);

/** An item's name stands in choices and builds, so it has no spaces. */
const itemName = name.regex(
  /^[A-Za-z0-9][\w.+-]*$/,
  'the name of an item has letters, digits and - . _ + only',
);

const openArea = bounded(
  written.percent,
  'more than 0 %, less than 100 %',
  (share) => share > 0 && share < 1,
);

/** What an item says of itself; the fields of its kind stand beside it. */
const itemForm = z.object({
  item: itemName.describe('name by which scenarios call for it'),
  'open-area': openArea.optional().describe('share of the face that is open, as lists of goods give it'),
  note: z.string().optional().describe('anything'),
});

/** Form of a file of stock: items of one kind. */
export const stockForm = z.strictObject({
  stock: name.describe("name of the file's items"),
  source: z.string().min(1).max(400).describe('where the figures come from'),
  note: z.string().optional().describe('anything'),
  kind: z.enum(kindNames as [string, ...string[]]).describe('kind of element that all items are'),
  items: z.array(itemForm.catchall(z.unknown())).min(1).describe('the items, with fields of their kind'),
});

const keysForm = keysOnly(stockForm);

/** What a scenario may add to an item, to try whether the item makes an element. */
const TRIAL: WrittenMap = {
  face: '1 m',
  sheet: '1 mm',
  thickness: '10 mm',
  depth: '50 mm',
  length: '100 mm',
};

/** Most that an open area as listed may differ from that of the geometry [-]: it is rounded, and edges count. */
const OPEN_AREA_TOLERANCE = 0.015;

/**
 * Reads a file of stock.
 *
 * @param source parsed
 * @param taken names of items read before, with their files; receives those of this file
 * @param findings receives what is wrong
 */
export function readStock(
  source: YamlSource,
  taken: Map<string, string>,
  findings: Findings,
): readonly StockItem[] {
  const { value, file } = source;
  check(keysForm, value, [], findings);
  if (!isMap(value)) return [];
  for (const key of ['stock', 'source', 'note'] as const) {
    if (value[key] !== undefined) check(stockForm.shape[key], value[key], [key], findings);
  }
  const kindName =
    value['kind'] === undefined ? undefined : check(stockForm.shape.kind, value['kind'], ['kind'], findings);
  const kind = elementKinds.find(({ key }) => key === kindName);
  const origin = String(value['source']);
  return itemsOf(value['items'], ['items'], findings).flatMap((item, index) => {
    const path = ['items', index];
    const head = check(itemForm, item, path, findings);
    if (!head || !kind || !isMap(item)) return [];
    const owner = taken.get(head.item);
    if (owner !== undefined) findings.push(takenName(head.item, owner, file, [...path, 'item']));
    taken.set(head.item, file);
    const { item: _, 'open-area': __, note: ___, ...fields } = item;
    checkFields(kind, fields, head['open-area'], path, findings);
    const listed = head['open-area'];
    const open = listed === undefined ? {} : { openArea: listed };
    return [{ id: head.item, kind: kind.key, fields, ...open, source: origin }];
  });
}

function takenName(id: string, owner: string, file: string, path: Path): Findings[number] {
  if (owner === file) return duplicate('item', id, path);
  return { ...duplicate('item', id, path), message: `an item of ${owner} is called "${id}" as well` };
}

/** Tries the item in a large face: what it lacks a scenario gives, what it has must make an element. */
function checkFields(
  kind: ElementKind,
  fields: WrittenMap,
  listed: number | undefined,
  path: Path,
  findings: Findings,
): void {
  const known = keysOf(formAt(kind.form, [], fields));
  const strange = Object.keys(fields).filter((key) => !known.includes(key));
  for (const key of strange) findings.push(unknownKey(key, known, known, [...path, key]));
  if (strange.length > 0) return;
  const given = Object.entries({ [kind.key]: '1 m', ...TRIAL }).filter(([key]) => known.includes(key));
  const whole = { ...Object.fromEntries(given), ...fields };
  const element = makeElement(kind, whole, (inner) => [...path, ...inner], findings);
  if (element && listed !== undefined) checkOpenArea(element, listed, [...path, 'open-area'], findings);
}

function checkOpenArea({ freeArea, face }: Element, listed: number, path: Path, findings: Findings): void {
  if (freeArea === undefined || face === undefined || freeArea >= face) return;
  const open = freeArea / face;
  if (Math.abs(open - listed) <= OPEN_AREA_TOLERANCE) return;
  findings.push({
    code: 'conflict',
    path,
    at: 'value',
    message: 'this is not the open area of the geometry beside it',
    expected: `${(100 * open).toFixed(1)} %, give or take ${100 * OPEN_AREA_TOLERANCE} %`,
  });
}
