import { type Kind, type KindName, kinds } from './unit-table.ts';

/** A number as in `NUMBER`, for a pattern that editors try as well. */
const DIGITS = '[+\\-−]?(?:\\d+(?:\\.\\d*)?|\\.\\d+)(?:[eE][+-]?\\d+)?(?![\\d.])';
/** What may stand between the letters of a unit without changing it. */
const BETWEEN = '[\\s·⋅*^]*';

/** Letters that are typed in several ways. */
const ALIKE: Readonly<Record<string, string>> = {
  '2': '[2²]',
  '3': '[3³]',
  '6': '[6⁶]',
  '°': '[°º˚]',
  µ: '[µμ]',
  '²': '[2²]',
  '³': '[3³]',
};

function letterPattern(letter: string, anyCase: boolean): string {
  const alike = ALIKE[letter];
  if (alike !== undefined) return alike;
  if (anyCase && letter.toLowerCase() !== letter.toUpperCase()) {
    return `[${letter.toLowerCase()}${letter.toUpperCase()}]`;
  }
  return letter.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');
}

function spellingPattern(spelling: string, anyCase: boolean): string {
  const letters = [...spelling.replace(/[\s^*]/g, '')].map((letter) => letterPattern(letter, anyCase));
  const pattern = letters.join(BETWEEN);
  // A sign of its own stands for degrees Celsius and Fahrenheit.
  const single = spelling === '°C' ? '|℃' : spelling === '°F' ? '|℉' : '';
  return `${pattern}${single}`;
}

/** Alternatives of all units of a kind. */
function unitPattern(kind: Kind): string {
  const spellings = kind.units.flatMap(({ name, also = [], anyCase = false }) =>
    [name, ...also].map((spelling) => spellingPattern(spelling, anyCase)),
  );
  return `(?:${[...new Set(spellings)].join('|')})`;
}

/** How a quantity is spelt: a pattern that editors try, and the units it takes. */
export interface Spelling {
  readonly pattern: string;
  /** Their usual names. */
  readonly units: readonly string[];
}

function namesOf(kind: KindName): readonly string[] {
  return kinds[kind].units.map(({ name }) => name);
}

/**
 * Spelling of one number with a unit; it takes what `readQuantity` takes, but for the size of the number.
 *
 * @param kind of quantity
 */
export function quantitySpelling(kind: KindName): Spelling {
  return { pattern: `^\\s*${DIGITS}\\s*${unitPattern(kinds[kind])}\\s*$`, units: namesOf(kind) };
}

/**
 * Spelling of numbers that share the unit of the last one, as `readList` takes them.
 *
 * @param kind of quantity
 */
export function listSpelling(kind: KindName): Spelling {
  const numbers = `(?:${DIGITS}(?:\\s+|,\\s+))*${DIGITS}`;
  return { pattern: `^\\s*${numbers}\\s*${unitPattern(kinds[kind])}\\s*$`, units: namesOf(kind) };
}

const UNIT_OF_LENGTH = unitPattern(kinds.length);
const SIDES = `${DIGITS}\\s*(?:${UNIT_OF_LENGTH}\\s*)?[x×*]\\s*${DIGITS}\\s*${UNIT_OF_LENGTH}`;

/** Spelling of two sides, or of the side of a square, as `readRectangle` takes them. */
export const RECTANGLE: Spelling = {
  pattern: `^\\s*(?:${SIDES}|${DIGITS}\\s*${UNIT_OF_LENGTH})\\s*$`,
  units: namesOf('length'),
};

/** Spelling of an area, or of the two sides of a rectangle, as `readArea` takes them. */
export const AREA: Spelling = {
  pattern: `^\\s*(?:${SIDES}|${DIGITS}\\s*${unitPattern(kinds.area)})\\s*$`,
  units: namesOf('area'),
};
