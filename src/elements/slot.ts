import { z } from 'zod';
import type { Fraction, Metres } from '../quantities/dimensions.ts';
import { positive, written } from '../quantities/written.ts';
import { dischargeCoefficient } from './discharge-coefficient.ts';
import { type Element, elementKind } from './element.ts';
import type { Field } from './hole-pattern.ts';
import { rectangularFriction } from './laminar-friction.ts';
import { orificeCoefficients } from './thick-orifice.ts';
import { headLoss } from './velocity-head-loss.ts';

interface Slot {
  readonly slot: Field;
  readonly depth: Metres;
  readonly discharge?: Fraction | undefined;
}

/** Depth of a slot about which nothing is said [m]: a sheet of 1 mm (assumption). */
const USUAL_DEPTH: Metres = 0.001;
/** A slot deeper than this many hydraulic diameters is a duct [-] (assumption). */
const DEEP = 10;

const form = z.strictObject({
  slot: positive(written.rectangle),
  depth: positive(written.length).default(USUAL_DEPTH),
  discharge: dischargeCoefficient.optional(),
});

function build({ slot: field, depth, discharge }: Slot): Element {
  const { width, height } = field;
  const area = width * height;
  const opening = { ventFace: area, freeArea: area, purpose: 'leaks', lossUncertainty: 0.25 } as const;
  if (discharge !== undefined) return { ...headLoss(discharge ** -2, area), ...opening, remarks: [] };
  const hydraulicDiameter = (2 * area) / (width + height);
  const laminarFriction = rectangularFriction(Math.min(width, height) / Math.max(width, height));
  const sides = { upstreamShare: 0, downstreamShare: 0 };
  const deep = depth > DEEP * hydraulicDiameter;
  return {
    ...orificeCoefficients({ area, hydraulicDiameter, thickness: depth, laminarFriction, ...sides }),
    faint: 0,
    ...opening,
    remarks: deep ? ['the slot is so deep that wall friction counts: a duct describes it better'] : [],
  };
}

/**
 * Narrow opening between two spaces, a gap or a leak: `{ slot: 90 x 2 mm, depth: 1 mm }`. A missing gasket of 1 mm
 * round a frame of 120 mm is `{ slot: 480 x 1 mm, discharge: 0.6 }`.
 */
export const slot = elementKind({
  key: 'slot',
  summary: 'narrow opening between two spaces, such as a gap, a leak or a missing gasket: depth or discharge',
  source:
    'Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagrams 4-11 and 4-12 (from memory); creeping part ' +
    '(12π + f·Re·l)/Re on the hydraulic diameter, a model assumption within 8 % of Hasimoto (1958) for a thin slit',
  form,
  build,
});
