import type { Decibels } from '../quantities/dimensions.ts';
import type { KindName, Unit } from '../quantities/unit-table.ts';
import { inUnit, usualUnit } from '../quantities/units.ts';
import { MOST_TOLD } from './tellable.ts';

/** What stands where there is no number. */
export const NONE = '–';

const SILENT = 'silent';

/** From here on the digits of a number are grouped by spaces. */
const GROUPED_FROM = 10_000;

interface Figure {
  readonly kind: KindName;
  /** Digits after the point; negative for zeros before it. */
  readonly decimals: number;
  /** Told as no more than this, in the usual unit; any if absent. */
  readonly most?: number;
}

/** How finely each quantity is shown, in the usual unit of its kind. */
const figures = {
  level: { kind: 'level', decimals: 1 },
  temperature: { kind: 'temperature', decimals: 1, most: MOST_TOLD },
  kelvins: { kind: 'temperatureDifference', decimals: 1, most: MOST_TOLD },
  flow: { kind: 'flow', decimals: 1 },
  pressure: { kind: 'pressure', decimals: 1 },
  power: { kind: 'power', decimals: 1 },
  percent: { kind: 'percent', decimals: 0 },
  rpm: { kind: 'speed', decimals: -1 },
} as const satisfies Record<string, Figure>;

/** A quantity that is shown to people. */
export type FigureName = keyof typeof figures;

/**
 * A number with a fixed number of decimals; zero has no sign, digits are grouped from 10 000 on.
 *
 * @param value any; what is not finite becomes a dash
 * @param decimals digits after the point; −1 rounds to tens
 */
export function fixed(value: number, decimals: number): string {
  if (!Number.isFinite(value)) return NONE;
  const scale = 10 ** Math.max(0, -decimals);
  const text = (Math.round(value / scale) * scale).toFixed(0);
  const digits = decimals > 0 ? value.toFixed(decimals) : text;
  const unsigned = Number(digits) === 0 ? digits.replace('-', '') : digits;
  if (Math.abs(Number(digits)) < GROUPED_FROM) return unsigned;
  const [whole = '', fraction] = unsigned.split('.');
  const grouped = whole.replace(/\B(?=(?:\d{3})+$)/g, ' ');
  return fraction === undefined ? grouped : `${grouped}.${fraction}`;
}

/** A whole number, for example of builds. */
export function count(value: number): string {
  return fixed(value, 0);
}

/**
 * A quantity as a bare number in the unit it is shown in.
 *
 * @param name of the quantity
 * @param value in SI
 */
export function figure(name: FigureName, value: number): string {
  const { kind, decimals, most = Number.POSITIVE_INFINITY }: Figure = figures[name];
  const shown = inUnit(usualUnit(kind), value);
  if (Number.isFinite(shown) && Math.abs(shown) >= most) return shown > 0 ? `> ${most}` : `< -${most}`;
  return fixed(shown, decimals);
}

/**
 * A quantity with its unit.
 *
 * @param name of the quantity
 * @param value in SI
 */
export function quantity(name: FigureName, value: number): string {
  return `${figure(name, value)} ${unitOf(name).name}`;
}

/** A level as a bare number; no sound at all has none. */
export function levelText(level: Decibels): string {
  return level === Number.NEGATIVE_INFINITY ? SILENT : figure('level', level);
}

/** A level with its unit; no sound at all has none. */
export function levelWords(level: Decibels): string {
  return level === Number.NEGATIVE_INFINITY ? SILENT : quantity('level', level);
}

/** The unit a quantity is shown in. */
export function unitOf(name: FigureName): Unit {
  return usualUnit(figures[name].kind);
}

/** Digits after the point with which a quantity is shown. */
export function decimalsOf(name: FigureName): number {
  return figures[name].decimals;
}

/**
 * A number that must not be shown smaller than it is, with two significant digits.
 *
 * @param value ≥ 0, finite
 */
export function atMost(value: number): string {
  if (value <= 0) return '0';
  const decimals = 1 - Math.floor(Math.log10(value));
  // A value that is a hair above a round one through arithmetic counts as the round one.
  const up = Math.ceil(value * 10 ** decimals - 1e-6) / 10 ** decimals;
  return String(Number(up.toPrecision(2)));
}

/**
 * Prices as plain numbers: all whole if they are, else all with two decimals.
 *
 * @param values in the user's currency; undefined if unknown
 */
export function prices(values: readonly (number | undefined)[]): readonly string[] {
  const decimals = values.every((value) => value === undefined || Number.isInteger(value)) ? 0 : 2;
  return values.map((value) => (value === undefined ? NONE : fixed(value, decimals)));
}
