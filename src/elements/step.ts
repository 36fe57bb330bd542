import { z } from 'zod';
import type { Fraction } from '../quantities/dimensions.ts';
import { positive, written } from '../quantities/written.ts';
import { elementKind } from './element.ts';
import type { Field } from './hole-pattern.ts';
import { headLoss } from './velocity-head-loss.ts';

interface Step {
  readonly step: Field;
  readonly to: Field;
}

const form = z
  .strictObject({ step: positive(written.rectangle), to: positive(written.rectangle) })
  .refine(({ step: from, to }) => areaOf(from) !== areaOf(to), {
    path: ['to'],
    message: 'found two faces of the same area, expected a wider or narrower one',
  });

/**
 * Loss of a sudden widening in heads of the velocity in the narrow part [-]: (1 - s)².
 *
 * Source: Borda & Carnot; Idelchik, 3rd ed., diagram 4-1 (from memory), Re > 3300.
 *
 * @param share narrow area over wide area [-], 0 to 1
 */
export function expansionLoss(share: Fraction): number {
  return (1 - share) ** 2;
}

/**
 * Loss of a sudden narrowing in heads of the velocity in the narrow part [-]: 0.5·(1 - s)^0.75.
 *
 * Source: Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagram 4-9 (from memory), Re > 10 000.
 *
 * @param share narrow area over wide area [-], 0 to 1
 */
export function contractionLoss(share: Fraction): number {
  return 0.5 * (1 - share) ** 0.75;
}

function areaOf(field: Field): number {
  return field.width * field.height;
}

/** Sudden change of area, in the direction of the leg: `{ step: 60 x 60 mm, to: 90 x 90 mm }`. */
export const step = elementKind({
  key: 'step',
  summary: 'sudden change of area from one face to another: to',
  source:
    'Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagrams 4-1 and 4-9 (from memory); the same loss in both ' +
    'directions is a model assumption',
  form,
  build: ({ step: from, to }: Step) => {
    const narrow = Math.min(areaOf(from), areaOf(to));
    const share = narrow / Math.max(areaOf(from), areaOf(to));
    const heads = areaOf(to) > areaOf(from) ? expansionLoss(share) : contractionLoss(share);
    return { ...headLoss(heads, narrow), freeArea: narrow, lossUncertainty: 0.2, remarks: [] };
  },
});
