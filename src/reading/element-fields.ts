import { z } from 'zod';
import type { Element, ElementKind } from '../elements/element.ts';
import { elementKinds } from '../elements/kinds.ts';
import { nearestName } from '../quantities/nearest.ts';
import { describeValue } from '../quantities/written.ts';
import { bankForm } from './bank-fields.ts';
import type { Findings, WrittenMap } from './findings.ts';
import { isMap } from './findings.ts';
import { findingsOf, misspelt } from './form-issues.ts';
import { keysOf } from './form-tree.ts';
import type { Path } from './problem.ts';
import { STOCK_KEY } from './stock/stock-item.ts';

/** The key that tells a bank of fans from the kinds of elements. */
const BANK = 'bank';

const formsByKey: ReadonlyMap<string, z.ZodType> = new Map([
  [BANK, bankForm],
  ...elementKinds.map((kind) => [kind.key, kind.form] as const),
]);

const kindsByKey: ReadonlyMap<string, ElementKind> = new Map(elementKinds.map((kind) => [kind.key, kind]));

/** Form of one entry of `elements`, for editors. */
export const elementForm = z.union([...formsByKey.values()]);

/** The written fields of an element, once it is known what it is. */
export interface KnownFields {
  /** Undefined for a bank of fans. */
  readonly kind: ElementKind | undefined;
  readonly fields: WrittenMap;
}

/**
 * Finds out what an entry of `elements` is: exactly one of its keys tells.
 *
 * @param value as written
 * @param path of the value
 * @param findings receives what is wrong
 */
export function readKind(value: unknown, path: Path, findings: Findings): KnownFields | undefined {
  if (!isMap(value)) {
    const found = describeValue(value);
    const expected = 'keys with values, such as { slot: 90 x 2 mm }';
    findings.push({ code: 'wrong-value', path, at: 'value', message: 'this is no element', found, expected });
    return undefined;
  }
  const telling = Object.keys(value).filter((key) => formsByKey.has(key));
  const key = telling.length > 1 ? telling.find((one) => allowsAll(one, telling)) : telling[0];
  if (key !== undefined) return { kind: kindsByKey.get(key), fields: value };
  findings.push(telling.length > 1 ? twoKinds(telling, path) : noKind(value, path));
  return undefined;
}

/**
 * Builds an element from its written fields.
 *
 * @param kind of the element
 * @param fields as written
 * @param placeOf turns a path inside the fields into a path of the file
 * @param findings receives what is wrong
 */
export function makeElement(
  kind: ElementKind,
  fields: WrittenMap,
  placeOf: (path: Path) => Path,
  findings: Findings,
): Element | undefined {
  try {
    const element = kind.make(fields);
    if (isSound(element)) return element;
    const message = 'these figures are out of all proportion: no loss can be computed from them';
    findings.push({ code: 'out-of-range', path: placeOf([]), at: 'value', message });
  } catch (error) {
    if (!(error instanceof z.ZodError)) throw error;
    const inside = findingsOf(error.issues, { form: kind.form, value: fields, path: [] });
    findings.push(...inside.map((finding) => ({ ...finding, path: placeOf(finding.path) })));
  }
  return undefined;
}

/** Figures that each pass their own check may still make a loss that is no number. */
function isSound({ viscous, inertial, faint }: Element): boolean {
  return [viscous, inertial, faint].every((coefficient) => Number.isFinite(coefficient) && coefficient >= 0);
}

/** True if the form of one telling key has the other telling keys among its fields. */
function allowsAll(key: string, telling: readonly string[]): boolean {
  const known = keysOf(formsByKey.get(key));
  return telling.every((other) => known.includes(other));
}

function twoKinds(telling: readonly string[], path: Path): Findings[number] {
  const [first = '', second = ''] = telling;
  const message = `an element cannot be "${first}" and "${second}" at once`;
  return { code: 'conflict', path: [...path, second], at: 'key', message };
}

function noKind(fields: WrittenMap, path: Path): Findings[number] {
  const kinds = [...formsByKey.keys()];
  const keys = Object.keys(fields).filter((key) => key !== STOCK_KEY);
  const known = new Set([...formsByKey.values()].flatMap(keysOf));
  for (const key of keys.filter((each) => !known.has(each))) {
    const meant = nearestName(key, kinds);
    if (meant) return misspelt(key, meant, [...path, key]);
  }
  const likely = kinds.filter((kind) => keys.every((key) => keysOf(formsByKey.get(kind)).includes(key)));
  const expected = `one of the keys ${(likely.length > 0 ? likely : kinds).join(', ')}`;
  return {
    code: 'missing-key',
    path,
    at: 'key',
    message: 'nothing tells what kind of element this is',
    expected,
  };
}
