import type { Metres } from './dimensions.ts';
import { type Failure, misfit, type Outcome } from './misfit.ts';
import type { KindName } from './unit-table.ts';
import {
  decimalComma,
  example,
  findUnit,
  LONGEST_QUANTITY,
  NUMBER,
  readQuantity,
  readUnit,
  toSi,
} from './units.ts';

/** Two sides of a rectangle. */
export interface Rectangle {
  readonly width: Metres;
  readonly height: Metres;
}

/** Longest text [letters] of a list: a curve of a thousand points is shorter. */
const LONGEST_LIST = 10_000;

/** More letters than any unit has; a long rest is a list and need not be looked up. */
const LONGEST_UNIT = 30;

const TIMES = /\s*[x×*]\s*/i;

interface Written {
  readonly number: string;
  /** What stands behind the number; empty if nothing does. */
  readonly unit: string;
}

/**
 * Reads numbers that share the unit of the last one, as in "0 10 20 m³/h".
 *
 * @param kind of quantity wanted
 * @param text numbers with spaces (or a comma and a space) between, at least one
 * @returns values in SI, in the order written
 */
export function readList(kind: KindName, text: string): Outcome<readonly number[]> {
  if (text.length > LONGEST_LIST) return misfit(text, `a shorter list of ${example(kind)}`);
  const parts: Written[] = [];
  let rest = text.trim();
  while (rest !== '') {
    const comma = decimalComma(kind, rest);
    if (comma) return comma;
    const number = NUMBER.exec(rest)?.[0];
    if (number === undefined) break;
    rest = rest.slice(number.length);
    const next = /^(?:\s+|,\s+)(?=[+\-−.]?\d)/.exec(rest);
    // "1/min" and "1/K" begin with a digit but are units.
    if (next && !(rest.length < LONGEST_UNIT && findUnit(kind, rest))) {
      parts.push({ number, unit: '' });
      rest = rest.slice(next[0].length);
    } else {
      parts.push({ number, unit: rest.trim() });
      rest = '';
    }
  }
  return shareUnit(kind, parts, text, `numbers and a unit: ${example(kind)}`);
}

/**
 * Reads the two sides of a rectangle, "95 x 80 mm", or the side of a square, "95 mm".
 *
 * @param text as written
 * @returns sides [m], as written: width first
 */
export function readRectangle(text: string): Outcome<Rectangle> {
  const expected = 'two sides such as 95 x 80 mm';
  if (text.length > LONGEST_QUANTITY) return misfit(text, expected);
  const comma = decimalComma('length', text.trim());
  if (comma) return comma;
  const parts = text.trim().split(TIMES).map(numberAndRest);
  if (parts.length > 2 || parts.some((part) => part === undefined)) return misfit(text, expected);
  const sides = shareUnit(
    'length',
    parts.filter((part) => part !== undefined),
    text,
    expected,
  );
  if (!sides.ok) return sides;
  const [width = 0, height = width] = sides.value;
  return { ok: true, value: { width, height } };
}

/**
 * Reads an area, "12 cm²", or the rectangle that has it, "95 x 80 mm".
 *
 * @param text as written
 * @returns area [m²]
 */
export function readArea(text: string): Outcome<number> {
  if (text.length > LONGEST_QUANTITY || !TIMES.test(text)) return readQuantity('area', text);
  const sides = readRectangle(text);
  return sides.ok ? { ok: true, value: sides.value.width * sides.value.height } : sides;
}

function numberAndRest(text: string): Written | undefined {
  const number = NUMBER.exec(text)?.[0];
  return number === undefined ? undefined : { number, unit: text.slice(number.length).trim() };
}

function shareUnit(
  kind: KindName,
  parts: readonly Written[],
  text: string,
  expected: string,
): Outcome<readonly number[]> {
  const last = parts.at(-1);
  if (!last) return misfit(text, expected);
  const shared = readUnit(kind, last.number, last.unit);
  if (!shared.ok) return parts.length > 1 ? wholeText(shared, text, last) : shared;
  const values: number[] = [];
  for (const part of parts) {
    const unit = part.unit === '' ? shared : readUnit(kind, part.number, part.unit);
    if (!unit.ok) return unit;
    const value = toSi(unit.value, part.number, text);
    if (!value.ok) return value;
    values.push(value.value);
  }
  return { ok: true, value: values };
}

/** Puts the suggestion for the last number into the whole text. */
function wholeText(failed: Failure, text: string, last: Written): Outcome<never> {
  const { found, expected, suggestion } = failed.misfit;
  const start = text.trim().lastIndexOf(last.number);
  return misfit(found, expected, suggestion && text.trim().slice(0, start) + suggestion);
}
