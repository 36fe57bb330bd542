import { z } from 'zod';
import { type Limit, OUTSIDE, type Part, type Place, type Seat } from '../enclosure/enclosure.ts';
import type { Kelvins } from '../quantities/dimensions.ts';
import { bounded, notNegative, positive, written } from '../quantities/written.ts';
import { check, type Findings, itemsOf } from './findings.ts';
import { valueAt } from './form-tree.ts';
import { name } from './name.ts';
import { distinctNames, refuseUnknown } from './name-findings.ts';

/** Part temperature at which a power is taken to hold if nothing is said [K]: 50 °C. Assumption, no source. */
const USUAL_POWER_AT: Kelvins = 323.15;

const limitForm = z.union([
  written.temperature,
  z
    .strictObject({ part: written.temperature.optional(), air: written.temperature.optional() })
    .refine(({ part, air }) => part !== undefined || air !== undefined, {
      error: 'a limit needs a temperature of the part, of the air, or both',
    }),
]);

/** Form of one entry of `heat`. */
export const partForm = z
  .strictObject({
    part: name,
    power: positive(written.power),
    on: name.optional(),
    in: name.optional(),
    fixed: notNegative(written.thermalResistance).default(0),
    slope: bounded(written.perKelvin, 'from -10 %/K to 10 %/K', (slope) => Math.abs(slope) <= 0.1).default(0),
    at: written.temperature.default(USUAL_POWER_AT),
    limit: limitForm.optional(),
  })
  .superRefine((part, context) => {
    if ((part.on === undefined) !== (part.in === undefined)) return;
    const message = 'a part sits on fins ("on: ...") or in a chamber ("in: ..."): give one of the two';
    context.addIssue({ code: 'custom', path: part.in === undefined ? [] : ['in'], message });
  });

type PartFields = z.output<typeof partForm>;

/** What parts may sit on or in; names are known even where the thing itself could not be read. */
export interface Seats {
  readonly placeNames: readonly string[];
  /** Places that could be read, under their names. */
  readonly places: ReadonlyMap<string, Place>;
  /** Index 0 is outside. */
  readonly chambers: readonly string[];
}

/** The parts of a scenario. */
export interface PartsSection {
  /** All names, also of parts that could not be read. */
  readonly names: readonly string[];
  /** In the order of the file; undefined where one could not be read. */
  readonly parts: readonly (Part | undefined)[];
}

/**
 * Reads `heat`.
 *
 * @param value as written
 * @param seats what parts may sit on or in
 * @param findings receives what is wrong
 */
export function readParts(value: unknown, seats: Seats, findings: Findings): PartsSection {
  const items = itemsOf(value, ['heat'], findings);
  const names = distinctNames('part', 'part', items, ['heat'], findings);
  const parts = items.map((item, index) => {
    const fields = check(partForm, item, ['heat', index], findings);
    const seat = fields && readSeat(fields, index, seats, findings);
    return seat && { ...partOf(fields), seat };
  });
  return { names, parts };
}

/**
 * Refuses limits that the room alone exceeds.
 *
 * @param value `heat` as written
 * @param parts as read
 * @param hottest room temperature of all duties [K]
 * @param findings receives what is wrong
 */
export function checkLimits(
  value: unknown,
  parts: readonly (Part | undefined)[],
  hottest: Kelvins,
  findings: Findings,
): void {
  for (const [index, part] of parts.entries()) {
    for (const limit of part?.limits ?? []) {
      if (limit.temperature > hottest) continue;
      const plain = typeof valueAt(value, [index, 'limit']) === 'string';
      findings.push({
        code: 'out-of-range',
        path: ['heat', index, 'limit', ...(plain ? [] : [limit.of])],
        at: 'value',
        message: 'this limit is not above the hottest room temperature, so nothing can hold it',
        found: celsius(limit.temperature),
        expected: `more than ${celsius(hottest)}`,
      });
    }
  }
}

function celsius(kelvins: Kelvins): string {
  return `${Number((kelvins - 273.15).toFixed(2))} °C`;
}

function partOf(fields: PartFields): Omit<Part, 'seat'> {
  return {
    id: fields.part,
    power: fields.power,
    slope: fields.slope,
    powerAt: fields.at,
    resistance: fields.fixed,
    limits: limitsOf(fields.limit),
  };
}

function limitsOf(limit: PartFields['limit']): readonly Limit[] {
  if (limit === undefined) return [];
  if (typeof limit === 'number') return [{ of: 'part', temperature: limit }];
  const limits: Limit[] = [];
  if (limit.part !== undefined) limits.push({ of: 'part', temperature: limit.part });
  if (limit.air !== undefined) limits.push({ of: 'air', temperature: limit.air });
  return limits;
}

function readSeat(fields: PartFields, index: number, seats: Seats, findings: Findings): Seat | undefined {
  if (fields.on !== undefined) return finsSeat(fields.on, index, seats, findings);
  const chamber = seats.chambers.indexOf(fields.in ?? '');
  if (chamber > OUTSIDE) return { kind: 'chamber', chamber };
  const path = ['heat', index, 'in'];
  refuseUnknown('chamber', fields.in ?? '', seats.chambers.slice(OUTSIDE + 1), path, findings);
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
