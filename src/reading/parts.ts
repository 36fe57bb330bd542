import { z } from 'zod';
import { OUTSIDE, type Part } from '../enclosure/enclosure.ts';
import type { Kelvins } from '../quantities/dimensions.ts';
import { bounded, positive, written } from '../quantities/written.ts';
import { check, type Findings, isMap, itemsOf } from './findings.ts';
import { fieldOnFins, heatPathFields, heatPathOf } from './heat-path-form.ts';
import { name } from './name.ts';
import { distinctNames } from './name-findings.ts';
import { limitForm, limitsOf } from './part-limits.ts';
import { ONE_SEAT, readSeat, type Seats } from './part-seat.ts';
import { checkWalls, supplyOf, supplyPartForm, type WallFields } from './supply-part.ts';

/** Part temperature at which a power is taken to hold if nothing is said [K]: 50 °C. Assumption, no source. */
const USUAL_POWER_AT: Kelvins = 323.15;

const MOST_GROWTH = 0.1;

const leakageForm = z
  .strictObject({
    power: positive(written.power),
    growth: bounded(
      written.perKelvin,
      'more than 0 %/K, at most 10 %/K',
      (growth) => growth > 0 && growth <= MOST_GROWTH,
    ),
  })
  .meta({
    description:
      'share of the power that grows exponentially with the temperature of the part, instead of slope',
  });

/** Form of an entry of `heat` whose power is known. */
export const partForm = z
  .strictObject({
    part: name,
    power: positive(written.power),
    on: name.optional(),
    in: name.optional(),
    slope: bounded(
      written.perKelvin,
      'from -10 %/K to 10 %/K',
      (slope) => Math.abs(slope) <= MOST_GROWTH,
    ).default(0),
    leakage: leakageForm.optional(),
    at: written.temperature.default(USUAL_POWER_AT),
    ...heatPathFields,
    limit: limitForm.optional(),
  })
  .superRefine((part, context) => {
    const refuse = (path: readonly string[], message: string) =>
      context.addIssue({ code: 'custom', path: [...path], message });
    if ((part.on === undefined) === (part.in === undefined)) {
      refuse(part.in === undefined ? [] : ['in'], ONE_SEAT);
    }
    const lost = part.in === undefined ? undefined : finsOnly(part);
    if (lost) refuse(lost, 'this makes sense only where a part sits on fins ("on: ...")');
    if (!part.leakage) return;
    if (part.slope !== 0) refuse(['leakage'], 'give the slope or the leakage, not both');
    if (part.leakage.power > part.power) {
      refuse(['leakage', 'power'], 'the leakage is a share of the power and cannot be more');
    }
  });

/** Form of one entry of `heat`, for editors. */
export const heatEntryForm = z.union([partForm, supplyPartForm]);

type PartFields = z.output<typeof partForm>;

/** Where a part in a chamber is given something that only fins have. */
function finsOnly(part: Omit<PartFields, 'part'>): readonly string[] | undefined {
  const field = fieldOnFins(part);
  if (field !== undefined) return [field];
  const probed = typeof part.limit === 'object' && part.limit.probe !== undefined;
  return probed ? ['limit', 'probe'] : undefined;
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
  const walls = new Map<number, WallFields>();
  const parts = items.map((item, index) =>
    isMap(item) && Object.hasOwn(item, 'wall')
      ? readSupply(item, index, seats, walls, findings)
      : readPart(item, index, seats, findings),
  );
  checkWalls(walls, parts, findings);
  return { names, parts };
}

function readPart(item: unknown, index: number, seats: Seats, findings: Findings): Part | undefined {
  const fields = check(partForm, item, ['heat', index], findings);
  const seat = fields && readSeat(fields, index, seats, OUTSIDE + 1, findings);
  return seat && { ...partOf(fields), seat };
}

function partOf(fields: PartFields): Omit<Part, 'seat'> {
  return {
    id: fields.part,
    power: fields.power,
    slope: fields.slope,
    powerAt: fields.at,
    ...(fields.leakage ? { leakage: fields.leakage } : {}),
    ...heatPathOf(fields),
    limits: limitsOf(fields.limit),
  };
}

function readSupply(
  item: unknown,
  index: number,
  seats: Seats,
  walls: Map<number, WallFields>,
  findings: Findings,
): Part | undefined {
  const fields = check(supplyPartForm, item, ['heat', index], findings);
  if (!fields) return undefined;
  walls.set(index, fields.wall);
  const seat = readSeat(fields, index, seats, OUTSIDE, findings);
  return (
    seat && {
      id: fields.part,
      ...supplyOf(fields.wall),
      slope: 0,
      powerAt: USUAL_POWER_AT,
      resistance: fields.fixed,
      limits: limitsOf(fields.limit),
      seat,
    }
  );
}
