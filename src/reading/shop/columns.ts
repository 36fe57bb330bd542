import { nearestName } from '../../quantities/nearest.ts';
import type { KindName } from '../../quantities/unit-table.ts';
import { findUnit } from '../../quantities/units.ts';
import type { CsvTable } from './csv-table.ts';

/** What a column may hold: a kind of quantity, a plain number or text. */
type Holds = KindName | 'number' | 'text';

/** Columns that are understood: what they hold, and the names people give them. */
const COLUMNS = {
  fan: { holds: 'text', names: ['fan', 'id', 'model', 'name', 'part', 'article', 'sku', 'item'] },
  size: { holds: 'length', names: ['size', 'frame', 'frame size', 'dimensions', 'width'] },
  depth: { holds: 'length', names: ['depth', 'thickness', 'height'] },
  flow: {
    holds: 'flow',
    names: ['flow', 'air flow', 'airflow', 'volume flow', 'free delivery', 'air volume'],
  },
  pressure: { holds: 'pressure', names: ['pressure', 'static pressure', 'shut off', 'shutoff'] },
  level: {
    holds: 'level',
    names: ['level', 'noise', 'noise level', 'sound', 'sound level', 'sound pressure', 'spl'],
  },
  distance: { holds: 'length', names: ['distance', 'measured at', 'noise distance'] },
  speed: { holds: 'speed', names: ['speed', 'rated speed', 'full speed', 'rotation', 'rpm'] },
  power: { holds: 'power', names: ['power', 'power consumption', 'input power', 'watts', 'wattage'] },
  voltage: { holds: 'voltage', names: ['voltage', 'volts'] },
  current: { holds: 'current', names: ['current', 'amps'] },
  price: { holds: 'number', names: ['price', 'cost'] },
  blades: { holds: 'number', names: ['blades', 'blade count'] },
  hold: { holds: 'percent', names: ['hold', 'least speed'] },
  start: { holds: 'percent', names: ['start', 'start speed'] },
  note: { holds: 'text', names: ['note', 'notes', 'remark', 'remarks', 'comment'] },
} as const satisfies Record<string, { readonly holds: Holds; readonly names: readonly string[] }>;

/** Name of a column that is understood. */
export type ColumnName = keyof typeof COLUMNS;

/** Names that say the unit as well. */
const UNIT_NAMES: Readonly<Record<string, readonly [ColumnName, string]>> = {
  rpm: ['speed', 'rpm'],
  cfm: ['flow', 'CFM'],
  watts: ['power', 'W'],
  wattage: ['power', 'W'],
  volts: ['voltage', 'V'],
  amps: ['current', 'A'],
};

/** Where a column stands and the unit its head names. */
export interface Column {
  readonly index: number;
  /** Unit of the cells that have none of their own; empty if the head names none. */
  readonly unit: string;
}

/** Columns of a table by what they hold. */
export interface Columns {
  readonly known: ReadonlyMap<ColumnName, Column>;
  /** Heads that are not understood, each with the name it is nearest to. */
  readonly unused: readonly { readonly head: string; readonly index: number; readonly near?: string }[];
}

const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ')
    .trim();

/** The unit in a rest such as "[m³/h]", "(CFM)", ", dB(A)" or "/ mm". */
function unitIn(rest: string): string {
  const bare = rest
    .trim()
    .replace(/^[,:/]\s*/, '')
    .trim();
  const wrapped = /^[[(](.*)[\])]$/.exec(bare);
  return (wrapped?.[1] ?? bare).trim();
}

/** The columns a head may name, with the unit that is left over: the longest name first. */
function columnOf(head: string): { readonly name: ColumnName; readonly unit: string } | undefined {
  const implied = UNIT_NAMES[plain(head)];
  if (implied) return { name: implied[0], unit: implied[1] };
  const words = head.replace(/[_-]+/g, ' ').trim();
  const candidates = Object.entries(COLUMNS).flatMap(([name, { names, holds }]) =>
    names.map((spelling) => ({ name: name as ColumnName, spelling, holds: holds as Holds })),
  );
  const sorted = candidates.toSorted((one, other) => other.spelling.length - one.spelling.length);
  for (const { name, spelling, holds } of sorted) {
    if (!words.toLowerCase().startsWith(spelling)) continue;
    const rest = words.slice(spelling.length);
    if (rest === '') return { name, unit: '' };
    if (/^\w/.test(rest)) continue;
    const unit = unitIn(rest);
    if (holds === 'number' || holds === 'text' || findUnit(holds, unit)) {
      return { name, unit: holds === 'number' || holds === 'text' ? '' : unit };
    }
  }
  return undefined;
}

/**
 * Which column of a table holds what, told from its first row.
 *
 * @param table as read
 */
export function columnsOf({ header }: CsvTable): Columns {
  const known = new Map<ColumnName, Column>();
  const unused: { head: string; index: number; near?: string }[] = [];
  const names = Object.values(COLUMNS).flatMap((column) => [...column.names]);
  for (const [index, head] of header.cells.entries()) {
    const found = columnOf(head);
    if (found && !known.has(found.name)) known.set(found.name, { index, unit: found.unit });
    else if (head !== '') {
      const near = found ? undefined : nearestName(plain(head), names);
      unused.push({ head, index, ...(near === undefined ? {} : { near }) });
    }
  }
  return { known, unused };
}
