import type { Element, ElementKind } from '../elements/element.ts';
import type { ElementOption, ElementPlace } from '../enclosure/enclosure.ts';
import { describeValue } from '../quantities/written.ts';
import { makeElement, readKind } from './element-fields.ts';
import { entriesOf, type Findings, isMap, itemsOf, type WrittenMap } from './findings.ts';
import { unknownKey } from './form-issues.ts';
import { keysOf, valueAt } from './form-tree.ts';
import { readHearing, splitHearing } from './hearing.ts';
import { duplicate } from './name-findings.ts';
import type { Path } from './problem.ts';
import { fromStock } from './stock/from-stock.ts';
import { STOCK_KEY, type StockItem } from './stock/stock-item.ts';

/** Most options of one place [-]: more would be a slip, such as one value too many in each of five lists. */
const MOST_OPTIONS = 2000;

/** The key under which whole elements stand to choose from. */
const WHOLE = 'element';

/** A place as written. */
export interface WrittenPlace {
  readonly id: string;
  readonly kind: ElementKind;
  /** Its entry under `elements`. */
  readonly fields: WrittenMap;
  /** Its entry under `choices`; undefined if it has none. */
  readonly choice: unknown;
}

/** What readers of elements share. */
interface Reader {
  /** What elements may call for. */
  readonly stock: readonly StockItem[];
  /** Receives what is wrong. */
  readonly findings: Findings;
}

/**
 * Reads the place of a passive element and what may stand there.
 *
 * @param place as written
 * @param stock what it may call for
 * @param findings receives what is wrong
 */
export function readElementPlace(
  { id, kind, fields, choice }: WrittenPlace,
  stock: readonly StockItem[],
  findings: Findings,
): ElementPlace | undefined {
  const path = ['elements', id];
  const { heard, own } = splitHearing(fields, fieldsOf(kind), path, findings);
  const options = readOptions({ id, kind, fields: own, choice }, { stock, findings });
  const hearing = readHearing(heard, options ?? [], path, options ? findings : []);
  return options && { kind: 'element', id, options, ...(hearing ? { heard: hearing } : {}) };
}

/** Keys an element of a kind may have. */
function fieldsOf(kind: ElementKind): readonly string[] {
  return [...keysOf(kind.form), STOCK_KEY];
}

/** The element of written fields, with what it calls for. */
function elementOf(
  kind: ElementKind,
  fields: WrittenMap,
  placeOf: (path: Path) => Path,
  { stock, findings }: Reader,
): Element | undefined {
  const whole = fromStock(kind, fields, { stock, placeOf }, findings);
  return whole && makeElement(kind, whole, placeOf, findings);
}

function readOptions(place: WrittenPlace, reader: Reader): readonly ElementOption[] | undefined {
  const { id, kind, fields, choice } = place;
  const { findings } = reader;
  if (isMap(choice) && Object.hasOwn(choice, WHOLE)) {
    const only = Object.keys(choice).length === 1;
    if (!only)
      findings.push({ code: 'conflict', path: ['choices', id, WHOLE], at: 'key', message: NOT_BOTH });
    const base = elementOf(kind, fields, (path) => ['elements', id, ...path], reader);
    const options = wholeElements(id, choice[WHOLE], reader);
    return base && options;
  }
  const variants = choice === undefined ? [[]] : combinations(id, kind, choice, findings);
  const options = variants?.map((variant) => makeVariant(place, variant, reader));
  return options?.every((option) => option !== undefined) ? options : undefined;
}

const NOT_BOTH = 'a choice lists either whole elements or values of fields, not both';

/** One value of a listed field. */
interface Setting {
  readonly field: string;
  readonly index: number;
  readonly value: unknown;
}

/** Every combination of the listed values. */
function combinations(
  id: string,
  kind: ElementKind,
  choice: unknown,
  findings: Findings,
): readonly (readonly Setting[])[] | undefined {
  const path = ['choices', id];
  const known = fieldsOf(kind);
  const before = findings.length;
  let variants: (readonly Setting[])[] = [[]];
  for (const [field, values] of entriesOf(choice, path, findings)) {
    if (!known.includes(field)) {
      findings.push(unknownKey(field, known, known, [...path, field]));
      continue;
    }
    const items = itemsOf(values, [...path, field], findings);
    if (variants.length * items.length > MOST_OPTIONS) {
      const message = `these lists have more than ${MOST_OPTIONS} combinations`;
      findings.push({ code: 'out-of-range', path: [...path, field], at: 'key', message });
      return undefined;
    }
    variants = variants.flatMap((variant) =>
      items.map((value, index) => [...variant, { field, index, value }]),
    );
  }
  return findings.length === before ? variants : undefined;
}

function makeVariant(
  { id, kind, fields }: WrittenPlace,
  variant: readonly Setting[],
  reader: Reader,
): ElementOption | undefined {
  const chosen = Object.fromEntries(variant.map(({ field, value }) => [field, value]));
  const placeOf = ([first, ...rest]: Path): Path => {
    const setting = variant.find(({ field }) => field === first);
    if (setting) return ['choices', id, setting.field, setting.index, ...rest];
    return first === undefined ? ['elements', id] : ['elements', id, first, ...rest];
  };
  const element = elementOf(kind, { ...fields, ...chosen }, placeOf, reader);
  const label = variant.map(({ field, value }) => `${field} ${describeValue(value)}`).join(', ');
  return element && { label, element };
}

function wholeElements(id: string, value: unknown, reader: Reader): readonly ElementOption[] | undefined {
  const { findings } = reader;
  const path = ['choices', id, WHOLE];
  const labels = new Set<string>();
  const options = itemsOf(value, path, findings).map((item, index) => {
    const option = wholeElement(item, [...path, index], reader);
    if (option && labels.has(option.label))
      findings.push(duplicate('option', option.label, [...path, index]));
    if (option) labels.add(option.label);
    return option;
  });
  const complete = options.filter((option) => option !== undefined);
  return complete.length === options.length && options.length > 0 ? complete : undefined;
}

function wholeElement(item: unknown, path: Path, reader: Reader): ElementOption | undefined {
  const { findings } = reader;
  const { name, ...fields } = isMap(item) ? item : {};
  const known = readKind(isMap(item) ? fields : item, path, findings);
  if (!known) return undefined;
  if (!known.kind) {
    findings.push({
      code: 'conflict',
      path,
      at: 'value',
      message: 'a bank of fans cannot be chosen as an element',
    });
    return undefined;
  }
  const element = elementOf(known.kind, known.fields, (inner) => [...path, ...inner], reader);
  const tells = Object.hasOwn(fields, STOCK_KEY) ? STOCK_KEY : known.kind.key;
  const telling = `${tells} ${describeValue(valueAt(item, [tells]))}`;
  return element && { label: name === undefined ? telling : describeValue(name), element };
}
