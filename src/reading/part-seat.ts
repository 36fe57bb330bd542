import { OUTSIDE, type Place, type Seat } from '../enclosure/enclosure.ts';
import type { Findings } from './findings.ts';
import { refuseUnknown } from './name-findings.ts';

/** What parts may sit on or in; names are known even where the thing itself could not be read. */
export interface Seats {
  readonly placeNames: readonly string[];
  /** Places that could be read, under their names. */
  readonly places: ReadonlyMap<string, Place>;
  /** Index 0 is outside. */
  readonly chambers: readonly string[];
}

/** Where a part is written to sit: one of both. */
export interface SeatFields {
  readonly on?: string | undefined;
  readonly in?: string | undefined;
}

/** The message where neither or both are given. */
export const ONE_SEAT = 'a part sits on fins ("on: ...") or in a chamber ("in: ..."): give one of the two';

/**
 * Reads where a part sits.
 *
 * @param fields of the part
 * @param index of the part in `heat`
 * @param seats what there is to sit on or in
 * @param nearest the first chamber it may sit in: outside is for supplies only
 * @param findings receives what is wrong
 */
export function readSeat(
  fields: SeatFields,
  index: number,
  seats: Seats,
  nearest: number,
  findings: Findings,
): Seat | undefined {
  if (fields.on !== undefined) return finsSeat(fields.on, index, seats, findings);
  const chamber = seats.chambers.indexOf(fields.in ?? '');
  if (chamber >= nearest) return { kind: 'chamber', chamber };
  const path = ['heat', index, 'in'];
  // Where no chamber is known, that has been reported: outside alone is no list to choose from.
  const known = seats.chambers.length > OUTSIDE + 1 ? seats.chambers.slice(nearest) : [];
  refuseUnknown('chamber', fields.in ?? '', known, path, findings);
  return undefined;
}

function finsSeat(on: string, index: number, seats: Seats, findings: Findings): Seat | undefined {
  const path = ['heat', index, 'on'];
  const place = seats.placeNames.indexOf(on);
  if (place < 0) {
    refuseUnknown('element', on, seats.placeNames, path, findings);
    return undefined;
  }
  const there = seats.places.get(on);
  if (there && !carriesParts(there)) {
    findings.push({
      code: 'conflict',
      path,
      at: 'value',
      message: `"${on}" is no fin stack, so no part can sit on it`,
    });
    return undefined;
  }
  return { kind: 'fins', place };
}

function carriesParts(place: Place): boolean {
  return (
    place.kind === 'element' && place.options.every(({ element }) => element.finResistance !== undefined)
  );
}
