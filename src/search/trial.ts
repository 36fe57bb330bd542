import { type AskedLimit, askedLimits, collapses } from '../enclosure/asked-limits.ts';
import { drivesOf, perBank } from '../enclosure/drives.ts';
import type { Duty } from '../enclosure/enclosure.ts';
import type { Machine } from '../enclosure/machine.ts';
import { newNoiseState, quietestEnergy, soundEnergy } from '../enclosure/noise.ts';
import { createPass, type PassFailure } from '../enclosure/pass.ts';
import { conditionsOf, coolDown, newPassState } from '../enclosure/pass-state.ts';
import { HOPELESS } from '../heat/part-temperature.ts';
import type { Fraction, KelvinDifference, Watts } from '../quantities/dimensions.ts';
import { pointAsks } from './asks/point-asks.ts';

/** Accuracy of the temperatures of a trial [K]: a level changes by about 1 dB per kelvin at most. */
const TRIAL_TOLERANCE: KelvinDifference = 1e-6;

/** One build in one duty at given speeds. */
export interface Point {
  /** Speed of each bank as a share of full speed [-]. */
  readonly ratios: Float64Array;
  /** Sound energy at the listener [-]; infinite if there is no solution. */
  readonly energy: number;
  /**
   * Temperature above what each limit allows [K], margin included; order of the trial's limits. Behind them what is
   * asked beside them.
   */
  readonly excess: Float64Array;
  /** The largest excess [K]; ≤ 0 if all limits hold and nothing is refused; −∞ if there are none. */
  readonly worst: KelvinDifference;
  /** The same of the temperatures alone [K]. */
  readonly warmest: KelvinDifference;
  /** Electrical power of all fans [W]. */
  readonly fanPower: Watts;
  /** Mass flow of each leg [kg/s]; none if there is no solution. */
  readonly flows: Float64Array;
  readonly failure: PassFailure | null;
}

/** A build in one duty, ready to be tried at any speeds. */
export interface Trial {
  readonly machine: Machine;
  readonly duty: Duty;
  readonly limits: readonly AskedLimit[];
  /** Lowest speed of each bank as a share of full speed [-]. */
  readonly floors: Float64Array;
  /** Highest speed of each bank as a share of full speed [-]. */
  readonly ceilings: Float64Array;
  readonly evaluate: (ratios: Float64Array) => Point;
  /** Least energy that these or any higher speeds can have [-]. */
  readonly leastEnergy: (ratios: Float64Array) => number;
  /** Speeds of all banks, where those of the trial stand for several. */
  readonly allSpeeds: (ratios: Float64Array) => Float64Array;
  /** Passes made so far. */
  readonly passes: () => number;
}

/**
 * Prepares trials of a build in one duty. Each starts from cold, so that what it finds depends on its speeds alone.
 *
 * @param machine the build
 * @param duty the state of use
 * @param fanHeat share of the fans' own power that warms the air [-]: 1, or 0 for a bound
 * @param asked margin asked of each limit, order of the limits [K]; that of the enclosure if absent
 */
export function createTrial(machine: Machine, duty: Duty, fanHeat = 1, asked?: Float64Array): Trial {
  const { enclosure } = machine.plant;
  const conditions = { ...conditionsOf(enclosure, duty), fanHeat };
  const pass = createPass(machine);
  const state = newPassState(machine);
  const noise = newNoiseState(machine);
  const limits = askedLimits(machine, duty);
  const asks = pointAsks(machine, duty);
  const collapsed = collapses(machine, duty);
  const drives = drivesOf(machine);
  let passes = 0;

  const excessOf = ({ found, limit }: AskedLimit, index: number): KelvinDifference =>
    found(state) - limit + (asked?.[index] ?? enclosure.margin);

  const evaluate = (ratios: Float64Array): Point => {
    passes += 1;
    coolDown(state);
    const failure = pass(conditions, ratios, state, TRIAL_TOLERANCE);
    if (failure) return failedAt(ratios, limits.length + asks.length, failure);
    const temperatures = limits.map(excessOf);
    const excess = Float64Array.from([...temperatures, ...asks.map((ask) => ask(ratios, state))]);
    const energy = soundEnergy(machine, ratios, state, noise);
    // Among refused ones the coolest still counts as the least bad.
    const refused = collapsed(state);
    const overall = (most: number): KelvinDifference => (refused ? HOPELESS + Math.max(0, most) : most);
    const worst = overall(largest(excess));
    const warmest = asks.length > 0 ? overall(largest(temperatures)) : worst;
    const fanPower = state.fanPowers.reduce((sum, power) => sum + power, 0);
    const flows = Float64Array.from(state.network.flows);
    return {
      ratios: Float64Array.from(ratios),
      energy,
      excess,
      worst,
      warmest,
      fanPower,
      flows,
      failure: null,
    };
  };

  return {
    machine,
    duty,
    limits,
    floors: perBank(
      drives,
      drives.map(({ ranges }) => ranges[0]?.from ?? 1),
    ),
    ceilings: perBank(
      drives,
      drives.map(({ ranges }) => ranges.at(-1)?.to ?? 1),
    ),
    evaluate,
    leastEnergy: (ratios) => quietestEnergy(machine, ratios),
    allSpeeds: (ratios) => ratios,
    passes: () => passes,
  };
}

/** A point without a solution. */
function failedAt(ratios: Float64Array, entries: number, failure: PassFailure): Point {
  return {
    ratios: Float64Array.from(ratios),
    energy: Number.POSITIVE_INFINITY,
    excess: new Float64Array(entries).fill(Number.POSITIVE_INFINITY),
    worst: Number.POSITIVE_INFINITY,
    warmest: Number.POSITIVE_INFINITY,
    fanPower: Number.POSITIVE_INFINITY,
    flows: new Float64Array(0),
    failure,
  };
}

function largest(values: ArrayLike<number> & Iterable<number>): number {
  let most = Number.NEGATIVE_INFINITY;
  for (const value of values) if (value > most) most = value;
  return most;
}

/** Whether all limits hold at a point. */
export function isAdequate(point: Point): boolean {
  return point.worst <= 0;
}

/** The quieter of two points [-]; an inadequate one never wins. */
export function quieter(first: Point | null, second: Point | null): Point | null {
  if (!second || !isAdequate(second)) return first;
  if (!first || second.energy < first.energy) return second;
  return first;
}

/** Keeps the speed of a bank within what the trial allows [-]. */
export function clampRatio(trial: Trial, bank: number, ratio: Fraction): Fraction {
  return Math.min(trial.ceilings[bank] as number, Math.max(trial.floors[bank] as number, ratio));
}

/** Every bank as fast as the trial allows. */
export function fullSpeed(trial: Trial): Float64Array {
  return Float64Array.from(trial.ceilings);
}
