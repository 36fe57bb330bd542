import { type Failure, misfit, type Outcome } from './misfit.ts';
import { nearestName } from './nearest.ts';
import { type Kind, type KindName, kinds, type Unit } from './unit-table.ts';

/** A number as people write one; no hexadecimal, no infinity. The minus may be the typographic one. */
export const NUMBER = /^[+\-−]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?/;
/** Largest number in SI that is believed, and the inverse of the smallest [-]: beyond it squares overflow. */
export const MOST = 1e15;
/** Longest text [letters] that can be one quantity; a longer one is not looked into. */
export const LONGEST_QUANTITY = 200;
const DECIMAL_COMMA = /^([+\-−]?\d+),(\d+)(?!\S*[.,]\d)/;

interface Spellings {
  /** As in the table, so that the usual spelling is found at once. */
  readonly asNamed: ReadonlyMap<string, Unit>;
  readonly exact: ReadonlyMap<string, Unit>;
  readonly anyCase: ReadonlyMap<string, Unit>;
}

const spellings = new Map<Kind, Spellings>(Object.values(kinds).map((kind) => [kind, spellingsOf(kind)]));

/**
 * Reads a number with its unit.
 *
 * @param kind of quantity wanted
 * @param text for example "120 mm"; spaces do not matter
 * @returns the value in SI, or what is wrong with the text
 */
export function readQuantity(kind: KindName, text: string): Outcome<number> {
  if (text.length > LONGEST_QUANTITY) return misfit(text, example(kind));
  const trimmed = text.trim();
  const number = NUMBER.exec(trimmed)?.[0];
  const comma = decimalComma(kind, trimmed);
  if (comma) return comma;
  if (number === undefined) return misfit(text, example(kind));
  const rest = trimmed.slice(number.length).trim();
  if (/^[,;]?\s*[+\-−]?\d/.test(rest) && !findUnit(kind, rest)) {
    return misfit(text, `one number: ${example(kind)}`);
  }
  const unit = readUnit(kind, number, rest);
  return unit.ok ? toSi(unit.value, number, text) : unit;
}

/**
 * Finds the unit that stands behind a number.
 *
 * @param kind of quantity wanted
 * @param number as written, for the suggestion
 * @param rest what stands behind the number; empty if nothing does
 */
export function readUnit(kind: KindName, number: string, rest: string): Outcome<Unit> {
  const wanted: Kind = kinds[kind];
  const unit = findUnit(kind, rest);
  if (unit) return { ok: true, value: unit };
  if (rest === '') {
    return misfit(`${number} without a unit`, example(kind), `${number} ${usualUnit(kind).name}`);
  }
  const found = `${number} ${rest}`;
  const other = kindOf(rest);
  if (other) {
    const meant = wanted.mistaken?.[plain(rest)];
    return misfit(`${found}, ${kinds[other].noun}`, example(kind), meant && `${number} ${meant}`);
  }
  const near = nearestName(plain(rest), allSpellings(wanted));
  const meant = near === undefined ? undefined : findUnit(kind, near)?.name;
  return misfit(`${found} (there is no unit "${rest}")`, example(kind), meant && `${number} ${meant}`);
}

/**
 * Converts a number as written to SI.
 *
 * @param unit the number is in
 * @param number as written
 * @param text the whole text, for the message
 */
export function toSi(unit: Unit, number: string, text: string): Outcome<number> {
  const bare = Number(number.replace('−', '-')) + (unit.shift ?? 0);
  const value = (bare * (unit.times ?? 1)) / (unit.over ?? 1);
  const size = Math.abs(value);
  const reasonable = size === 0 || (size >= 1 / MOST && size <= MOST);
  // Adding zero turns a negative zero into a plain one.
  return reasonable ? { ok: true, value: value + 0 } : misfit(text, 'a number of reasonable size');
}

/**
 * Converts an SI value into a unit.
 *
 * @param unit to express it in
 * @param value any [SI unit of the kind]
 * @returns the number to write before the unit [unit]
 */
