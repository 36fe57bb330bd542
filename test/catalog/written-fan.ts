import { readdirSync, readFileSync } from 'node:fs';
import { load } from 'js-yaml';

/** A rating as a free-field level at 1 m. */
export interface WrittenRating {
  /** Speed [1/s]. */
  readonly speed: number;
  /** A-weighted level at 1 m [dB]. */
  readonly level: number;
  /** False if the distance of a level is not given. */
  readonly basisStated: boolean;
}

/** A fan of a catalog file in SI, read without the project's own reader so that the two can be compared. */
export interface WrittenFan {
  readonly id: string;
  /** The id without its speed letter: fans of one line differ only in speed. */
  readonly line: string;
  /** Frame side and depth [mm]. */
  readonly size: number;
  readonly depth: number;
  /** Full speed [1/s]. */
  readonly speed: number;
  /** Shares of full speed [-]. */
  readonly hold: number;
  readonly start: number;
  /** Flows [m³/s] and pressures [Pa]; of a fan with box figures only, the two ends of the curve. */
  readonly flows: readonly number[];
  readonly pressures: readonly number[];
  readonly boxOnly: boolean;
  readonly ratings: readonly WrittenRating[];
  /** Electrical power [W]. */
  readonly power: number;
  readonly price: number;
  readonly blades: number;
}

/** A catalog file: its name, its text, its marks and its fans. */
export interface WrittenFamily {
  readonly file: string;
  readonly text: string;
  readonly family: unknown;
  readonly provenance: unknown;
  readonly fans: readonly WrittenFan[];
}

const folder = new URL('../../catalog/', import.meta.url);

/** All shipped catalog files, in order of their names. */
export function shippedFamilies(): WrittenFamily[] {
  const files = readdirSync(folder)
    .filter((file) => file.endsWith('.yaml'))
    .sort((a, b) => (a < b ? -1 : 1));
  return files.map((file) => familyOf(file, readFileSync(new URL(file, folder), 'utf8')));
}

/** Reads the text of one catalog file; throws on a figure without its unit. */
export function familyOf(file: string, text: string): WrittenFamily {
  const document = record(load(text));
  const fans = list(document['fans']).map((fan) => fanOf(record(fan)));
  return { file, text, family: document['family'], provenance: document['provenance'], fans };
}

function fanOf(written: Record<string, unknown>): WrittenFan {
  const id = String(written['fan']);
  return {
    id,
    line: id.replace(/-[a-z]$/, ''),
    size: figure(written['size'], 'mm'),
    depth: figure(written['depth'], 'mm'),
    speed: figure(written['speed'], 'rpm') / 60,
    hold: figure(written['hold'], '%') / 100,
    start: figure(written['start'], '%') / 100,
    ...pointsOf(written),
    ratings: list(written['noise']).map((rating) => ratingOf(record(rating))),
    power: figure(written['power'], 'W'),
    price: Number(written['price']),
    blades: Number(written['blades']),
  };
}

function pointsOf(written: Record<string, unknown>): Pick<WrittenFan, 'flows' | 'pressures' | 'boxOnly'> {
  const boxOnly = written['curve'] === undefined;
  const source = record(boxOnly ? written['box'] : written['curve']);
  const flows = figures(source['flow'], 'm³/h').map((flow) => flow / 3600);
  const pressures = figures(source['pressure'], 'Pa');
  return boxOnly
    ? { boxOnly, flows: [0, ...flows], pressures: [...pressures, 0] }
    : { boxOnly, flows, pressures };
}

/**
 * Free-field level at 1 m. Published: Lp = Lw - 10 lg 4π - 20 lg r for a point source; a declared power
 * level in bels (ISO 9296:1988) is a statistical maximum, 3 dB above the mean (ISO 9296:2017, Kv).
 * A level without its distance is taken at 1 m; common practice, no source.
 */
function ratingOf(written: Record<string, unknown>): WrittenRating {
  const speed = figure(written['speed'], 'rpm') / 60;
  if (written['power-level'] !== undefined) {
    const declared = written['declared'] === true ? 3 : 0;
    const power = 10 * figure(written['power-level'], 'B') - declared;
    return { speed, level: power - 10 * Math.log10(4 * Math.PI), basisStated: true };
  }
  const distance = written['distance'] === undefined ? 1 : figure(written['distance'], 'm');
  const level = figure(written['level'], 'dB(A)') + 20 * Math.log10(distance);
  return { speed, level, basisStated: written['distance'] !== undefined };
}

function figure(written: unknown, unit: string): number {
  const [value, ...more] = figures(written, unit);
  if (value === undefined || more.length > 0) {
    throw new Error(`one figure in ${unit} wanted, found ${String(written)}`);
  }
  return value;
}

function figures(written: unknown, unit: string): number[] {
  const text = String(written);
  const values = text
    .slice(0, -unit.length - 1)
    .split(' ')
    .map(Number);
  if (!text.endsWith(` ${unit}`) || !values.every(Number.isFinite)) {
    throw new Error(`figures in ${unit} wanted, found ${text}`);
  }
  return values;
}

function record(value: unknown): Record<string, unknown> {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    throw new Error(`a mapping wanted, found ${JSON.stringify(value)}`);
  }
  return Object.fromEntries(Object.entries(value));
}

function list(value: unknown): unknown[] {
  if (!Array.isArray(value)) {
    throw new Error(`a list wanted, found ${JSON.stringify(value)}`);
  }
  return value;
}
