import { z } from 'zod';
import type { CubicMetresPerSecond, Pascals, SquareMetres } from '../quantities/dimensions.ts';
import { positive, written } from '../quantities/written.ts';
import { type Element, elementKind } from './element.ts';
import { fitLoss } from './fitted-loss.ts';
import { REFERENCE_DENSITY, REFERENCE_VISCOSITY } from './reference-air.ts';

interface Points {
  readonly flow: readonly CubicMetresPerSecond[];
  readonly pressure: readonly Pascals[];
  readonly vent?: SquareMetres | undefined;
}

/** A point this far off the fit is worth a remark [-]. */
const MISFIT_REMARK = 0.1;
/** Least linear part of a fit, as a share of the loss at the largest flow [-] (assumption). */
const FAINT_SHARE = 1e-3;

const form = z
  .strictObject({
    points: z.literal('table'),
    flow: positive(written.flowList),
    pressure: positive(written.pressureList),
    vent: positive(written.area).optional(),
  })
  .superRefine(({ flow, pressure }, context) => {
    if (flow.length !== pressure.length) {
      const message = `found ${flow.length} flows and ${pressure.length} pressures, expected as many of each`;
      context.addIssue({ code: 'custom', path: ['pressure'], message });
    } else if (new Set(flow).size < 2) {
      const message = 'found fewer than two different flows, expected at least two';
      context.addIssue({ code: 'custom', path: ['flow'], message });
    }
  });

function build({ flow, pressure, vent }: Points): Element {
  const { linear, quadratic, misfit } = fitLoss(flow, pressure);
  const inertial = quadratic / REFERENCE_DENSITY;
  return {
    viscous: linear / REFERENCE_VISCOSITY,
    inertial,
    faint: linear > 0 ? 0 : FAINT_SHARE * inertial * Math.max(...flow),
    ...(vent === undefined ? {} : { ventFace: vent }),
    lossUncertainty: 0.1,
    remarks:
      misfit > MISFIT_REMARK
        ? [`a linear and a quadratic term miss a measured point by ${(100 * misfit).toFixed(0)} %`]
        : [],
  };
}

/** Measured points: `{ points: table, flow: 5 10 15 20 L/s, pressure: 1.2 3.3 7.0 11.5 Pa }`, at 1.2 kg/m³. */
export const points = elementKind({
  key: 'points',
  summary: 'measured loss at 1.2 kg/m³: flow and pressure, as many of each; vent makes it a source of noise',
  source: 'least squares of the relative distances, a·Q + b·Q² with a, b ≥ 0',
  form,
  build,
});
