import { z } from 'zod';
import { bounded, positive, written } from '../quantities/written.ts';
import { elementKind } from './element.ts';
import { type PowerLaw, powerLawLoss } from './power-law-loss.ts';

/** Loss known at one flow with its exponent: `{ power: law, exponent: 1.8, pressure: 12 Pa, flow: 20 m³/h }`. */
export const powerLaw = elementKind({
  key: 'power',
  summary: 'loss that grows with a power of the flow: exponent, pressure, flow',
  source: 'as given; density and viscosity by dimensional analysis',
  form: z.strictObject({
    power: z.literal('law'),
    exponent: bounded(
      written.factor,
      'an exponent of 1 or more, below 2',
      (value) => value >= 1 && value < 2,
    ),
    pressure: positive(written.pressure),
    flow: positive(written.flow),
  }),
  build: (fields: PowerLaw) => ({
    viscous: 0,
    inertial: 0,
    faint: 0,
    law: powerLawLoss(fields),
    lossUncertainty: 0.15,
    remarks: [],
  }),
});
