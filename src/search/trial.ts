import { type AskedLimit, askedLimits, refusals } from '../enclosure/asked-limits.ts';
import { allowedRanges } from '../enclosure/avoided-speeds.ts';
import type { Duty } from '../enclosure/enclosure.ts';
import type { Machine } from '../enclosure/machine.ts';
import { newNoiseState, soundEnergy } from '../enclosure/noise.ts';
import { createPass, type PassFailure } from '../enclosure/pass.ts';
import { conditionsOf, newPassState } from '../enclosure/pass-state.ts';
import { HOPELESS } from '../heat/part-temperature.ts';
import type { Fraction, KelvinDifference } from '../quantities/dimensions.ts';

/** Accuracy of the temperatures of a trial [K]: a level changes by about 1 dB per kelvin at most. */
const TRIAL_TOLERANCE: KelvinDifference = 1e-6;

/** One build in one duty at given speeds. */
export interface Point {
  /** Speed of each bank as a share of full speed [-]. */
  readonly ratios: Float64Array;
  /** Sound energy at the listener [-]; infinite if there is no solution. */
  readonly energy: number;
  /** Temperature above what each limit allows [K], margin included; order of the trial's limits. */
  readonly excess: Float64Array;
  /** The largest excess [K]; ≤ 0 if all limits hold and nothing is refused; −∞ if there are none. */
  readonly worst: KelvinDifference;
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
  /** Passes made so far. */
  readonly passes: () => number;
}

/** Least speeds of the banks of a build [-]. */
function floorsOf(machine: Machine): Float64Array {
  return Float64Array.from(machine.banks, (bank) => allowedRanges(bank)[0]?.from ?? 1);
}

/**
 * Prepares trials of a build in one duty. Each trial starts from the air and heat of the one before.
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
  const isRefused = refusals(machine, duty);
  let passes = 0;

  const excessOf = ({ found, limit }: AskedLimit, index: number): KelvinDifference =>
    found(state) - limit + (asked?.[index] ?? enclosure.margin);

  const evaluate = (ratios: Float64Array): Point => {
    passes += 1;
    const failure = pass(conditions, ratios, state, TRIAL_TOLERANCE);
    const excess = failure
      ? new Float64Array(limits.length).fill(Number.POSITIVE_INFINITY)
      : Float64Array.from(limits, excessOf);
    const energy = failure ? Number.POSITIVE_INFINITY : soundEnergy(machine, ratios, state, noise);
    // Among refused ones the coolest still counts as the least bad.
    const hopeless = !failure && isRefused(state) ? HOPELESS + Math.max(0, largest(excess)) : null;
    const worst = failure ? Number.POSITIVE_INFINITY : (hopeless ?? largest(excess));
    return { ratios: Float64Array.from(ratios), energy, excess, worst, failure };
  };

  return {
    machine,
    duty,
    limits,
    floors: floorsOf(machine),
    ceilings: Float64Array.from(machine.banks, (bank) => allowedRanges(bank).at(-1)?.to ?? 1),
    evaluate,
    passes: () => passes,
  };
}

function largest(values: Float64Array): number {
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

/**
 * The trial restricted to each combination of the speed ranges its banks may run in; just itself if no bank has
 * speeds to avoid.
 */
export function withoutAvoidedSpeeds(trial: Trial): readonly Trial[] {
  let boxes: { readonly floors: number[]; readonly ceilings: number[] }[] = [{ floors: [], ceilings: [] }];
  for (const bank of trial.machine.banks) {
    boxes = boxes.flatMap(({ floors, ceilings }) =>
      allowedRanges(bank).map(({ from, to }) => ({ floors: [...floors, from], ceilings: [...ceilings, to] })),
    );
  }
  return boxes.map(({ floors, ceilings }) => ({
    ...trial,
    floors: Float64Array.from(floors),
    ceilings: Float64Array.from(ceilings),
  }));
}
