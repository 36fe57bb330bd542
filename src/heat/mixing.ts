import { solveLinear } from '../numerics/linear-system.ts';
import type {
  Fraction,
  JoulesPerKilogramKelvin,
  Kelvins,
  KilogramsPerSecond,
} from '../quantities/dimensions.ts';
import { runsAlong, shareAhead, streamAlong, streamBack } from './stagnant-air.ts';

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

/** Leak to the room in the heat balance of a chamber that no leg joins to it [kg/s]: makes it solvable. */
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

/**
 * The linear system of the heat balance, in kelvin above the room; unknowns are the chambers but outside, then the
 * exhaust if drawn in.
 */
interface HeatSystem {
  readonly topology: MixingTopology;
  readonly unknowns: number;
  /** Row of the mixed exhaust, or −1 if nothing draws it in again. */
  readonly exhaust: number;
  /** Leak of each chamber to the room [kg/s]. */
  readonly leaks: Float64Array;
  readonly matrix: Float64Array;
  readonly rhs: Float64Array;
}

/** A leak for each chamber that no chain of legs joins to the room. */
function leaksOf({ chambers, from, to }: MixingTopology): Float64Array {
  const leaks = new Float64Array(chambers).fill(NOMINAL_LEAK, 1);
  for (let changed = true; changed; ) {
    changed = false;
    from.forEach((start, leg) => {
      const end = to[leg] as number;
      if ((leaks[start] === 0) === (leaks[end] === 0)) return;
      leaks[start] = 0;
      leaks[end] = 0;
      changed = true;
    });
  }
  return leaks;
}

function newSystem(topology: MixingTopology): HeatSystem {
  const circulates = topology.recirculation.some((share) => share > 0);
  const unknowns = topology.chambers - 1 + (circulates ? 1 : 0);
  return {
    topology,
    unknowns,
    exhaust: circulates ? topology.chambers - 1 : -1,
    leaks: leaksOf(topology),
    matrix: new Float64Array(unknowns * unknowns),
    rhs: new Float64Array(unknowns),
  };
}

function addTo({ matrix, unknowns }: HeatSystem, row: number, column: number, value: number): void {
  const at = row * unknowns + column;
  matrix[at] = (matrix[at] as number) + value;
}

/** Row of the balance of what air flows into, −1 if none. */
function rowOf(system: HeatSystem, target: number): number {
  return target === 0 ? system.exhaust : target - 1;
}

/** Brings air of a source, `again` of it exhaust if that is outside, into the balance of a row. */
function bringIn(
  system: HeatSystem,
  row: number,
  source: number,
  flow: KilogramsPerSecond,
  again: Fraction,
): void {
  addTo(system, row, row, flow);
  if (source !== 0) addTo(system, row, source - 1, -flow);
  else if (again > 0) addTo(system, row, system.exhaust, -flow * again);
}

/**
 * Brings the air of a leg, warmed by `gain` (heat over cp [kg·K/s]), into the balance of what it flows into. Where it hardly
 * moves heat leaves at both ends.
 */
function bringLeg(system: HeatSystem, leg: number, flow: number, gain: number): void {
  const { from, to, recirculation } = system.topology;
  const forward = runsAlong(flow);
  const source = (forward ? from[leg] : to[leg]) as number;
  const target = (forward ? to[leg] : from[leg]) as number;
  const row = rowOf(system, target);
  const ahead = shareAhead(flow);
  if (row >= 0) {
    // Exhaust is drawn in again only while the leg flows inward.
    bringIn(system, row, source, streamAlong(flow), forward ? (recirculation[leg] as number) : 0);
    system.rhs[row] = (system.rhs[row] as number) + gain * ahead;
  }
  const back = streamBack(flow);
  const behind = rowOf(system, source);
  if (ahead < 1 && behind >= 0) system.rhs[behind] = (system.rhs[behind] as number) + gain * (1 - ahead);
  if (back > 0 && behind >= 0) bringIn(system, behind, target, back, 0);
}

function startBalance(system: HeatSystem, chamberHeat: Float64Array, specificHeat: number): void {
  const { matrix, rhs, leaks, topology } = system;
  matrix.fill(0);
  rhs.fill(0);
  for (let chamber = 1; chamber < topology.chambers; chamber++) {
    const row = chamber - 1;
    const skin = (topology.conductances?.[chamber] ?? 0) / specificHeat;
    addTo(system, row, row, (leaks[chamber] as number) + skin);
    rhs[row] = (chamberHeat[chamber] as number) / specificHeat;
  }
}

/**
 * Prepares the heat balance of an airway with ideal mixing in every chamber.
 *
 * Each chamber: Σ ṁ_in·T_in + Q/cp = Σ ṁ_in·T + G/cp·(T − T_room), G the conductance of its wall. A leg hands on
 * the air of the chamber its flow leaves, warmed by the heat given off in it (where it hardly moves some of that heat
 * goes back, see `shareAhead`). Air drawn from outside is (1 − f)
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
    startBalance(system, chamberHeat, specificHeat);
    for (let leg = 0; leg < flows.length; leg++) {
      bringLeg(system, leg, flows[leg] as number, (legHeat[leg] as number) / specificHeat);
    }
    if (unknowns > 0 && !solveLinear(matrix, rhs, unknowns)) return false;
    temperatures[0] = room;
    for (let chamber = 1; chamber < chambers; chamber++) {
      temperatures[chamber] = room + (rhs[chamber - 1] as number);
    }
    temperatures[chambers] = exhaust >= 0 ? room + (rhs[exhaust] as number) : room;
    return true;
  };
}
