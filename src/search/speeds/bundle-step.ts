import type { Condition } from '../../numerics/condition-rows.ts';
import { leastQuadratic } from '../../numerics/quadratic-program.ts';
import { dot, forecastAt, type Tangent } from './tangent.ts';

/**
 * Curvature of the logarithm of the energy along the limits, for its slope: sound energy grows with about the 5.5th power
 * of speed and cooling falls off slowly. Shape of the model only, as is the least curvature.
 */
const CURVATURE = 6;
const LEAST_CURVATURE = 0.02;
/** Curvature that keeps the level of the model bounded: so small that it moves nothing. */
const LEVEL_CURVATURE = 1e-3;
/** How far below a limit is aimed [K]: worth about 0.0001 dB. */
const AIM = 1e-5;

/** A step of the log speeds and what it promises. */
export interface Step {
  readonly step: Float64Array;
  /** Fall of the logarithm of the energy that the tangents promise. */
  readonly promised: number;
}

/** What was found after a step that was to hold all limits. */
export interface Correction {
  readonly step: Float64Array;
  /** Excess of each limit there [K]. */
  readonly excess: Float64Array;
}

/** What a step is made of. */
export interface Bundle {
  /** Tangent at the present speeds, which hold all limits. */
  readonly here: Tangent;
  /** Tangents at speeds close by, none of which foretells worse of the present ones than they are. */
  readonly others: readonly Tangent[];
  readonly corrections: readonly Correction[];
  /** Least and greatest step of each log speed; 0 is between them. */
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/**
 * Conditions that keep steps between bounds.
 *
 * @param low least step of each log speed
 * @param high greatest step of each log speed
 * @param unknowns number of unknowns, at least as many as log speeds [-]
 */
export function withinBounds(low: Float64Array, high: Float64Array, unknowns: number): readonly Condition[] {
  const axis = (bank: number, sign: number): Float64Array => new Float64Array(unknowns).with(bank, sign);
  return [...low.keys()].flatMap((bank) => [
    { slopes: axis(bank, 1), most: high[bank] as number },
    { slopes: axis(bank, -1), most: -(low[bank] as number) },
  ]);
}

/** Slopes by each log speed and, last, by the change of the energy. */
function withLevel(slopes: Float64Array, level: number): Float64Array {
  const all = new Float64Array(slopes.length + 1);
  all.set(slopes);
  all[slopes.length] = level;
  return all;
}

/** A limit as a condition, or none if no step within the bounds breaks it. */
function limitWithin(slopes: Float64Array, most: number, { low, high }: Bundle): readonly Condition[] {
  let worst = 0;
  for (let bank = 0; bank < slopes.length; bank++) {
    const slope = slopes[bank] as number;
    worst += slope * ((slope > 0 ? high[bank] : low[bank]) as number);
  }
  return worst > most ? [{ slopes: withLevel(slopes, 0), most }] : [];
}

/** What a tangent asks of the step and of the change of the energy. */
function askedBy(tangent: Tangent, bundle: Bundle): readonly Condition[] {
  const { here } = bundle;
  const now = forecastAt(tangent, here.place);
  const limits = tangent.excessSlopes.flatMap((slopes, limit) => {
    const excess = Math.min(here.excess[limit] as number, now.excess[limit] as number);
    return limitWithin(slopes, Math.max(0, -excess - AIM), bundle);
  });
  const most = Math.max(0, here.energy - now.energy);
  return [{ slopes: withLevel(tangent.energySlopes, -1), most }, ...limits];
}

/** What must still be made up for where an earlier step broke limits, by the slopes of the tangent here. */
function askedAgain({ step, excess }: Correction, bundle: Bundle): readonly Condition[] {
  return bundle.here.excessSlopes.flatMap((slopes, limit) =>
    limitWithin(slopes, dot(slopes, step) - (excess[limit] as number) - AIM, bundle),
  );
}

/**
 * Step of the log speeds that lowers the energy most, as the highest of all tangents has it, with every limit held by all
 * of them.
 *
 * Source: method of bundles with a quadratic term, C. Lemaréchal, "Nondifferentiable optimization", Handbooks in
 * Operations Research 1 (1989) 529-572 (from memory); limits linearised as in sequential quadratic programming.
 *
 * @param bundle tangents, corrections and bounds
 * @returns null if no step is found
 */
export function bundleStep(bundle: Bundle): Step | null {
  const { here, others, corrections, low, high } = bundle;
  const size = here.place.length;
  const conditions = [
    ...withinBounds(low, high, size + 1),
    ...[here, ...others].flatMap((tangent) => askedBy(tangent, bundle)),
    ...corrections.flatMap((correction) => askedAgain(correction, bundle)),
  ];
  const curvatures = here.energySlopes.map((slope) => Math.max(LEAST_CURVATURE, CURVATURE * Math.abs(slope)));
  const found = leastQuadratic(
    withLevel(curvatures, LEVEL_CURVATURE),
    new Float64Array(size + 1).with(size, 1),
    conditions,
  );
  return found && { step: found.slice(0, size), promised: -(found[size] as number) };
}
