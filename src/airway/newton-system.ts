import type { KilogramsPerSecond, Pascals } from '../quantities/dimensions.ts';
import type { LegLaw } from './leg-law.ts';
import type { Topology } from './topology.ts';

/**
 * Least slope of a leg law [Pa·s/kg]: keeps the matrix regular if a law is flat at a point or, as in a leg of empty
 * places, everywhere. Smaller ones let the rounding of the pressures through as flow.
 */
const LEAST_SLOPE = 1e-2;
/** Flow below which the accuracy is absolute [kg/s]. */
const SMALL_FLOW: KilogramsPerSecond = 0.03;
/** A leg whose loss misses the pressure difference by no more than this is done, however flat its law [Pa]. */
const SMALL_MISMATCH: Pascals = 1e-10;
/** Flows below this are nothing [kg/s]: a law may overflow on the smallest numbers there are. */
const NO_FLOW: KilogramsPerSecond = 1e-30;
const DAMPING_TRIALS = 12;
/** Share of the starting gradient that may be left after a damped step. */
const DAMPING = 0.5;

/** The linearised airway: one equation a leg, one balance a chamber. */
export interface NewtonSystem {
  readonly topology: Topology;
  readonly unknowns: number;
  readonly matrix: Float64Array;
  /** Right-hand sides, then the pressures of the chambers but outside. */
  readonly heads: Float64Array;
  readonly losses: Float64Array;
  readonly slopes: Float64Array;
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
    losses: new Float64Array(legs),
    slopes: new Float64Array(legs),
    steps: new Float64Array(legs),
    drops: new Float64Array(legs),
  };
}

function add(
  system: NewtonSystem,
  chamber: number,
  other: number,
  conductance: number,
  outflow: number,
): void {
  if (chamber === 0) return;
  const { matrix, heads, unknowns } = system;
  const row = chamber - 1;
  const diagonal = row * unknowns + row;
  matrix[diagonal] = (matrix[diagonal] as number) + conductance;
  if (other !== 0) {
    const at = row * unknowns + other - 1;
    matrix[at] = (matrix[at] as number) - conductance;
  }
  heads[row] = (heads[row] as number) - outflow;
}

/**
 * Sets up the linear system around given flows.
 *
 * @param system overwritten, but for its steps and drops
 * @param laws of the legs, strictly increasing
 * @param flows mass flow of each leg [kg/s]
 */
export function linearise(system: NewtonSystem, laws: readonly LegLaw[], flows: Float64Array): void {
  const { from, to } = system.topology;
  system.matrix.fill(0);
  system.heads.fill(0);
  for (let leg = 0; leg < from.length; leg++) {
    const law = laws[leg] as LegLaw;
    law.evaluate(flows[leg] as number);
    const slope = Math.max(law.slope, LEAST_SLOPE);
    system.losses[leg] = law.loss;
    system.slopes[leg] = slope;
    const start = from[leg] as number;
    const end = to[leg] as number;
    if (start === end) continue;
    const flow = (flows[leg] as number) - law.loss / slope;
    add(system, start, end, 1 / slope, flow);
    add(system, end, start, 1 / slope, -flow);
  }
}

function headOf({ heads }: NewtonSystem, chamber: number): Pascals {
  return chamber === 0 ? 0 : (heads[chamber - 1] as number);
}

/**
 * Takes the Newton step of every flow from the solved linear system.
 *
 * @param system with its pressures solved; receives steps and drops
 * @param flows mass flow of each leg [kg/s]
 * @returns the largest relative change among the legs that are not done [-]; 0 if all are
 */
export function takeSteps(system: NewtonSystem, flows: Float64Array): number {
  const { topology, losses, slopes, steps, drops } = system;
  let change = 0;
  for (let leg = 0; leg < steps.length; leg++) {
    const drop = headOf(system, topology.from[leg] as number) - headOf(system, topology.to[leg] as number);
    const mismatch = drop - (losses[leg] as number);
    const delta = mismatch / (slopes[leg] as number);
    steps[leg] = delta;
    drops[leg] = drop;
    if (Math.abs(mismatch) <= SMALL_MISMATCH) continue;
    change = Math.max(change, Math.abs(delta) / (Math.abs(flows[leg] as number) + SMALL_FLOW));
  }
  return change;
}

/**
 * Gradient of the content along the step, `share` of the way. The steps are balanced, so the pressure differences
 * add nothing; subtracting them keeps rounding of the large losses out of the sum.
 */
function gradient(system: NewtonSystem, laws: readonly LegLaw[], flows: Float64Array, share: number): number {
  const { steps, drops } = system;
  let sum = 0;
  for (let leg = 0; leg < steps.length; leg++) {
    const delta = steps[leg] as number;
    const law = laws[leg] as LegLaw;
    law.evaluate((flows[leg] as number) + share * delta);
    sum += (law.loss - (drops[leg] as number)) * delta;
  }
  return sum;
}

/**
 * Length of the step: 1 unless the gradient of the content has turned strongly positive there.
 *
 * @param system with its steps taken
 * @param laws of the legs, strictly increasing
 * @param flows mass flow of each leg before the step [kg/s]
 * @returns share of the step to go [-], > 0 and ≤ 1
 */
export function stepLength(system: NewtonSystem, laws: readonly LegLaw[], flows: Float64Array): number {
  let start = 0;
  for (let leg = 0; leg < system.steps.length; leg++) {
    start += (system.slopes[leg] as number) * (system.steps[leg] as number) ** 2;
  }
  const allowed = DAMPING * start;
  let low = 0;
  let high = 1;
  let share = 1;
  for (let trial = 0; trial < DAMPING_TRIALS; trial++) {
    const slope = gradient(system, laws, flows, share);
    if (slope <= allowed && (share === 1 || slope >= -allowed)) return share;
    if (slope > 0) high = share;
    else low = share;
    share = 0.5 * (low + high);
  }
  return share;
}

/**
 * Moves the flows along the steps. What is next to nothing becomes 0.
 *
 * @param system with its steps taken
 * @param flows mass flow of each leg [kg/s], overwritten
 * @param share of each step to go [-]
 */
export function move({ steps }: NewtonSystem, flows: Float64Array, share: number): void {
  for (let leg = 0; leg < steps.length; leg++) {
    const flow = (flows[leg] as number) + share * (steps[leg] as number);
    flows[leg] = Math.abs(flow) < NO_FLOW ? 0 : flow;
  }
}

/**
 * Hands over the pressures of the chambers.
 *
 * @param system solved
 * @param pressures of all chambers [Pa], overwritten; outside, index 0, gets 0
 */
export function settle(system: NewtonSystem, pressures: Float64Array): void {
  for (let chamber = 0; chamber <= system.unknowns; chamber++) pressures[chamber] = headOf(system, chamber);
}
