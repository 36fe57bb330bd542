import { humidityRatio, type Site, specificHeat } from '../air/air.ts';
import { type NetworkState, newNetworkState } from '../airway/balance.ts';
import type { KelvinDifference, Kelvins, Watts } from '../quantities/dimensions.ts';
import type { Duty, Enclosure } from './enclosure.ts';
import type { Machine } from './machine.ts';

/** Above this the properties of air are held [K]: nothing so hot is ever adequate. */
export const HOTTEST_AIR: Kelvins = 500;

/**
 * Change of a temperature between two rounds as a pass judges it [K]. Beyond what is ever adequate it counts for less, as
 * the square of the temperature: there a rounding of a flow that hardly moves is many kelvins.
 *
 * @param before temperature [K], > 0
 * @param after temperature [K], > 0
 */
export function changeOf(before: Kelvins, after: Kelvins): KelvinDifference {
  const hot = HOTTEST_AIR / Math.max(HOTTEST_AIR, after);
  return Math.abs(after - before) * hot * hot;
}

/** Everything a pass finds out; overwritten by the next pass, which starts from it. */
export interface PassState {
  readonly network: NetworkState;
  /** Temperature of each chamber [K], the room first, then the mixed exhaust if any is drawn in again. */
  readonly chambers: Float64Array;
  /** Temperature of the air at the inlet of each stage of each leg [K]. */
  readonly stages: readonly Float64Array[];
  /** Heat given off in each stage of each leg [W]. */
  readonly stageHeat: readonly Float64Array[];
  readonly partTemperatures: Float64Array;
  /** Air each part gives its heat to [K]. */
  readonly partAir: Float64Array;
  readonly partPowers: Float64Array;
  /** 1 for each part whose power rises faster than its heat can leave, else 0. */
  readonly runaways: Uint8Array;
  /** Resistance between the base a part sits on and its air [K/W]; 0 in a chamber. */
  readonly finResistances: Float64Array;
  /** Electrical power of each bank [W]. */
  readonly fanPowers: Float64Array;
  /** Mean density of the air in each leg that rises or falls [kg/m³]; meaningless in others. */
  readonly columns: Float64Array;
  /** Rounds of air and heat in the last pass; 0 before the first. */
  rounds: number;
  /** Newton steps in the last pass. */
  steps: number;
}

/** The conditions of a pass beside the speeds. */
export interface Conditions {
  readonly site: Site;
  readonly room: Kelvins;
  readonly specificHeat: number;
  /** Factor on each part's power [-]. */
  readonly heat: readonly number[];
  /** Share of the fans' own power that warms the air [-]: 1, or 0 for a bound. */
  readonly fanHeat: number;
  /** Powers held whatever the temperature [W], to look at one loop alone; a part without an entry is free. */
  readonly held?: ReadonlyMap<number, Watts>;
}

/** Conditions of a duty: the room's air holds the site's relative humidity and keeps its moisture when warmed. */
export function conditionsOf(enclosure: Enclosure, duty: Duty): Conditions {
  const { pressure, relativeHumidity } = enclosure.site;
  const moisture = humidityRatio(relativeHumidity, duty.room, pressure);
  return {
    site: { pressure, humidityRatio: moisture },
    room: duty.room,
    specificHeat: specificHeat(moisture),
    heat: duty.heat,
    fanHeat: 1,
  };
}

/** A state in which nothing is known yet. */
export function newPassState(machine: Machine): PassState {
  const parts = machine.seats.length;
  return {
    network: newNetworkState(machine.plant.topology),
    chambers: new Float64Array(machine.plant.topology.chambers + 1),
    stages: machine.legs.map((leg) => new Float64Array(leg.stages.length)),
    stageHeat: machine.legs.map((leg) => new Float64Array(leg.stages.length)),
    partTemperatures: new Float64Array(parts),
    partAir: new Float64Array(parts),
    partPowers: new Float64Array(parts),
    runaways: new Uint8Array(parts),
    finResistances: new Float64Array(parts),
    fanPowers: new Float64Array(machine.banks.length),
    columns: new Float64Array(machine.legs.length),
    rounds: 0,
    steps: 0,
  };
}

/**
 * Lets the next pass start from cold, as a device does that is switched on. Where hot fins beside air that hardly moves
 * allow two solutions this leads to the cooler one, whatever was looked at before.
 *
 * @param state of earlier passes
 */
export function coolDown(state: PassState): void {
  state.rounds = 0;
}
