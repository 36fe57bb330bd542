import { solveLinear } from '../numerics/linear-system.ts';
import type {
  Fraction,
  JoulesPerKilogramKelvin,
  Kelvins,
  KilogramsPerSecond,
} from '../quantities/dimensions.ts';

/** Where each leg takes its air from and where it leaves it; chamber 0 is outside. */
export interface MixingTopology {
  readonly chambers: number;
  readonly from: readonly number[];
  readonly to: readonly number[];
  /** Share of the box's own exhaust in what each leg draws from outside [-], 0 ≤ share < 1. */
  readonly recirculation: readonly Fraction[];
  /** From the air of each chamber through its wall to the room [W/K], index 0 of no use; none if absent. */
  readonly conductances?: readonly number[];
}

/**
 * Least mass flow that heat is spread into [kg/s]: keeps temperatures finite where no air moves. At this
 * flow one watt warms the air by 10 000 K, so nothing adequate ever depends on it.
 */
export const STAGNANT_FLOW = 1e-7;

/**
 * Whether air that hardly moves counts as running along its leg: always, because its sign is rounding, and a leg
 * that takes its air now from one end and now from the other never settles.
 *
 * Source: model assumption, no published source.
 *
 * @param flow mass flow [kg/s]
 */
export function runsAlong(flow: KilogramsPerSecond): boolean {
  return flow > -STAGNANT_FLOW;
}

/** Leak of every chamber to the room in the heat balance [kg/s]: makes a chamber without exchange solvable. */
const NOMINAL_LEAK = 1e-10;

/** Temperatures of the chambers [K], index 0 the room; and of the mixed exhaust, the last entry. */
export type Mixer = (
  flows: Float64Array,
  legHeat: Float64Array,
  chamberHeat: Float64Array,
  room: Kelvins,
  specificHeat: JoulesPerKilogramKelvin,
  temperatures: Float64Array,
) => boolean;

/** The linear system of the heat balance; unknowns are the chambers but outside, then the exhaust if drawn in. */
interface HeatSystem {
  readonly topology: MixingTopology;
  readonly unknowns: number;
  /** Row of the mixed exhaust, or −1 if nothing draws it in again. */
  readonly exhaust: number;
  readonly matrix: Float64Array;
  readonly rhs: Float64Array;
}

function newSystem(topology: MixingTopology): HeatSystem {
  const circulates = topology.recirculation.some((share) => share > 0);
  const unknowns = topology.chambers - 1 + (circulates ? 1 : 0);
  return {
    topology,
    unknowns,
    exhaust: circulates ? topology.chambers - 1 : -1,
    matrix: new Float64Array(unknowns * unknowns),
    rhs: new Float64Array(unknowns),
  };
}

function addTo({ matrix, unknowns }: HeatSystem, row: number, column: number, value: number): void {
  const at = row * unknowns + column;
  matrix[at] = (matrix[at] as number) + value;
}

/** Row of the balance the air of a leg flows into, −1 if none. */
function rowOf(system: HeatSystem, target: number): number {
  return target === 0 ? system.exhaust : target - 1;
}

/** Brings the air of one leg, warmed by `gain` (heat over cp [kg·K/s]), into the balance of a row. */
function bringIn(
  system: HeatSystem,
  row: number,
  leg: number,
  source: number,
  flow: number,
  gain: number,
  room: Kelvins,
): void {
  const { rhs, topology, exhaust } = system;
  addTo(system, row, row, flow);
  rhs[row] = (rhs[row] as number) + gain;
  if (source !== 0) {
    addTo(system, row, source - 1, -flow);
    return;
  }
  // Exhaust is drawn in again only while the leg flows inward.
  const share = topology.from[leg] === 0 ? (topology.recirculation[leg] as number) : 0;
  rhs[row] = (rhs[row] as number) + flow * (1 - share) * room;
  if (share > 0) addTo(system, row, exhaust, -flow * share);
}

/** Brings the air of a leg into the balance of what it flows into. */
function bringLeg(system: HeatSystem, leg: number, flow: number, gain: number, room: Kelvins): void {
  const { from, to } = system.topology;
  const forward = runsAlong(flow);
  const row = rowOf(system, (forward ? to[leg] : from[leg]) as number);
  if (row < 0) return;
  const source = (forward ? from[leg] : to[leg]) as number;
  bringIn(system, row, leg, source, Math.max(Math.abs(flow), STAGNANT_FLOW), gain, room);
}

function startBalance(
  system: HeatSystem,
  chamberHeat: Float64Array,
  room: Kelvins,
  specificHeat: number,
): void {
  const { matrix, rhs, unknowns, topology } = system;
  matrix.fill(0);
  for (let row = 0; row < unknowns; row++) {
    const inside = row < topology.chambers - 1;
    const skin = inside ? (topology.conductances?.[row + 1] ?? 0) / specificHeat : 0;
    const heat = inside ? (chamberHeat[row + 1] as number) / specificHeat : 0;
    addTo(system, row, row, NOMINAL_LEAK + skin);
    rhs[row] = (NOMINAL_LEAK + skin) * room + heat;
  }
}

/**
 * Prepares the heat balance of an airway with ideal mixing in every chamber.
 *
 * Each chamber: Σ ṁ_in·T_in + Q/cp = Σ ṁ_in·T + G/cp·(T − T_room), G the conductance of its wall. A leg hands on
 * the air of the chamber its flow leaves, warmed by the heat given off in it. Air drawn from outside is (1 − f)
 * room air and f mixed exhaust, where the exhaust is the mass-weighted mean of everything that leaves the box,
 * leaks included.
 * Source: energy balance, derived; recirculation share as defined by the Open DCME model (published).
 *
 * @param topology chambers, legs, recirculation shares [-] and conductances of walls [W/K]
 * @returns a function of mass flows [kg/s], heat given off in each leg [W] and each chamber [W], room
 *   temperature [K] and specific heat [J/(kg·K)] that overwrites the temperatures [K] and tells whether the
 *   balance could be solved
 */
export function createMixer(topology: MixingTopology): Mixer {
  const { chambers } = topology;
  const system = newSystem(topology);
  const { matrix, rhs, unknowns, exhaust } = system;
  return (flows, legHeat, chamberHeat, room, specificHeat, temperatures) => {
    startBalance(system, chamberHeat, room, specificHeat);
    for (let leg = 0; leg < flows.length; leg++) {
      bringLeg(system, leg, flows[leg] as number, (legHeat[leg] as number) / specificHeat, room);
    }
    if (unknowns > 0 && !solveLinear(matrix, rhs, unknowns)) return false;
    temperatures[0] = room;
    for (let chamber = 1; chamber < chambers; chamber++) temperatures[chamber] = rhs[chamber - 1] as number;
    temperatures[chambers] = exhaust >= 0 ? (rhs[exhaust] as number) : room;
    return true;
  };
}
