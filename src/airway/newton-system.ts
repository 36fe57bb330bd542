import type { KilogramsPerSecond, Pascals } from '../quantities/dimensions.ts';
import type { LegLaw } from './leg-law.ts';
import { secantSlope } from './secant-slope.ts';
import type { Topology } from './topology.ts';

/**
 * Least slope of a leg law [Pa·s/kg]: keeps the matrix regular if a law is flat at a point or, as in a leg of empty
 * places, everywhere. Greater ones make the pressures of what is joined without loss creep together; smaller ones
 * make the matrix singular to rounding if such chambers reach outside by a pinhole only.
 */
const LEAST_SLOPE = 1e-3;
/** Flow below which the accuracy is absolute [kg/s]. */
const SMALL_FLOW: KilogramsPerSecond = 0.03;
/** A leg whose loss misses the pressure difference by no more than this is done, however flat its law [Pa]. */
const SMALL_MISMATCH: Pascals = 1e-10;
/** Pressure that a mismatch is compared with, so that the pressures of steep legs are exact too [Pa]. */
const LARGE_LOSS: Pascals = 1e4;
/** Step, as a share of the flow, up to which a law counts as straight. */
const STRAIGHT = 0.01;
/** Flows below this are nothing [kg/s]: a law may overflow on the smallest numbers there are. */
const NO_FLOW: KilogramsPerSecond = 1e-30;

/** The linearised airway: one equation a leg, one balance a chamber. */
export interface NewtonSystem {
  readonly topology: Topology;
  readonly unknowns: number;
  readonly matrix: Float64Array;
  /** Right-hand sides, then the changes of the pressures of the chambers but outside. */
  readonly heads: Float64Array;
  /** Pressure of each chamber as it was found last [Pa]; outside, index 0, has 0. */
  readonly pressures: Float64Array;
  /** Loss of each leg [Pa] and its slope [Pa·s/kg]. */
  readonly losses: Float64Array;
  readonly slopes: Float64Array;
  /** Whether these are already those at the flows to be linearised around. */
  known: boolean;
  readonly steps: Float64Array;
  /** Pressure difference of the ends of each leg, as the linear system has it [Pa]. */
  readonly drops: Float64Array;
}

/**
 * Room for the system of an airway.
 *
 * @param topology chambers and legs
 */
export function newSystem(topology: Topology): NewtonSystem {
  const legs = topology.from.length;
  const unknowns = topology.chambers - 1;
  return {
    topology,
    unknowns,
    matrix: new Float64Array(unknowns * unknowns),
    heads: new Float64Array(unknowns),
    pressures: new Float64Array(topology.chambers),
    losses: new Float64Array(legs),
    slopes: new Float64Array(legs),
    known: false,
    steps: new Float64Array(legs),
    drops: new Float64Array(legs),
  };
}

/** Adds a leg between two chambers: what flows out at the pressures found last, and how that grows with them. */
function join(system: NewtonSystem, start: number, end: number, conductance: number, outflow: number): void {
  const { matrix, heads, unknowns } = system;
  if (start !== 0) {
    const diagonal = (start - 1) * (unknowns + 1);
    matrix[diagonal] = (matrix[diagonal] as number) + conductance;
    heads[start - 1] = (heads[start - 1] as number) - outflow;
  }
  if (end === 0) return;
  const diagonal = (end - 1) * (unknowns + 1);
  matrix[diagonal] = (matrix[diagonal] as number) + conductance;
  heads[end - 1] = (heads[end - 1] as number) + outflow;
  if (start === 0) return;
  const above = (start - 1) * unknowns + end - 1;
  const below = (end - 1) * unknowns + start - 1;
  matrix[above] = (matrix[above] as number) - conductance;
  matrix[below] = (matrix[below] as number) - conductance;
}

/** Empties the linear system: on the few numbers of most airways a loop is quicker than to fill. */
function clear({ matrix, heads }: NewtonSystem): void {
  for (let index = 0; index < matrix.length; index++) matrix[index] = 0;
  for (let index = 0; index < heads.length; index++) heads[index] = 0;
}

