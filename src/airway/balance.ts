import { solveLinear } from '../numerics/linear-system.ts';
import { solveSymmetric } from '../numerics/symmetric-system.ts';
import type { KilogramsPerSecond } from '../quantities/dimensions.ts';
import type { LegLaw } from './leg-law.ts';
import { linearise, move, type NewtonSystem, newSystem, takeSteps } from './newton-system.ts';
import { stepLength } from './step-length.ts';
import type { Topology } from './topology.ts';

/** Flows and pressures, overwritten by each solution; the flows also serve as the next starting point. */
export interface NetworkState {
  /** Mass flow of each leg [kg/s], positive from `from` to `to`. */
  readonly flows: Float64Array;
  /** Total pressure of each chamber against outside [Pa]. */
  readonly pressures: Float64Array;
}

/** How a solution went; if not `balanced`, the state is unusable. `singular`: a chamber has no path to outside. */
export interface BalanceReport {
  readonly status: 'balanced' | 'singular' | 'too many steps' | 'not a number';
  readonly steps: number;
}

export type Balancer = (laws: readonly LegLaw[], state: NetworkState, tolerance?: number) => BalanceReport;

/** Start of a flow nobody has guessed yet [kg/s]: about 15 m³/h, the middle of what small boxes pass. */
const FIRST_GUESS: KilogramsPerSecond = 0.005;
const MAX_STEPS = 100;
/** Relative change below which steps are taken whole. */
const UNGUARDED = 1e-3;
/** Steps by tangents alone: a solution that begins close by needs no more, and they are the cheapest. */
const PLAIN_STEPS = 2;
/** Default accuracy of the last step, relative to flows above 0.03 kg/s; what it leaves is far smaller. */
const TOLERANCE = 1e-10;

/**
 * A fresh state for an airway, every leg at a small forward flow.
 *
 * @param topology chambers and legs
 */
export function newNetworkState(topology: Topology): NetworkState {
  return {
    flows: new Float64Array(topology.from.length).fill(FIRST_GUESS),
    pressures: new Float64Array(topology.chambers),
  };
}

/** Whether every chamber is joined to outside by some chain of legs. */
function allReachOutside({ chambers, from, to }: Topology): boolean {
  const reached = new Set([0]);
  for (let size = 0; size < reached.size; ) {
    size = reached.size;
    for (let leg = 0; leg < from.length; leg++) {
      const start = from[leg] as number;
      const end = to[leg] as number;
      if (reached.has(start) || reached.has(end)) reached.add(start).add(end);
    }
  }
  return reached.size === chambers;
}

/** Whether the linear system has a solution, which then stands in its heads. Small ones are quicker written out. */
function solveHeads({ matrix, heads, unknowns }: NewtonSystem): boolean {
  if (unknowns === 0) return true;
  return unknowns < 3 ? solveLinear(matrix, heads, unknowns) : solveSymmetric(matrix, heads, unknowns);
}

/** One Newton step; tells whether it was the last. */
function newtonStep(
  system: NewtonSystem,
  laws: readonly LegLaw[],
  { flows, pressures }: NetworkState,
  count: number,
  tolerance: number,
): BalanceReport['status'] | 'on the way' {
  linearise(system, laws, flows, count > PLAIN_STEPS);
  if (!solveHeads(system)) return 'singular';
  const change = takeSteps(system, flows);
  if (!Number.isFinite(change)) return 'not a number';
  // The first step may start from flows that do not balance: only the full step mends that. Close to the
  // solution Newton needs no guard, and rounding would spoil the comparison of gradients.
  const share = count === 1 || change < UNGUARDED ? 1 : stepLength(system, laws, flows);
  move(system, flows, share);
  if (share < 1 || change > tolerance) return 'on the way';
  pressures.set(system.pressures);
  return 'balanced';
}

/**
 * Prepares the solution of the flow balance of an airway: mass in = mass out in every chamber, and the loss
 * of every leg equal to the pressure difference of its ends.
 *
 * Newton on flows and pressures together (global gradient). Because every leg law is strictly increasing,
 * the solution is the minimum of a strictly convex function (the content), hence unique, and a step that
 * overshoots is shortened until the gradient along it has fallen. From the third step on a bent law is replaced by its
 * secant towards where the pressures of the last step put it, so that what hardly flows is found soon too.
 * Source: Todini & Pilati, "A gradient algorithm for the analysis of pipe networks" (1988); content by
 * Millar (1951), both from memory; opened: the hydraulic solver of EPANET 2.
 *
 * @param topology chambers and legs; if a chamber has no path to outside every solution is `singular`
 * @returns a function (laws, state, relative tolerance of the flows [-]) that overwrites the state [kg/s, Pa]
 */
export function createBalancer(topology: Topology): Balancer {
  const system = newSystem(topology);
  const solvable = allReachOutside(topology);
  return (laws, state, tolerance = TOLERANCE) => {
    if (!solvable) return { status: 'singular', steps: 0 };
    system.pressures.fill(0);
    system.known = false;
    for (let count = 1; count <= MAX_STEPS; count++) {
      const status = newtonStep(system, laws, state, count, tolerance);
      if (status !== 'on the way') return { status, steps: count };
    }
    return { status: 'too many steps', steps: MAX_STEPS };
  };
}
