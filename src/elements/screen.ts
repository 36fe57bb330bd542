import { z } from 'zod';
import type { Fraction, Metres, SquareMetres } from '../quantities/dimensions.ts';
import { positive, written } from '../quantities/written.ts';
import { type Element, elementKind, type FlowLaw } from './element.ts';
import type { Field } from './hole-pattern.ts';
import { openShare } from './open-share.ts';
import { CREEPING, CREEPING_END, wireFactor } from './wire-reynolds.ts';

interface Screen {
  readonly screen: Field;
  readonly open?: Fraction | undefined;
  readonly pitch?: Metres | undefined;
  readonly wire: Metres;
}

/** Open shares between which the formula was measured [-]. Outside it is used with a remark (from memory). */
const MEASURED = { least: 0.2, most: 0.85 };

const form = z
  .strictObject({
    screen: positive(written.rectangle),
    open: openShare.optional(),
    pitch: positive(written.length).optional(),
    wire: positive(written.length),
  })
  .superRefine((fields, context) => {
    if ((fields.open === undefined) === (fields.pitch === undefined)) {
      const message = 'expected either open (the free share) or pitch (from wire to wire), and not both';
      context.addIssue({ code: 'custom', message });
    } else if (fields.pitch !== undefined && fields.pitch <= fields.wire) {
      const message = 'found a pitch no wider than the wire is thick, expected pitch > wire';
      context.addIssue({ code: 'custom', path: ['pitch'], message });
    }
  });

/**
 * Open share of a square mesh of round wire [-]: (1 - d/pitch)².
 *
 * Source: plane geometry.
 *
 * @param wire diameter [m], > 0
 * @param pitch from wire to wire [m], > wire
 */
export function meshOpenShare(wire: Metres, pitch: Metres): Fraction {
  return (1 - wire / pitch) ** 2;
}

/**
 * Turbulent loss of a wire screen in heads of the velocity before it [-]: 1.3·(1 - φ) + (1/φ - 1)².
 *
 * Source: Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagram 8-6 (from memory).
 *
 * @param open free share φ [-], 0 < φ < 1; measured from about 0.2 to 0.85
 */
export function screenLoss(open: Fraction): number {
  return 1.3 * (1 - open) + (1 / open - 1) ** 2;
}

/**
 * Law of a wire screen: K·k(Re) heads of the velocity before it, Re on the wire; linear below Re 50.
 *
 * @param heads turbulent loss K [-], > 0
 * @param face area before the screen [m²], > 0
 * @param wire diameter [m], > 0
 */
function screenLaw(heads: number, face: SquareMetres, wire: Metres): FlowLaw {
  const inertial = heads / (2 * face * face);
  const creeping = (inertial * CREEPING * face) / wire;
  return {
    loss: (flow, density, viscosity) => {
      const size = Math.abs(flow);
      const reynolds = (density * size * wire) / (face * viscosity);
      // 22/Re times the square law is linear: written out, it holds down to no flow at all.
      if (reynolds <= CREEPING_END) return (inertial * density * size + creeping * viscosity) * flow;
      const { factor } = wireFactor(reynolds);
      return inertial * density * factor * flow * size;
    },
    slope: (flow, density, viscosity) => {
      const size = Math.abs(flow);
      const reynolds = (density * size * wire) / (face * viscosity);
      if (reynolds <= CREEPING_END) return 2 * inertial * density * size + creeping * viscosity;
      const { factor, slope } = wireFactor(reynolds);
      return inertial * density * size * (2 * factor + reynolds * slope);
    },
  };
}

function build({ screen: field, open: given, pitch, wire }: Screen): Element {
  const face = field.width * field.height;
  const open = given ?? meshOpenShare(wire, pitch ?? Number.POSITIVE_INFINITY);
  const outside = open < MEASURED.least || open > MEASURED.most;
  return {
    viscous: 0,
    inertial: 0,
    faint: 0,
    law: screenLaw(screenLoss(open), face, wire),
    ventFace: face,
    face,
    freeArea: open * face,
    disturbance: 'mesh',
    purpose: 'keeps dust out',
    lossUncertainty: 0.2,
    remarks: outside ? ['the free share lies outside the range in which wire screens were measured'] : [],
  };
}

/** Woven wire, insect or dust mesh: `{ screen: 95 x 95 mm, open: 55 %, wire: 0.2 mm }`. */
export const screen = elementKind({
  key: 'screen',
  summary: 'wire, insect or dust mesh: wire, and open or pitch',
  source:
    'Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagram 8-6 (from memory); the smooth curve through its ' +
    'table is a model assumption',
  form,
  build,
});
