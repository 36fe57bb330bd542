import { type KindName, kinds } from './unit-table.ts';
import { findUnit, NUMBER, readQuantity } from './units.ts';

/** How values lie between two others. */
export type Spacing = 'linear' | 'log';

/** Values of one quantity in a row, as they are written, with all that lies between them. */
export interface ValueRange {
  /** Positions that were asked for [-], rising; the first value is at 0, the next at 1 and so on. */
  readonly positions: readonly number[];
  /** Whether there is something between two neighbouring values. */
  readonly continuous: boolean;
  /** Unit behind the numbers, as written; empty if there is none. */
  readonly unit: string;
  readonly spacing: Spacing;
  /** The value at a position, as a file would have it, such as "4.25 mm". */
  readonly textAt: (position: number) => string;
  /** Its number that changes, in the unit as written [that unit]. */
  readonly numberAt: (position: number) => number;
}

/** A text taken apart into its numbers and what stands around them. */
interface Pattern {
  readonly numbers: readonly number[];
  /** One more than numbers: before the first, between, behind the last. */
  readonly around: readonly string[];
}

const RANGE = /^(.+?)\s+to\s+(.+)$/;

/** Longest text that is looked into [letters]. */
const LONGEST_RANGE = 2000;

/** Significant digits with which a value between two others is written [-]: beyond any drawing. */
const DIGITS = 9;

function patternOf(text: string): Pattern {
  const numbers: number[] = [];
  const around: string[] = [];
  let rest = text.trim();
  let before = '';
  while (rest !== '') {
    const number = /\w$/.test(before) ? undefined : NUMBER.exec(rest)?.[0];
    if (number === undefined) {
      before += rest[0];
      rest = rest.slice(1);
    } else {
      numbers.push(Number(number.replace('−', '-')));
      around.push(before);
      before = '';
      rest = rest.slice(number.length);
    }
  }
  return { numbers, around: [...around, before] };
}

/** Gives a pattern without a unit that of the last one: "3 to 8 mm". */
function withUnitOf(pattern: Pattern, last: Pattern): Pattern {
  const own = pattern.around.at(-1);
  return own === '' ? { ...pattern, around: pattern.around.with(-1, last.around.at(-1) ?? '') } : pattern;
}

function alike(one: Pattern, other: Pattern): boolean {
  return (
    one.numbers.length > 0 &&
    one.around[0] === '' &&
    one.around.join('#').replace(/\s/g, '') === other.around.join('#').replace(/\s/g, '')
  );
}

function between(low: number, high: number, share: number, spacing: Spacing): number {
  if (share === 0 || low === high) return low;
  if (share === 1) return high;
  const value = spacing === 'log' ? low * (high / low) ** share : low + share * (high - low);
  return Number(value.toPrecision(DIGITS));
}

function textOf({ numbers, around }: Pattern): string {
  return around.map((text, index) => text + (numbers[index] ?? '')).join('');
}

/** Index of the first number that is not the same in all patterns. */
function changing(patterns: readonly Pattern[]): number {
  const [first] = patterns;
  const index = (first?.numbers ?? []).findIndex((number, at) =>
    patterns.some((other) => other.numbers[at] !== number),
  );
  return Math.max(0, index);
}

/** Positions of a range of two ends, or of every value of a list. */
function positionsOf(isRange: boolean, values: number, points: number): readonly number[] {
  const count = isRange ? points : values;
  return Array.from({ length: count }, (_, index) => (isRange ? index / (points - 1) : index));
}

/**
 * Reads a range such as "3 mm to 8 mm", "60 x 40 to 120 x 80 mm", or a list such as "3 mm, 4 mm, 6 mm".
 *
 * @param text as written
 * @param points into which a range is divided [-], ≥ 2
 * @param spacing of what lies between two values
 * @returns the range, or why there is none
 */
export function readRange(text: string, points: number, spacing: Spacing): ValueRange | string {
  if (text.length > LONGEST_RANGE) return `${text.length} letters are more than a range or a list takes`;
  const ends = RANGE.exec(text.trim());
  const parts = ends ? [ends[1] ?? '', ends[2] ?? ''] : text.split(',');
  const raw = parts.map(patternOf);
  const last = raw.at(-1);
  if (!last || /(?:^|\s)to$/.test(text.trim()) || parts.some((part) => part.trim() === ''))
    return 'a range such as "3 mm to 8 mm" is missing';
  const patterns = raw.map((pattern) => withUnitOf(pattern, last));
  if (patterns.some(({ numbers }) => !numbers.every(Number.isFinite))) return 'a number is beyond all size';
  const continuous = patterns.length > 1 && patterns.every((pattern) => alike(pattern, last));
  if (ends && !continuous) return `"${parts[0]?.trim()}" and "${parts[1]?.trim()}" are no ends of one range`;
  const at = changing(patterns);
  if (spacing === 'log' && patterns.some(({ numbers }) => !((numbers[at] ?? 1) > 0)))
    return 'a logarithmic range needs numbers above zero';
  const patternAt = (position: number): Pattern => {
    const below = Math.min(Math.floor(position), patterns.length - 1);
    const low = patterns[below] ?? last;
    const high = patterns[below + 1] ?? low;
    const numbers = low.numbers.map((number, index) =>
      between(number, high.numbers[index] ?? number, position - below, spacing),
    );
    return { ...low, numbers: position === below ? low.numbers : numbers };
  };
  return {
    positions: positionsOf(ends !== null, patterns.length, points),
    continuous,
    unit: continuous ? (last.around.at(-1) ?? '').trim() : '',
    spacing,
    textAt: (position) => (continuous ? textOf(patternAt(position)) : (parts[position] ?? '').trim()),
    numberAt: (position) => (continuous ? (patternAt(position).numbers[at] ?? position) : position),
  };
}

/** A quantity of whatever kind in SI. */
export interface SiValue {
  /** In SI [unit]. */
  readonly value: number;
  /** Name of the SI unit; empty for a share. */
  readonly unit: string;
}

/** SI unit of each kind; a share has none. */
const SI_UNITS: Readonly<Record<KindName, string>> = {
  length: 'm',
  area: 'm2',
  flow: 'm3/s',
  pressure: 'Pa',
  power: 'W',
  temperature: 'K',
  temperatureDifference: 'K',
  speed: '1/s',
  level: 'dB(A)',
  decibel: 'dB',
  percent: '',
  thermalResistance: 'K/W',
  perKelvin: '1/K',
  conductivity: 'W/(m K)',
  conductance: 'W/K',
  linearLoss: 'Pa s/m3',
  quadraticLoss: 'Pa s2/m6',
  velocity: 'm/s',
  angle: 'rad',
  porosity: '1/m',
  current: 'A',
  voltage: 'V',
};

/**
 * What a text of one number with a unit is in SI; undefined if it is anything else.
 *
 * @param text such as "4.25 mm"
 * @param difference whether a temperature in it is one between two others
 */
export function anySi(text: string, difference = false): SiValue | undefined {
  const number = NUMBER.exec(text.trim())?.[0];
  if (number === undefined) return undefined;
  const rest = text.trim().slice(number.length).trim();
  if (rest === '') return { value: Number(number.replace('−', '-')), unit: '' };
  const names = Object.keys(kinds).filter((name): name is KindName => Object.hasOwn(kinds, name));
  const kind = names.find((name) => name !== (difference ? 'temperature' : '') && findUnit(name, rest));
  if (!kind) return undefined;
  const read = readQuantity(kind, text);
  return read.ok ? { value: read.value, unit: SI_UNITS[kind] } : undefined;
}
