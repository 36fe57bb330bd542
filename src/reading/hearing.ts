import { z } from 'zod';
import type { ElementOption } from '../enclosure/enclosure.ts';
import { type Hearing, STANDS, type Stand } from '../enclosure/hearing.ts';
import { nearestName } from '../quantities/nearest.ts';
import { bounded, positive, written } from '../quantities/written.ts';
import { check, type Findings, type WrittenMap } from './findings.ts';
import { misspelt } from './form-issues.ts';
import type { Path } from './problem.ts';

/** Fields of a place that say how it lies to the listener. */
export const hearingFields = {
  distance: positive(written.length).optional(),
  directivity: bounded(
    written.decibel,
    'a directivity from -20 dB to 20 dB',
    (decibels) => decibels >= -20 && decibels <= 20,
  ).optional(),
};

const hearingForm = z.strictObject(hearingFields);

/** Form of where a box stands in its room. */
export const standForm = z.enum(Object.keys(STANDS) as [Stand, ...Stand[]]);

/**
 * How a place lies to the listener, from its checked fields.
 *
 * @param given distance [m] and directivity [dB], as far as they are stated
 * @returns undefined if nothing is stated
 */
export function hearingOf(given: z.output<typeof hearingForm>): Hearing | undefined {
  const { distance, directivity } = given;
  if (distance === undefined && directivity === undefined) return undefined;
  return {
    ...(distance === undefined ? {} : { distance }),
    ...(directivity === undefined ? {} : { directivity }),
  };
}

/** The fields of an element's place and those of the element itself. */
interface SplitFields {
  readonly heard: WrittenMap;
  readonly own: WrittenMap;
}

/**
 * Takes the fields that belong to the place of an element, not to the element, out of what is written.
 *
 * @param fields as written
 * @param known keys of the element
 * @param path of the fields
 * @param findings receives misspelt keys of the place
 */
export function splitHearing(
  fields: WrittenMap,
  known: readonly string[],
  path: Path,
  findings: Findings,
): SplitFields {
  const keys = Object.keys(hearingFields);
  const heard: [string, unknown][] = [];
  const own: [string, unknown][] = [];
  for (const [key, value] of Object.entries(fields)) {
    const free = keys.filter((each) => !Object.hasOwn(fields, each));
    const strange = !known.includes(key) && !keys.includes(key) && !nearestName(key, known);
    const meant = strange ? nearestName(key, free) : undefined;
    if (meant) findings.push(misspelt(key, meant, [...path, key]));
    else if (keys.includes(key)) heard.push([key, value]);
    else own.push([key, value]);
  }
  return { heard: Object.fromEntries(heard), own: Object.fromEntries(own) };
}

/**
 * Reads how the place of an element lies to the listener.
 *
 * @param heard fields as written
 * @param options what may stand there
 * @param path of the place
 * @param findings receives what is wrong
 * @returns undefined if nothing is stated
 */
export function readHearing(
  heard: WrittenMap,
  options: readonly ElementOption[],
  path: Path,
  findings: Findings,
): Hearing | undefined {
  const given = check(hearingForm, heard, path, findings);
  const hearing = given && hearingOf(given);
  if (hearing && options.every(({ element }) => element.ventFace === undefined)) {
    const [key = ''] = Object.keys(heard);
    const message = `this makes no noise of its own, so there is nothing to say of its ${key}`;
    findings.push({ code: 'conflict', path: [...path, key], at: 'key', message });
  }
  return hearing;
}
