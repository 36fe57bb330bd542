import { z } from 'zod';
import type { Metres } from '../quantities/dimensions.ts';
import { positive, written } from '../quantities/written.ts';
import { elementKind } from './element.ts';
import type { Field } from './hole-pattern.ts';
import { headLoss } from './velocity-head-loss.ts';

type Bend =
  | { readonly bend: 'sharp'; readonly face: Field }
  | { readonly bend: 'rounded'; readonly face: Field; readonly radius: Metres };

/**
 * Loss of a sharp bend of 90° in velocity heads [-]. Source: library fluids 1.0.22 gives 1.18 (Miller), 1.20 (Rennels
 * & Hudson) and 1.26 (Blevins) at Re 1e5.
 */
export const SHARP_BEND_LOSS = 1.2;
/** Darcy friction factor of the walls of a bend [-] (assumption; smooth walls at Re 2e4 to 1e5). */
const WALL_FRICTION = 0.02;

/**
 * Loss of a rounded bend of 90° in velocity heads [-], never above that of a sharp one.
 *
 * f·(π/2)·(r/D) + (0.10 + 2.4·f)·sin 45° + 6.6·f·(√sin 45° + sin 45°)/(r/D)²
 *
 * Source: Rennels & Hudson, Pipe Flow (2012), as coded in the library fluids 1.0.22 (from memory).
 *
 * @param relativeRadius radius of the middle line over hydraulic diameter [-], > 0
 */
export function roundedBendLoss(relativeRadius: number): number {
  const sine = Math.SQRT1_2;
  const wall = (WALL_FRICTION * Math.PI * relativeRadius) / 2;
  const turning = (0.1 + 2.4 * WALL_FRICTION) * sine;
  const tightness = (6.6 * WALL_FRICTION * (Math.sqrt(sine) + sine)) / relativeRadius ** 2;
  return Math.min(SHARP_BEND_LOSS, wall + turning + tightness);
}

/** Bend of 90°: `{ bend: sharp, face: 60 x 60 mm }` or `{ bend: rounded, face: 60 x 60 mm, radius: 60 mm }`. */
export const bend = elementKind({
  key: 'bend',
  summary: 'bend of 90°, sharp or rounded: face, and radius of the middle line',
  source: 'Rennels & Hudson, Pipe Flow (2012), as in the library fluids 1.0.22; sources differ by half',
  form: z.discriminatedUnion('bend', [
    z.strictObject({ bend: z.literal('sharp'), face: positive(written.rectangle) }),
    z.strictObject({
      bend: z.literal('rounded'),
      face: positive(written.rectangle),
      radius: positive(written.length),
    }),
  ]),
  build: (fields: Bend) => {
    const { width, height } = fields.face;
    const area = width * height;
    const hydraulicDiameter = (2 * area) / (width + height);
    const heads =
      fields.bend === 'sharp' ? SHARP_BEND_LOSS : roundedBendLoss(fields.radius / hydraulicDiameter);
    return { ...headLoss(heads, area), freeArea: area, lossUncertainty: 0.5, remarks: [] };
  },
});
