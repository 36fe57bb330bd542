import type { ElementKind } from '../elements/element.ts';
import type { ElementOption, ElementPlace } from '../enclosure/enclosure.ts';
import { describeValue } from '../quantities/written.ts';
import { makeElement, readKind } from './element-fields.ts';
import { entriesOf, type Findings, isMap, itemsOf, type WrittenMap } from './findings.ts';
import { unknownKey } from './form-issues.ts';
import { keysOf, valueAt } from './form-tree.ts';
import { readHearing, splitHearing } from './hearing.ts';
import { duplicate } from './name-findings.ts';
import type { Path } from './problem.ts';

/** Most options of one place [-]: more would be a slip, such as one value too many in each of five lists. */
const MOST_OPTIONS = 2000;

/** The key under which whole elements stand to choose from. */
const WHOLE = 'element';

/**
 * Reads the place of a passive element and what may stand there.
 *
 * @param id name of the place
 * @param kind of the element
 * @param fields its entry under `elements`, as written
 * @param choice its entry under `choices`, as written; undefined if it has none
 * @param findings receives what is wrong
 */
export function readElementPlace(
  id: string,
  kind: ElementKind,
  fields: WrittenMap,
  choice: unknown,
  findings: Findings,
): ElementPlace | undefined {
  const path = ['elements', id];
  const { heard, own } = splitHearing(fields, keysOf(kind.form), path, findings);
  const options = readOptions(id, kind, own, choice, findings);
  const hearing = readHearing(heard, options ?? [], path, options ? findings : []);
  return options && { kind: 'element', id, options, ...(hearing ? { heard: hearing } : {}) };
}

function readOptions(
  id: string,
  kind: ElementKind,
  fields: WrittenMap,
  choice: unknown,
  findings: Findings,
): readonly ElementOption[] | undefined {
  if (isMap(choice) && Object.hasOwn(choice, WHOLE)) {
    const only = Object.keys(choice).length === 1;
    if (!only)
      findings.push({ code: 'conflict', path: ['choices', id, WHOLE], at: 'key', message: NOT_BOTH });
    const base = makeElement(kind, fields, (path) => ['elements', id, ...path], findings);
    const options = wholeElements(id, choice[WHOLE], findings);
    return base && options;
  }
  const variants = choice === undefined ? [[]] : combinations(id, kind, choice, findings);
  const options = variants?.map((variant) => makeVariant(id, kind, fields, variant, findings));
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
  const known = keysOf(kind.form);
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
  id: string,
  kind: ElementKind,
  fields: WrittenMap,
  variant: readonly Setting[],
  findings: Findings,
): ElementOption | undefined {
  const chosen = Object.fromEntries(variant.map(({ field, value }) => [field, value]));
  const placeOf = ([first, ...rest]: Path): Path => {
    const setting = variant.find(({ field }) => field === first);
    if (setting) return ['choices', id, setting.field, setting.index, ...rest];
    return first === undefined ? ['elements', id] : ['elements', id, first, ...rest];
  };
  const element = makeElement(kind, { ...fields, ...chosen }, placeOf, findings);
  const label = variant.map(({ field, value }) => `${field} ${describeValue(value)}`).join(', ');
  return element && { label, element };
}

function wholeElements(id: string, value: unknown, findings: Findings): readonly ElementOption[] | undefined {
  const path = ['choices', id, WHOLE];
  const labels = new Set<string>();
  const options = itemsOf(value, path, findings).map((item, index) => {
    const option = wholeElement(item, [...path, index], findings);
    if (option && labels.has(option.label))
      findings.push(duplicate('option', option.label, [...path, index]));
    if (option) labels.add(option.label);
    return option;
  });
  const complete = options.filter((option) => option !== undefined);
  return complete.length === options.length && options.length > 0 ? complete : undefined;
}

function wholeElement(item: unknown, path: Path, findings: Findings): ElementOption | undefined {
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
  const element = makeElement(known.kind, known.fields, (inner) => [...path, ...inner], findings);
  const telling = `${known.kind.key} ${describeValue(valueAt(item, [known.kind.key]))}`;
  return element && { label: name === undefined ? telling : describeValue(name), element };
}
