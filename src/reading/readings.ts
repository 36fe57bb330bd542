import { z } from 'zod';
import type { NamedBuild, Place } from '../enclosure/enclosure.ts';
import type { Fraction, Kelvins, Watts } from '../quantities/dimensions.ts';
import { bounded, positive, written } from '../quantities/written.ts';
import { check, type Findings, itemsOf } from './findings.ts';
import { name, names } from './name.ts';
import { distinctNames, refuseUnknown, unknownName } from './name-findings.ts';
import type { Path } from './problem.ts';
import { roomTemperature } from './site.ts';

/** What was measured on a prototype in one state. */
export interface Reading {
  readonly id: string;
  /** Index into the enclosure's builds. */
  readonly build: number;
  /** Indices into `places` of what was taken out. */
  readonly without: readonly number[];
  /** Speed of each place's fans as a share of full speed [-], order of `places`; 1 where no fans stand. */
  readonly speeds: readonly Fraction[];
  /** Power the whole box draws from the wall [W]. */
  readonly wall?: Watts;
  readonly room: Kelvins;
  readonly probes: readonly Probe[];
}

/** A measured temperature: of a part, or of the air in a chamber. */
interface Probe {
  readonly of: 'part' | 'chamber';
  /** Index into the enclosure's parts or chambers. */
  readonly index: number;
  readonly temperature: Kelvins;
}

const speed = bounded(written.percent, 'more than 0 %, at most 100 %', (share) => share > 0 && share <= 1);

/** Form of one entry of `readings`. */
export const readingForm = z
  .strictObject({
    reading: name,
    build: name,
    without: names.default([]),
    speed: z.union([speed, z.record(name, speed)]).default(1),
    wall: positive(written.power).optional(),
    room: roomTemperature.optional(),
    probe: z.record(name, written.temperature).default({}),
  })
  .refine(({ wall, probe }) => wall !== undefined || Object.keys(probe).length > 0, {
    error: 'nothing was measured: give a probe temperature or the wall power',
  });

type ReadingFields = z.output<typeof readingForm>;

/** What readings refer to. */
export interface ReadingContext {
  readonly placeNames: readonly string[];
  readonly places: ReadonlyMap<string, Place>;
  readonly builds: readonly NamedBuild[];
  readonly partNames: readonly string[];
  readonly chambers: readonly string[];
  /** Room temperature where a reading names none [K]. */
  readonly room: Kelvins;
}

/**
 * Reads `readings`.
 *
 * @param value as written
 * @param context what they refer to
 * @param findings receives what is wrong
 */
export function readReadings(
  value: unknown,
  context: ReadingContext,
  findings: Findings,
): readonly Reading[] {
  const items = itemsOf(value, ['readings'], findings);
  distinctNames('reading', 'reading', items, ['readings'], findings);
  return items.flatMap((item, index) => {
    const path = ['readings', index];
    const fields = check(readingForm, item, path, findings);
    return fields ? [readReading(fields, path, context, findings)] : [];
  });
}

function readReading(
  fields: ReadingFields,
  path: Path,
  context: ReadingContext,
  findings: Findings,
): Reading {
  const ids = context.builds.map(({ id }) => id);
  const { wall } = fields;
  if (!ids.includes(fields.build)) findings.push(unknownName('build', fields.build, ids, [...path, 'build']));
  return {
    id: fields.reading,
    build: ids.indexOf(fields.build),
    without: fields.without.map((place, index) => {
      const { placeNames } = context;
      if (!placeNames.includes(place)) {
        refuseUnknown('element', place, placeNames, [...path, 'without', index], findings);
      }
      return placeNames.indexOf(place);
    }),
    speeds: speedsOf(fields.speed, [...path, 'speed'], context, findings),
    ...(wall === undefined ? {} : { wall }),
    room: fields.room ?? context.room,
    probes: probesOf(fields.probe, [...path, 'probe'], context, findings),
  };
}

function speedsOf(
  given: ReadingFields['speed'],
  path: Path,
  context: ReadingContext,
  findings: Findings,
): readonly Fraction[] {
  const banks = context.placeNames.filter((place) => context.places.get(place)?.kind === 'bank');
  if (typeof given === 'number') {
    return context.placeNames.map((place) => (banks.includes(place) ? given : 1));
  }
  const speeds = new Map(Object.entries(given));
  for (const bank of speeds.keys()) {
    // A bank that could not be read has been reported where it stands.
    const unread =
      context.places.size === 0 || (context.placeNames.includes(bank) && !context.places.has(bank));
    if (!unread && !banks.includes(bank))
      findings.push(unknownName('bank', bank, banks, [...path, bank], 'key'));
  }
  return context.placeNames.map((place) => speeds.get(place) ?? 1);
}

function probesOf(
  given: ReadingFields['probe'],
  path: Path,
  context: ReadingContext,
  findings: Findings,
): readonly Probe[] {
  const { partNames, chambers } = context;
  return Object.entries(given).flatMap(([where, temperature]): Probe[] => {
    const part = partNames.indexOf(where);
    if (part >= 0) return [{ of: 'part', index: part, temperature }];
    const chamber = chambers.indexOf(where);
    if (chamber >= 0) return [{ of: 'chamber', index: chamber, temperature }];
    const known = [...partNames, ...chambers];
    // Where a whole section is missing, that is the problem.
    const listed = partNames.length > 0 && chambers.length > 1;
    if (listed) findings.push(unknownName('part or chamber', where, known, [...path, where], 'key'));
    return [];
  });
}
