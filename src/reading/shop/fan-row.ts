import { curveFromBox } from '../../fan/box-figures.ts';
import type { Fraction } from '../../quantities/dimensions.ts';
import { readQuantity } from '../../quantities/units.ts';
import type { WrittenMap } from '../findings.ts';
import { type Cells, frameAt, idFrom, numberAt, quantityAt, textAt } from './cells.ts';

/** Best air power over electrical power of a fan about which nothing is said [-]. Common practice, no source: 0.04 to 0.3. */
const ASSUMED_EFFICIENCY: Fraction = 0.15;

/** Points of a curve as a catalog has them. */
export interface WrittenCurve {
  readonly flow: string;
  readonly pressure: string;
}

/** Keeps what is there. */
function present(entries: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(entries).filter(([, value]) => value !== undefined));
}

function siOf(
  kind: 'flow' | 'pressure' | 'voltage' | 'current',
  text: string | undefined,
): number | undefined {
  const read = text === undefined ? undefined : readQuantity(kind, text);
  return read?.ok ? read.value : undefined;
}

/** Electrical power: as listed, from voltage and current, or an estimate from the power in the air. */
function powerOf(cells: Cells): { readonly power?: string; readonly estimated?: string } {
  const listed = quantityAt(cells, 'power');
  if (listed !== undefined) return { power: listed };
  const volts = siOf('voltage', quantityAt(cells, 'voltage'));
  const amps = siOf('current', quantityAt(cells, 'current'));
  if (volts !== undefined && amps !== undefined)
    return { power: `${Number((volts * amps).toPrecision(3))} W` };
  const flow = siOf('flow', quantityAt(cells, 'flow'));
  const pressure = siOf('pressure', quantityAt(cells, 'pressure'));
  if (!(flow !== undefined && pressure !== undefined && flow > 0 && pressure > 0)) return {};
  const { flows, pressures } = curveFromBox(flow, pressure).raw;
  const air = Math.max(...flows.map((each, index) => each * (pressures[index] ?? 0)));
  const share = `${100 * ASSUMED_EFFICIENCY} %`;
  return {
    power: `${Number((air / ASSUMED_EFFICIENCY).toPrecision(2))} W`,
    estimated: `power estimated: the power in the air is taken to be ${share} of it`,
  };
}

/**
 * A fan as a catalog would have it, from a row of a shop's list.
 *
 * @param cells of the row
 * @param curveOf points of a fan by its id, if there are any
 * @returns a map as it would be written; what the row lacks is not in it
 */
export function fanOfRow(cells: Cells, curveOf: (id: string) => WrittenCurve | undefined): WrittenMap {
  const listed = textAt(cells, 'fan');
  const id = listed === undefined ? undefined : idFrom(listed);
  const curve = id === undefined ? undefined : curveOf(id);
  const box = present({ flow: quantityAt(cells, 'flow'), pressure: quantityAt(cells, 'pressure') });
  const level = quantityAt(cells, 'level');
  const rating = present({ level, distance: quantityAt(cells, 'distance') });
  const { power, estimated } = powerOf(cells);
  const notes = [textAt(cells, 'note'), listed === id ? undefined : `listed as ${listed}`, estimated];
  const note = notes.filter((part) => part !== undefined).join('; ');
  return present({
    fan: id,
    ...frameAt(cells),
    speed: quantityAt(cells, 'speed'),
    hold: quantityAt(cells, 'hold'),
    start: quantityAt(cells, 'start'),
    ...(curve ? { curve } : { box }),
    noise: level === undefined ? undefined : [rating],
    power,
    price: numberAt(cells, 'price'),
    blades: numberAt(cells, 'blades'),
    provenance: curve ? 'datasheet' : 'box',
    note: note === '' ? undefined : note,
  });
}
