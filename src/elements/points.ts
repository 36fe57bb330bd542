import { z } from 'zod';
import { entry } from '../numerics/entry.ts';
import type { CubicMetresPerSecond, Pascals, SquareMetres } from '../quantities/dimensions.ts';
import { positive, written } from '../quantities/written.ts';
import { type Element, elementKind } from './element.ts';
import { fitLoss } from './fitted-loss.ts';
import { REFERENCE_DENSITY, REFERENCE_VISCOSITY } from './reference-air.ts';
import { tableLoss } from './table-loss.ts';

interface Points {
  readonly flow: readonly CubicMetresPerSecond[];
  readonly pressure: readonly Pascals[];
  readonly by: 'fit' | 'curve';
  readonly vent?: SquareMetres | undefined;
}

/** A point this far off the fit is worth a remark [-]. */
const MISFIT_REMARK = 0.1;
/** Least linear part of a fit, as a share of the loss at the largest flow [-] (assumption). */
const FAINT_SHARE = 1e-3;

/** Flows in rising order and the pressures that belong to them. */
function inOrder(flow: readonly number[], pressure: readonly number[]): readonly (readonly number[])[] {
  const order = flow.map((_, index) => index).sort((one, other) => entry(flow, one) - entry(flow, other));
  return [order.map((index) => entry(flow, index)), order.map((index) => entry(pressure, index))];
}

function risesThrough(flow: readonly number[], pressure: readonly number[]): boolean {
  return inOrder(flow, pressure).every((values) =>
    values.every((value, index) => index === 0 || value > entry(values, index - 1)),
  );
}

const form = z
  .strictObject({
    points: z.literal('table'),
    flow: positive(written.flowList),
    pressure: positive(written.pressureList),
    by: z.enum(['fit', 'curve']).default('fit'),
    vent: positive(written.area).optional(),
  })
  .superRefine(({ flow, pressure, by }, context) => {
    if (flow.length !== pressure.length) {
      const message = `found ${flow.length} flows and ${pressure.length} pressures, expected as many of each`;
      context.addIssue({ code: 'custom', path: ['pressure'], message });
    } else if (new Set(flow).size < 2) {
      const message = 'found fewer than two different flows, expected at least two';
      context.addIssue({ code: 'custom', path: ['flow'], message });
    } else if (by === 'curve' && !risesThrough(flow, pressure)) {
      const message = 'found a pressure that does not rise with the flow, expected a rising one or a fit';
      context.addIssue({ code: 'custom', path: ['pressure'], message });
    }
  });

function build({ flow, pressure, by, vent }: Points): Element {
  const opening = vent === undefined ? {} : { ventFace: vent };
  if (by === 'curve') {
    const [flows = [], pressures = []] = inOrder(flow, pressure);
    const law = tableLoss(flows, pressures);
    return { viscous: 0, inertial: 0, faint: 0, law, ...opening, lossUncertainty: 0.1, remarks: [] };
  }
  const { linear, quadratic, misfit } = fitLoss(flow, pressure);
  const inertial = quadratic / REFERENCE_DENSITY;
  return {
    viscous: linear / REFERENCE_VISCOSITY,
    inertial,
    faint: linear > 0 ? 0 : FAINT_SHARE * inertial * Math.max(...flow),
    ...opening,
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
  summary:
    'measured loss at 1.2 kg/m³: flow and pressure, as many of each, by fit or curve; vent makes it a source of noise',
  source:
    'least squares of the relative distances, a·Q + b·Q² with a, b ≥ 0; as a curve the monotone cubic of Fritsch and ' +
    'Butland (1984)',
  form,
  build,
});
