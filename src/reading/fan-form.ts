import { z } from 'zod';
import { MOUNTINGS, TURNS } from '../fan/fan-model.ts';
import { bounded, notNegative, positive, written } from '../quantities/written.ts';
import { FIELD_DIRECTIVITY, type SoundField } from '../sound/rating.ts';
import { OCTAVES } from '../sound/spectrum.ts';
import { name } from './name.ts';

/** Where the figures of a fan come from. */
export const provenance = z.enum(['measured', 'datasheet', 'box', 'invented']);

/** A fan's id stands in builds as "id x2", so it has no spaces. */
const fanId = name.regex(/^[A-Za-z0-9][\w.+-]*$/, 'a fan id has letters, digits and - . _ + only');

const share = bounded(
  written.percent,
  'more than 0 %, at most 100 %',
  (fraction) => fraction > 0 && fraction <= 1,
);
const level = bounded(
  written.level,
  'a level from 0 dB(A) to 120 dB(A)',
  (decibels) => decibels >= 0 && decibels <= 120,
);

/** Unweighted levels of the octaves from 63 Hz to 8 kHz. */
const octaves = bounded(
  written.decibelList,
  'levels from -40 dB to 120 dB',
  (decibels) => decibels >= -40 && decibels <= 120,
).refine((levels) => levels.length === OCTAVES.length, {
  error: `octaves are ${OCTAVES.length} levels, for ${OCTAVES.join(', ')} Hz`,
});

/** How the fan was mounted when it was rated. */
const mounted = z.enum(MOUNTINGS).default('free');

const pressureRating = z
  .strictObject({
    level: level.optional(),
    octaves: octaves.optional(),
    speed: positive(written.speed).optional(),
    distance: positive(written.length).optional(),
    field: z.enum(Object.keys(FIELD_DIRECTIVITY) as [SoundField, ...SoundField[]]).optional(),
    mounted,
  })
  .refine((rating) => rating.level !== undefined || rating.octaves !== undefined, {
    error: 'a rating has a "level", a "power-level" or "octaves"',
  });

const powerRating = z.strictObject({
  'power-level': level,
  octaves: octaves.optional(),
  declared: z.boolean().default(false),
  mounted,
  speed: positive(written.speed).optional(),
});

/** Form of one noise rating: sound pressure at a distance, or sound power. */
const ratingForm = z.union([pressureRating, powerRating]);

/** Form of one fan of a family. */
export const fanForm = z
  .strictObject({
    fan: fanId,
    size: positive(written.length),
    depth: positive(written.length),
    speed: positive(written.speed),
    hold: share.optional(),
    start: share.optional(),
    curve: z
      .strictObject({ flow: notNegative(written.flowList), pressure: notNegative(written.pressureList) })
      .optional(),
    box: z.strictObject({ flow: positive(written.flow), pressure: positive(written.pressure) }).optional(),
    noise: z.array(ratingForm).min(1),
    power: positive(written.power),
    price: written.price.optional(),
    blades: written.count.optional(),
    struts: written.count.optional(),
    turns: z.enum(TURNS).optional(),
    provenance: provenance.optional(),
    note: z.string().optional(),
  })
  .superRefine(({ curve, box }, context) => {
    if ((curve === undefined) !== (box === undefined)) return;
    const message =
      'a fan has either a curve of points or the two figures on its box: give one of "curve" and "box"';
    context.addIssue({ code: 'custom', path: curve === undefined ? [] : ['box'], message });
  });

/** Form of a family file. */
export const familyForm = z.strictObject({
  family: name,
  provenance,
  note: z.string().optional(),
  fans: z.array(fanForm).min(1),
});

/** The fields of one fan in SI. */
export type FanFields = z.output<typeof fanForm>;

/** One noise rating in SI. */
export type RatingFields = z.output<typeof ratingForm>;