export function inUnit(unit: Unit, value: number): number {
  return (value * (unit.over ?? 1)) / (unit.times ?? 1) - (unit.shift ?? 0);
}

/**
 * A unit by its spelling.
 *
 * @param kind of quantity
 * @param spelling for example "m3/h"
 * @returns undefined if the kind has no such unit
 */
export function findUnit(kind: KindName, spelling: string): Unit | undefined {
  const known = spellings.get(kinds[kind]);
  const named = known?.asNamed.get(spelling);
  if (named || spelling === '') return named;
  const word = plain(spelling);
  return known?.exact.get(word) ?? known?.anyCase.get(word.toLowerCase());
}

/**
 * The unit a kind of quantity is usually written in.
 *
 * @param kind of quantity
 */
export function usualUnit(kind: KindName): Unit {
  return kinds[kind].units[0];
}

/**
 * An SI value as text that `readQuantity` takes back.
 *
 * @param kind of quantity
 * @param value any [SI unit of the kind]
 * @param unit to show it in; the usual one of the kind by default
 */
export function showQuantity(kind: KindName, value: number, unit: Unit = usualUnit(kind)): string {
  const number = inUnit(unit, value);
  // Twelve digits of the greatest number in the conversion are sound: 0 °F comes from 459.67 less 459.67.
  const magnitude = Math.floor(Math.log10(Math.max(Math.abs(number), unit.shift ?? 0, Number.MIN_VALUE)));
  const places = Math.min(Math.max(11 - magnitude, 0), 100);
  return `${Number(number.toFixed(places))} ${unit.name}`;
}

/**
 * What to expect of a kind, in words: "a length such as 120 mm".
 *
 * @param kind of quantity
 */
export function example(kind: KindName): string {
  return `${kinds[kind].noun} such as ${kinds[kind].typical} ${usualUnit(kind).name}`;
}

/**
 * What is wrong with a number written with a decimal comma; undefined if there is none.
 *
 * @param kind of quantity wanted
 * @param text as written
 */
export function decimalComma(kind: KindName, text: string): Failure | undefined {
  const match = DECIMAL_COMMA.exec(text.slice(0, LONGEST_QUANTITY));
  if (!match) return undefined;
  const [whole, before, after] = match;
  const rest = text.slice(whole.length);
  const point = `${before}.${after}${rest}`;
  const thousands = after?.length === 3 ? ` or ${before}${after}${rest}` : '';
  return misfit(`${text} with a comma`, `${example(kind)}, with a decimal point`, point + thousands);
}

function kindOf(spelling: string): KindName | undefined {
  return (Object.keys(kinds) as KindName[]).find((kind) => findUnit(kind, spelling));
}

function allSpellings(kind: Kind): string[] {
  return kind.units.flatMap((unit) => [unit.name, ...(unit.also ?? [])].map(plain));
}

function spellingsOf(kind: Kind): Spellings {
  const asNamed = new Map(kind.units.map((unit) => [unit.name, unit]));
  const exact = new Map<string, Unit>();
  const anyCase = new Map<string, Unit>();
  for (const unit of kind.units) {
    for (const spelling of [unit.name, ...(unit.also ?? [])]) {
      exact.set(plain(spelling), unit);
      if (unit.anyCase) anyCase.set(plain(spelling).toLowerCase(), unit);
    }
  }
  return { asNamed, exact, anyCase };
}

/** One spelling for all the ways to type the same unit: powers as digits, no spaces and no dots. */
function plain(spelling: string): string {
  return spelling
    .replace(/[\s·⋅*^]/g, '')
    .replace(/²/g, '2')
    .replace(/³/g, '3')
    .replace(/⁶/g, '6')
    .replace(/℃/g, '°C')
    .replace(/℉/g, '°F')
    .replace(/[º˚]/g, '°')
    .replace(/μ/g, 'µ');
}
