import { z } from 'zod';
import type { Fraction, Metres, MetresPerSecond, Pascals } from '../quantities/dimensions.ts';
import { bounded, positive, written } from '../quantities/written.ts';
import { type Element, elementKind } from './element.ts';
import type { Field } from './hole-pattern.ts';
import { powerLawLoss } from './power-law-loss.ts';

interface Foam {
  readonly filter: 'foam';
  readonly face: Field;
  readonly thickness: Metres;
  /** Pores per metre [1/m]. */
  readonly pores: number;
  readonly loading: Fraction;
}

interface Fibre {
  readonly filter: 'fibre';
  readonly face: Field;
  readonly pressure: Pascals;
  readonly at: MetresPerSecond;
  readonly loading: Fraction;
}

const INCH: Metres = 0.0254;
/**
 * Half an inch of reticulated polyurethane foam at 350 ft/min loses 0.045 inH₂O with 20 pores per inch and 1.0 inH₂O
 * with 100. Source: report of 1964 on reticulated foam, archive of the Smithsonian Institution.
 */
const tested = {
  thickness: INCH / 2,
  velocity: 350 * (12 * INCH) * (1 / 60),
  coarse: { pores: 20 / INCH, pressure: 0.045 * 249.0889 },
  fine: { pores: 100 / INCH, pressure: 249.0889 },
} as const;
/** Growth of a foam's loss with velocity [-] (assumption, ± 0.3: between creeping 1 and inertial 2). */
const FOAM_EXPONENT = 1.5;
/** Growth of fibre media's loss with velocity [-]. Source: Modelica Buildings library, mean of measured filters. */
const FIBRE_EXPONENT = 1 / 0.85;
/** A filter due for change loses this much more, as a share of its clean loss [-] (assumption). */
const FULL_LOADING = 1;

const loading = bounded(written.percent, '0 % to 100 %', (value) => value >= 0 && value <= 1).default(0);

/**
 * Loss of clean reticulated foam at 350 ft/min [Pa]; proportional to thickness, a power of the pore count between the
 * two tested foams and outside them.
 *
 * Source: as `tested`; the interpolation is a model assumption.
 *
 * @param pores per metre [1/m], tested from 787 to 3937 (20 to 100 per inch)
 * @param thickness [m], > 0
 */
export function foamLoss(pores: number, thickness: Metres): Pascals {
  const { coarse, fine } = tested;
  const exponent = Math.log(fine.pressure / coarse.pressure) / Math.log(fine.pores / coarse.pores);
  return coarse.pressure * (pores / coarse.pores) ** exponent * (thickness / tested.thickness);
}

function foamRemarks(pores: number): string[] {
  const untested = pores < 0.999 * tested.coarse.pores || pores > 1.001 * tested.fine.pores;
  return untested ? ['foam was tested with 20 to 100 pores per inch; this is outside'] : [];
}

function build(fields: Foam | Fibre): Element {
  const area = fields.face.width * fields.face.height;
  const foam = fields.filter === 'foam';
  const clean = foam ? foamLoss(fields.pores, fields.thickness) : fields.pressure;
  const law = powerLawLoss({
    exponent: foam ? FOAM_EXPONENT : FIBRE_EXPONENT,
    pressure: clean * (1 + FULL_LOADING * fields.loading),
    flow: area * (foam ? tested.velocity : fields.at),
  });
  return {
    viscous: 0,
    inertial: 0,
    faint: 0,
    law,
    face: area,
    freeArea: area,
    purpose: 'keeps dust out',
    lossUncertainty: 0.3,
    remarks: foam ? foamRemarks(fields.pores) : [],
  };
}

/** Filter: `{ filter: foam, face: 92 x 92 mm, thickness: 5 mm, pores: 30 ppi }`, or fibre with a known loss. */
export const filter = elementKind({
  key: 'filter',
  summary:
    'filter of foam (thickness, pores) or fibre (pressure, at): face, loading from 0 % clean to 100 % due',
  source:
    'foam: report of 1964 on reticulated foam, archive of the Smithsonian Institution; its exponent 1.5 and the ' +
    'doubling by loading are model assumptions; fibre: as given, exponent 1.176 by the Modelica Buildings library',
  form: z.discriminatedUnion('filter', [
    z.strictObject({
      filter: z.literal('foam'),
      face: positive(written.rectangle),
      thickness: positive(written.length),
      pores: positive(written.porosity),
      loading,
    }),
    z.strictObject({
      filter: z.literal('fibre'),
      face: positive(written.rectangle),
      pressure: positive(written.pressure),
      at: positive(written.velocity),
      loading,
    }),
  ]),
  build,
});
