import { z } from 'zod';
import type { Air } from '../air/air.ts';
import type {
  CubicMetresPerSecond,
  Fraction,
  KelvinsPerWatt,
  MetresPerSecond,
} from '../quantities/dimensions.ts';
import { roundedQuantity } from '../quantities/rounded.ts';
import { bounded, notNegative, positive, written } from '../quantities/written.ts';
import { type Element, elementKind } from './element.ts';
import type { Field } from './hole-pattern.ts';
import { REFERENCE_DENSITY, REFERENCE_VISCOSITY } from './reference-air.ts';

/** What all measured sinks have in common. */
interface Measured {
  readonly face: Field;
  readonly at: MetresPerSecond;
  readonly a: number;
  readonly b: number;
}

interface CurveSink extends Measured {
  readonly sink: 'curve';
  readonly R: KelvinsPerWatt;
  readonly c: KelvinsPerWatt;
  readonly m: number;
  readonly from?: MetresPerSecond | undefined;
  readonly to?: MetresPerSecond | undefined;
}

interface SingleSink extends Measured {
  readonly sink: 'single';
  readonly R: KelvinsPerWatt;
}

/** Exponent of a sink of which one point is known: laminar, developing [-]. Theory; its band is an assumption. */
const SINGLE_EXPONENT = 0.5;
const SINGLE_EXPONENT_BAND = 0.15;
/** A curve is trusted to this factor beyond what was measured [-]. Model assumption, no source. */
const TRUSTED = 1.5;

/** Velocity before a sink that carries the same mass in air of 1.2 kg/m³ [m/s]. */
function referenceVelocity(face: Field, flow: CubicMetresPerSecond, inlet: Air): MetresPerSecond {
  return (inlet.density * Math.abs(flow)) / (REFERENCE_DENSITY * face.width * face.height);
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
function curveResistance(sink: CurveSink, flow: CubicMetresPerSecond, inlet: Air): KelvinsPerWatt {
  const velocity = referenceVelocity(sink.face, flow, inlet);
  const measured = sink.R + sink.c * (velocity / sink.at) ** -sink.m;
  return Math.max(measured, 1 / (inlet.density * Math.abs(flow) * inlet.specificHeat));
}

/** A single point as a curve: R·(U/U₀)^-½, no resistance that is left at any flow. */
function asCurve({ R, ...common }: SingleSink): CurveSink {
  return { ...common, sink: 'curve', R: 0, c: R, m: SINGLE_EXPONENT, from: common.at, to: common.at };
}

/** How many times a velocity lies beyond the measured ones [-]; 1 within them. */
function beyond(velocity: MetresPerSecond, { from, to }: CurveSink): number {
  return Math.max(1, from === undefined ? 1 : from / velocity, to === undefined ? 1 : velocity / to);
}

function percent(share: Fraction): string {
  return `${Math.round(100 * share)} %`;
}

/** What is uncertain about a sink at a flow. */
function remarksAt(sink: CurveSink | SingleSink, flow: CubicMetresPerSecond, inlet: Air): readonly string[] {
  const curve = sink.sink === 'curve' ? sink : asCurve(sink);
  const times = beyond(referenceVelocity(sink.face, flow, inlet), curve);
  if (times <= TRUSTED || !Number.isFinite(times)) return [];
  if (sink.sink === 'curve') {
    return [`the flow is ${times.toFixed(1)} times beyond what its curve was measured at`];
  }
  const band = times ** SINGLE_EXPONENT_BAND - 1;
  const resistance = curveResistance(curve, flow, inlet);
  const [found, low, high] = [resistance, resistance / (1 + band), resistance * (1 + band)].map((value) =>
    roundedQuantity('thermalResistance', value, 3),
  );
  return [
    `known by one point, ${times.toFixed(1)} times away from this flow: ` +
      `its resistance of ${found} may be ${percent(band)} off either way, ${low} to ${high}`,
  ];
}

/** A single point says nothing of the exponent: how far off that is at a flow. */
function singleUncertainty(sink: SingleSink, flow: CubicMetresPerSecond, inlet: Air): Fraction {
  const times = beyond(referenceVelocity(sink.face, flow, inlet), asCurve(sink));
  return Number.isFinite(times) ? times ** SINGLE_EXPONENT_BAND - 1 : 0;
}

function build(fields: CurveSink | SingleSink): Element {
  const curve = fields.sink === 'curve' ? fields : asCurve(fields);
  return {
    viscous: fields.a / REFERENCE_VISCOSITY,
    inertial: fields.b / REFERENCE_DENSITY,
    faint: 0,
    finResistance: (flow, inlet) => curveResistance(curve, flow, inlet),
    ...(fields.sink === 'single'
      ? { finUncertainty: (flow: CubicMetresPerSecond, inlet: Air) => singleUncertainty(fields, flow, inlet) }
      : {}),
    remarksAt: (flow, inlet) => remarksAt(fields, flow, inlet),
    face: fields.face.width * fields.face.height,
    disturbance: 'fins',
    lossUncertainty: 0.15,
    remarks: [],
  };
}

const measured = {
  face: positive(written.rectangle),
  R: notNegative(written.thermalResistance),
  at: positive(written.velocity),
  a: positive(written.linearLoss),
  b: notNegative(written.quadraticLoss),
};

const curveForm = z
  .strictObject({
    sink: z.literal('curve'),
    ...measured,
    c: positive(written.thermalResistance),
    m: bounded(written.factor, 'an exponent above 0, at most 2', (value) => value > 0 && value <= 2),
    from: positive(written.velocity).optional(),
    to: positive(written.velocity).optional(),
  })
  .refine(({ from = 0, to = Number.POSITIVE_INFINITY }) => from <= to, {
    path: ['to'],
    message: 'found a range that ends below its start, expected from <= to',
  });

const singleForm = z.strictObject({
  sink: z.literal('single'),
  ...measured,
  R: positive(written.thermalResistance),
});

/**
 * Sink known by a measured curve or by one point:
 * `{ sink: curve, face: 92 x 92 mm, R: 0.03 K/W, c: 0.05 K/W, m: 0.9, at: 1 m/s, a: 300 Pa s/m³, b: 1e4 Pa s²/m⁶ }`,
 * `{ sink: single, face: 92 x 92 mm, R: 0.5 K/W, at: 1.5 m/s, a: 300 Pa s/m³, b: 1e4 Pa s²/m⁶ }`.
 */
export const sink = elementKind({
  key: 'sink',
  summary:
    'measured sink: curve R + c·(U/at)^-m (face, R, c, m, at; measured from, to) or single point R·(U/at)^-½ ' +
    '(face, R, at); loss a·Q + b·Q² at 1.2 kg/m³: a, b',
  source:
    'as given; a single point by the exponent of developing laminar flow, 0.5 (0.35 to 0.65); ' +
    'never below 1/(ρ·Q·cp), the heat balance of the air',
  form: z.discriminatedUnion('sink', [curveForm, singleForm]),
  build,
});
