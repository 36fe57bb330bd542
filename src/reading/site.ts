import { z } from 'zod';
import { pressureAtAltitude } from '../air/air.ts';
import type { Enclosure } from '../enclosure/enclosure.ts';
import type { Kelvins } from '../quantities/dimensions.ts';
import { bounded, positive, written } from '../quantities/written.ts';
import { check, type Findings } from './findings.ts';
import { standForm } from './hearing.ts';

/** Room air that is neither dry nor damp [-]. Common practice, no source. */
const USUAL_HUMIDITY = 0.5;

/** Rounding of a temperature that was written in another unit [K]. */
const ROUNDING: Kelvins = 1e-6;

/** A room temperature somebody may meet: the fan laws and air tables hold there. */
export const roomTemperature = bounded(
  written.temperature,
  'a room temperature from -40 °C to 70 °C',
  (kelvins) => kelvins >= 233.15 - ROUNDING && kelvins <= 343.15 + ROUNDING,
);

/** Form of `site`: temperature of the room, and altitude or pressure. */
export const siteForm = z
  .strictObject({
    room: roomTemperature,
    altitude: bounded(
      written.length,
      'an altitude from -500 m to 9000 m',
      (metres) => metres >= -500 && metres <= 9000,
    ).optional(),
    pressure: bounded(
      written.pressure,
      'an air pressure from 30 kPa to 110 kPa',
      (pascals) => pascals >= 30_000 && pascals <= 110_000,
    ).optional(),
    humidity: bounded(
      written.percent,
      'a humidity from 0 % to 100 %',
      (share) => share >= 0 && share <= 1,
    ).default(USUAL_HUMIDITY),
  })
  .refine(({ altitude, pressure }) => altitude === undefined || pressure === undefined, {
    error: 'give the altitude or the pressure, not both',
    path: ['pressure'],
  });

/**
 * Form of `listener`: where somebody sits, how loud it is there without the fans, and what room is around them and the
 * box.
 */
export const listenerForm = z.strictObject({
  distance: positive(written.length),
  background: bounded(
    written.level,
    'a level from 0 dB(A) to 120 dB(A)',
    (level) => level >= 0 && level <= 120,
  ).optional(),
  place: standForm.optional(),
  absorption: positive(written.area).optional(),
});

/** Where the enclosure stands. */
export interface SiteSection {
  readonly site: Enclosure['site'];
  readonly room: Kelvins;
}

/**
 * Reads `site`.
 *
 * @param value as written
 * @param findings receives what is wrong
 */
export function readSite(value: unknown, findings: Findings): SiteSection | undefined {
  const given = check(siteForm, value, ['site'], findings);
  if (!given) return undefined;
  const pressure = given.pressure ?? pressureAtAltitude(given.altitude ?? 0);
  return { site: { pressure, relativeHumidity: given.humidity }, room: given.room };
}

/**
 * Reads `listener`.
 *
 * @param value as written
 * @param findings receives what is wrong
 */
export function readListener(value: unknown, findings: Findings): Enclosure['listener'] | undefined {
  const given = check(listenerForm, value, ['listener'], findings);
  if (!given) return undefined;
  const { distance, background, place, absorption } = given;
  return {
    distance,
    ...(background === undefined ? {} : { background }),
    ...(place === undefined ? {} : { stand: place }),
    ...(absorption === undefined ? {} : { absorption }),
  };
}
