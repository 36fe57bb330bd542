import type { ElementKind } from '../../elements/element.ts';
import { describeValue } from '../../quantities/written.ts';
import type { Findings, WrittenMap } from '../findings.ts';
import { unknownName } from '../name-findings.ts';
import type { Path } from '../problem.ts';
import { STOCK_KEY, type StockItem } from './stock-item.ts';

/** Where the fields of an element stand, and what may be called for. */
export interface StockUse {
  readonly stock: readonly StockItem[];
  /** Turns a path inside the fields into a path of the file. */
  readonly placeOf: (path: Path) => Path;
}

/**
 * Puts the fields of the item an element calls for beside its own.
 *
 * @param kind of the element
 * @param fields as written
 * @param use what may be called for, and where the fields stand
 * @param findings receives what is wrong
 * @returns the fields as they are if they call for nothing; undefined if they call for what does not fit
 */
export function fromStock(
  kind: ElementKind,
  fields: WrittenMap,
  { stock, placeOf }: StockUse,
  findings: Findings,
): WrittenMap | undefined {
  if (!Object.hasOwn(fields, STOCK_KEY)) return fields;
  const { [STOCK_KEY]: called, ...own } = fields;
  const fitting = stock.filter((each) => each.kind === kind.key);
  const item = fitting.find(({ id }) => id === called);
  if (!item) {
    findings.push(noItem(kind, describeValue(called), stock, placeOf([STOCK_KEY])));
    return undefined;
  }
  const twice = Object.keys(own).filter((key) => {
    return Object.hasOwn(item.fields, key) && String(own[key]) !== String(item.fields[key]);
  });
  for (const key of twice) {
    const message = `"${key}" of "${item.id}" is ${describeValue(item.fields[key])}`;
    const expected = `no "${key}" beside "${STOCK_KEY}"`;
    findings.push({ code: 'conflict', path: placeOf([key]), at: 'key', message, expected });
  }
  return twice.length > 0 ? undefined : { ...own, ...item.fields };
}

function noItem(
  kind: ElementKind,
  called: string,
  stock: readonly StockItem[],
  path: Path,
): Findings[number] {
  const other = stock.find(({ id }) => id === called);
  if (other) {
    const message = `"${called}" is no "${kind.key}" but a "${other.kind}"`;
    return { code: 'conflict', path, at: 'value', message };
  }
  const names = stock.filter((each) => each.kind === kind.key).map(({ id }) => id);
  return unknownName(`stock of "${kind.key}"`, called, names, path);
}
