import { z } from 'zod';
import type { Fraction } from '../quantities/dimensions.ts';
import { positive, written } from '../quantities/written.ts';
import { elementKind } from './element.ts';
import type { Field } from './hole-pattern.ts';
import { openShare } from './open-share.ts';
import { headLoss } from './velocity-head-loss.ts';

interface Guard {
  readonly guard: Field;
  readonly open: Fraction;
}

/** Below this free share a guard is a screen [-] (assumption). */
const LEAST_OPEN = 0.7;

/**
 * Loss of a row of round bars in heads of the velocity before it [-]: 0.95·(1 - φ) + 0.2·(1 - φ)².
 *
 * Source: published code of the library fluids 1.0.22 (round bar screen, after Blevins, Applied Fluid Dynamics
 * Handbook).
 *
 * @param open free share φ [-], meant for 0.7 to 1
 */
export function guardLoss(open: Fraction): number {
  const covered = 1 - open;
  return 0.95 * covered + 0.2 * covered * covered;
}

/** Wire guard before a fan: `{ guard: 80 x 80 mm, open: 88 % }`. */
export const guard = elementKind({
  key: 'guard',
  summary: 'wire guard of round bars: open, the free share (usually 85 to 90 %)',
  source: 'library fluids 1.0.22, round bar screen, after Blevins, Applied Fluid Dynamics Handbook',
  form: z.strictObject({ guard: positive(written.rectangle), open: openShare }),
  build: ({ guard: field, open }: Guard) => {
    const face = field.width * field.height;
    const dense = open < LEAST_OPEN;
    return {
      ...headLoss(guardLoss(open), face),
      face,
      freeArea: open * face,
      disturbance: 'guard' as const,
      lossUncertainty: 0.2,
      remarks: dense
        ? ['so dense a guard loses more than this formula says: a screen describes it better']
        : [],
    };
  },
});
