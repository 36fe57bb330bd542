import { z } from 'zod';
import { positive, written } from '../quantities/written.ts';
import { elementKind } from './element.ts';
import type { Field } from './hole-pattern.ts';
import { faintPart } from './velocity-head-loss.ts';

interface Passage {
  readonly passage: Field;
}

/** Open passage: `{ passage: 92 x 92 mm }`. */
export const passage = elementKind({
  key: 'passage',
  summary: 'open passage, so wide that it loses next to nothing',
  source: 'a thousandth of a velocity head at 1 m/s, linear in the flow: model assumption, no source',
  form: z.strictObject({ passage: positive(written.rectangle) }),
  build: ({ passage: field }: Passage) => {
    const face = field.width * field.height;
    return {
      viscous: 0,
      inertial: 0,
      faint: faintPart(1, face),
      freeArea: face,
      lossUncertainty: 0,
      remarks: [],
    };
  },
});
