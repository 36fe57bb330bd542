import type { MarginCell, MarginMatrix } from '../../questions/margin/margin.ts';
import type { HeldRoom } from '../../questions/margin/rescue.ts';
import { bandData } from '../bands/band-data.ts';
import { toCsv } from '../csv.ts';
import { type Document, documentOf, type Json, type Meta } from '../document.ts';
import { kelvinData } from '../tellable.ts';
import { operatingData, orNull } from './state-data.ts';

function conditionsData({ room, altitude, pressure, dust, dead, slower }: MarginCell): {
  readonly [key: string]: Json;
} {
  return {
    room_K: room,
    altitude_m: altitude ?? null,
    pressure_Pa: pressure,
    dust: dust ?? null,
    deadIn: dead ?? null,
    slower,
  };
}

function cellData(cell: MarginCell): Json {
  const { state, margin, sure, rescue, back } = cell;
  return {
    ...conditionsData(cell),
    margin_K: kelvinData(orNull(margin) ?? undefined),
    state: typeof state === 'string' ? null : operatingData(state),
    reason: typeof state === 'string' ? state : null,
    sure: sure && { margin_K: bandData(sure.margin), holding: sure.holding },
    rescue:
      rescue.kind === 'speeds'
        ? { ratios: rescue.ratios, level_dBA: orNull(rescue.level), lacks_K: null }
        : { ratios: null, level_dBA: null, lacks_K: kelvinData(orNull(rescue.lacks) ?? undefined) },
    backFlow_m3_s: orNull(back),
  };
}

function heldData({ atSet, atFull }: HeldRoom): Json {
  const room = (value: number | 'never' | 'always'): Json => value;
  return { atSet_K: room(atSet), atFull_K: room(atFull) };
}

/**
 * A matrix of margins as a document.
 *
 * @param title of the scenario
 * @param found the matrix
 * @param meta version, command and warnings
 */
export function marginDocument(title: string, found: MarginMatrix, meta: Meta): Document {
  const { duty, banks, ratios, cells, worst, held, flowFactors } = found;
  const result = {
    title,
    duty,
    banks: banks.map(({ place, fan, count }) => ({ place, fan, count })),
    ratios,
    cells: cells.map(cellData),
    worst,
    held: { asDrawn: heldData(held.asDrawn), worst: heldData(held.worst) },
    flowFactors: flowFactors.map(({ pressure, altitude, factor }) => ({
      altitude_m: altitude ?? null,
      pressure_Pa: pressure,
      factor,
    })),
  };
  return documentOf(result, meta);
}

/**
 * A matrix of margins as comma-separated values, in SI: a row a cell.
 *
 * @param found the matrix
 */
export function marginCsv({ banks, cells }: MarginMatrix): string {
  const heads = [
    'room [K]',
    'altitude [m]',
    'pressure [Pa]',
    'dust [1]',
    'one fan dead in',
    'fans slower by [1]',
    'margin [K]',
    'tightest',
    ...banks.map(({ place }) => `speed of ${place} that holds [1]`),
    'lacking at full speed [K]',
    'back flow [m3/s]',
    'reason',
    'margin from [K]',
    'margin to [K]',
    'limits hold [1]',
  ];
  return toCsv(
    heads,
    cells.map((cell) => [
      cell.room,
      cell.altitude ?? null,
      cell.pressure,
      cell.dust ?? null,
      cell.dead ?? null,
      cell.slower,
      orNull(cell.margin),
      typeof cell.state === 'string' ? null : (cell.state.tightest?.subject ?? null),
      ...banks.map((_, index) =>
        cell.rescue.kind === 'speeds' ? (cell.rescue.ratios[index] ?? null) : null,
      ),
      cell.rescue.kind === 'none' ? orNull(cell.rescue.lacks) : null,
      orNull(cell.back),
      typeof cell.state === 'string' ? cell.state : null,
      orNull(cell.sure?.margin.low),
      orNull(cell.sure?.margin.high),
      orNull(cell.sure?.holding),
    ]),
  );
}
