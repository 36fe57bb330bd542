import { z } from 'zod';
import type { Fraction, Metres } from '../quantities/dimensions.ts';
import { positive, written } from '../quantities/written.ts';
import { dischargeCoefficient } from './discharge-coefficient.ts';
import { type Element, elementKind } from './element.ts';
import { holeFigures } from './hole-shape.ts';
import { orificeCoefficients } from './thick-orifice.ts';
import { headLoss } from './velocity-head-loss.ts';

interface SingleHole {
  readonly orifice: Metres;
  readonly sheet?: Metres | undefined;
  readonly discharge?: Fraction | undefined;
}

const form = z
  .strictObject({
    orifice: positive(written.length),
    sheet: positive(written.length).optional(),
    discharge: dischargeCoefficient.optional(),
  })
  .refine((fields) => (fields.sheet === undefined) !== (fields.discharge === undefined), {
    message: 'expected either sheet (its thickness) or discharge (a measured coefficient), and not both',
  });

function build({ orifice: diameter, sheet = 0, discharge }: SingleHole): Element {
  const hole = holeFigures({ shape: 'round', size: diameter, length: diameter });
  const sides = { upstreamShare: 0, downstreamShare: 0 };
  const coefficients =
    discharge === undefined
      ? { ...orificeCoefficients({ ...hole, thickness: sheet, ...sides }), faint: 0 }
      : headLoss(discharge ** -2, hole.area);
  return { ...coefficients, ventFace: hole.area, freeArea: hole.area, lossUncertainty: 0.15, remarks: [] };
}

/** One round hole between two spaces: `{ orifice: 30 mm, sheet: 1 mm }`. */
export const orifice = elementKind({
  key: 'orifice',
  summary: 'one round hole between two spaces: sheet or discharge',
  source:
    'Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagrams 4-11 and 4-12 (from memory); creeping part by ' +
    'Sampson (1891) and Poiseuille',
  form,
  build,
});
