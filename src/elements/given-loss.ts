import { z } from 'zod';
import type { SquareMetres } from '../quantities/dimensions.ts';
import { notNegative, positive, written } from '../quantities/written.ts';
import { type Element, elementKind } from './element.ts';
import { REFERENCE_DENSITY, REFERENCE_VISCOSITY } from './reference-air.ts';
import { headLoss } from './velocity-head-loss.ts';

interface GivenLoss {
  readonly K?: number | undefined;
  readonly area?: SquareMetres | undefined;
  readonly a?: number | undefined;
  readonly b?: number | undefined;
  readonly vent?: SquareMetres | undefined;
}

const form = z
  .strictObject({
    given: z.literal('loss'),
    K: positive(written.factor).optional(),
    area: positive(written.area).optional(),
    a: positive(written.linearLoss).optional(),
    b: notNegative(written.quadraticLoss).optional(),
    vent: positive(written.area).optional(),
  })
  .refine(
    ({ K, area, a, b }) => {
      const heads = [K, area].filter((field) => field !== undefined).length;
      const coefficients = [a, b].filter((field) => field !== undefined).length;
      return heads + coefficients === 2 && heads !== 1;
    },
    { message: 'expected either K and area, or a and b' },
  );

function build({ K, area, a = 0, b = 0, vent }: GivenLoss): Element {
  const loss =
    K !== undefined && area !== undefined
      ? { ...headLoss(K, area), freeArea: area }
      : { viscous: a / REFERENCE_VISCOSITY, inertial: b / REFERENCE_DENSITY, faint: 0 };
  return {
    ...loss,
    ...(vent === undefined ? {} : { ventFace: vent }),
    lossUncertainty: 0.15,
    remarks: [],
  };
}

/** Known loss: `{ given: loss, K: 2.85, area: 60 cm² }` or `{ given: loss, a: 400 Pa s/m³, b: 5e4 Pa s²/m⁶ }`. */
export const givenLoss = elementKind({
  key: 'given',
  summary: 'known loss: K and area, or a and b at 1.2 kg/m³; vent makes it a source of noise',
  source: 'as given; Δp = K·ρ·V²/2, or a·Q + b·Q² with a as viscosity and b as density',
  form,
  build,
});
