import { z } from 'zod';
import type { Fraction } from '../quantities/dimensions.ts';
import { positive, written } from '../quantities/written.ts';
import { elementKind } from './element.ts';
import type { Field } from './hole-pattern.ts';
import { openShare } from './open-share.ts';
import { headLoss } from './velocity-head-loss.ts';

interface Louvre {
  readonly louvre: Field;
  readonly open: Fraction;
}

/** Discharge coefficient of stamped or slanted slots 0.55 ± 0.08, so 3.3 heads in the free area (assumption). */
const LOUVRE_LOSS = 3.3;

/** Louvre or stamped slanted slots: `{ louvre: 160 x 80 mm, open: 50 % }`. */
export const louvre = elementKind({
  key: 'louvre',
  summary: 'louvre or stamped slanted slots: open, the free share (usually 35 to 60 %)',
  source: 'discharge coefficient 0.55 ± 0.08 on the free area, model assumption, no source',
  form: z.strictObject({ louvre: positive(written.rectangle), open: openShare }),
  build: ({ louvre: field, open }: Louvre) => {
    const face = field.width * field.height;
    return {
      ...headLoss(LOUVRE_LOSS, open * face),
      ventFace: face,
      face,
      freeArea: open * face,
      disturbance: 'panel' as const,
      lossUncertainty: 0.3,
      remarks: [],
    };
  },
});