/** Pressure difference of the ends of a leg, as it was found last [Pa]. */
function dropOf({ topology, pressures }: NewtonSystem, leg: number): Pascals {
  const start = pressures[topology.from[leg] as number] as number;
  return start - (pressures[topology.to[leg] as number] as number);
}

/**
 * Sets up the linear system around given flows, in changes of the pressures: those are small at last, so that
 * rounding of the large pressures does not pass for flow.
 *
 * @param system overwritten, but for its pressures, steps and drops
 * @param laws of the legs, strictly increasing
 * @param flows mass flow of each leg [kg/s]
 * @param secants whether the line towards where a leg should be takes the place of a tangent that will not hold
 */
export function linearise(
  system: NewtonSystem,
  laws: readonly LegLaw[],
  flows: Float64Array,
  secants: boolean,
): void {
  const { losses, slopes } = system;
  const { from, to } = system.topology;
  clear(system);
  for (let leg = 0; leg < from.length; leg++) {
    const law = laws[leg] as LegLaw;
    const flow = flows[leg] as number;
    if (!system.known) {
      law.evaluate(flow);
      losses[leg] = law.loss;
      slopes[leg] = law.slope;
    }
    const loss = losses[leg] as number;
    let slope = Math.max(slopes[leg] as number, LEAST_SLOPE);
    const drop = dropOf(system, leg);
    const mismatch = drop - loss;
    if (secants && Math.abs(mismatch) > Math.max(SMALL_MISMATCH, STRAIGHT * slope * Math.abs(flow))) {
      slope = Math.max(secantSlope(law, flow, drop, slope), LEAST_SLOPE);
    }
    slopes[leg] = slope;
    const start = from[leg] as number;
    const end = to[leg] as number;
    if (start === end) continue;
    join(system, start, end, 1 / slope, flow + mismatch / slope);
  }
  system.known = false;
}

function headOf({ heads }: NewtonSystem, chamber: number): Pascals {
  return chamber === 0 ? 0 : (heads[chamber - 1] as number);
}

/**
 * Takes the Newton step of every flow from the solved linear system.
 *
 * @param system with the changes of its pressures solved; receives steps and drops
 * @param flows mass flow of each leg [kg/s]
 * @returns the largest relative change among the legs that are not done [-]; 0 if all are
 */
export function takeSteps(system: NewtonSystem, flows: Float64Array): number {
  const { topology, losses, slopes, steps, drops } = system;
  let change = 0;
  for (let leg = 0; leg < steps.length; leg++) {
    const rise = headOf(system, topology.from[leg] as number) - headOf(system, topology.to[leg] as number);
    const drop = dropOf(system, leg);
    const mismatch = drop - (losses[leg] as number) + rise;
    const delta = mismatch / (slopes[leg] as number);
    steps[leg] = delta;
    drops[leg] = drop + rise;
    const miss = Math.abs(mismatch);
    if (miss <= SMALL_MISMATCH) continue;
    change = Math.max(
      change,
      Math.abs(delta) / (Math.abs(flows[leg] as number) + SMALL_FLOW),
      miss / LARGE_LOSS,
    );
  }
  return change;
}

/**
 * Moves the flows along the steps, and the pressures all the way. What is next to nothing becomes 0.
 *
 * @param system with its steps taken; receives pressures
 * @param flows mass flow of each leg [kg/s], overwritten
 * @param share of each step to go [-]
 */
export function move(system: NewtonSystem, flows: Float64Array, share: number): void {
  const { steps, pressures } = system;
  for (let leg = 0; leg < steps.length; leg++) {
    const flow = (flows[leg] as number) + share * (steps[leg] as number);
    flows[leg] = Math.abs(flow) < NO_FLOW ? 0 : flow;
  }
  for (let chamber = 1; chamber < pressures.length; chamber++) {
    pressures[chamber] = (pressures[chamber] as number) + headOf(system, chamber);
  }
}
