import { z } from 'zod';
import type { Air } from '../air/air.ts';
import type { CubicMetresPerSecond, KelvinsPerWatt, MetresPerSecond } from '../quantities/dimensions.ts';
import { bounded, notNegative, positive, written } from '../quantities/written.ts';
import { elementKind } from './element.ts';
import type { Field } from './hole-pattern.ts';
import { REFERENCE_DENSITY, REFERENCE_VISCOSITY } from './reference-air.ts';

interface MeasuredSink {
  readonly face: Field;
  readonly R: KelvinsPerWatt;
  readonly c: KelvinsPerWatt;
  readonly m: number;
  readonly at: MetresPerSecond;
  readonly a: number;
  readonly b: number;
}

/**
 * Resistance from the base of a measured sink to the entering air: R + c·(U/U₀)^-m, and never below 1/(ρ·Q·cp).
 *
 * U is the velocity before the sink that carries the same mass in air of 1.2 kg/m³ (assumption: heat transfer follows
 * the mass flow).
 *
 * Source: as given; the lower bound is the heat balance of the air.
 *
 * @param sink measured curve
 * @param flow volume flow at the inlet [m³/s], sign ignored; at 0 the resistance is infinite
 * @param inlet air entering
 */
function sinkResistance(sink: MeasuredSink, flow: CubicMetresPerSecond, inlet: Air): KelvinsPerWatt {
  const massFlow = inlet.density * Math.abs(flow);
  const velocity = massFlow / (REFERENCE_DENSITY * sink.face.width * sink.face.height);
  const measured = sink.R + sink.c * (velocity / sink.at) ** -sink.m;
  return Math.max(measured, 1 / (massFlow * inlet.specificHeat));
}

/**
 * Sink known by a measured curve:
 * `{ sink: curve, face: 92 x 92 mm, R: 0.03 K/W, c: 0.05 K/W, m: 0.9, at: 1 m/s, a: 300 Pa s/m³, b: 1e4 Pa s²/m⁶ }`.
 */
export const sink = elementKind({
  key: 'sink',
  summary:
    'sink with a measured curve R + c·(U/at)^-m: face, R, c, m, at; loss a·Q + b·Q² at 1.2 kg/m³: a, b',
  source: 'as given; never below 1/(ρ·Q·cp), the heat balance of the air',
  form: z.strictObject({
    sink: z.literal('curve'),
    face: positive(written.rectangle),
    R: notNegative(written.thermalResistance),
    c: positive(written.thermalResistance),
    m: bounded(written.factor, 'an exponent above 0, at most 2', (value) => value > 0 && value <= 2),
    at: positive(written.velocity),
    a: positive(written.linearLoss),
    b: notNegative(written.quadraticLoss),
  }),
  build: (fields: MeasuredSink) => ({
    viscous: fields.a / REFERENCE_VISCOSITY,
    inertial: fields.b / REFERENCE_DENSITY,
    faint: 0,
    finResistance: (flow: CubicMetresPerSecond, inlet: Air) => sinkResistance(fields, flow, inlet),
    disturbance: 'fins' as const,
    lossUncertainty: 0.15,
    remarks: [],
  }),
});
