import type { Duty } from '../enclosure/enclosure.ts';
import type { Machine } from '../enclosure/machine.ts';
import type { Decibels, KelvinDifference, Watts } from '../quantities/dimensions.ts';
import { fasterIsCooler } from '../search/monotone-airway.ts';
import { quietestSpeeds } from '../search/quietest-speeds.ts';
import { createTrial, fullSpeed } from '../search/trial.ts';
import { energy, levelOf } from '../sound/levels.ts';
import { type OperatingState, operatingBench, type TightLimit } from './operating-state.ts';

/** The limit with the least margin of all duties. */
export interface TightestOfAll extends TightLimit {
  readonly duty: string;
}

/** A build in all duties, in a few numbers. */
export interface BuildState {
  readonly adequate: boolean;
  /** Mean over time [dB]; NaN without a solution. */
  readonly level: Decibels;
  /** Of the loudest duty that has a share [dB]. */
  readonly loudest: Decibels;
  /** Absent if nothing has a limit. */
  readonly tightest?: TightestOfAll;
  /** Mean over time [W]. */
  readonly fanPower: Watts;
  /** Order of the scenario. */
  readonly duties: readonly OperatingState[];
  /** Why there is no solution, or that a part fails, in the first duty where it is so. */
  readonly failure?: string;
}

/** How fast the banks run: the speed of each as a share of full speed [-], by duty. */
export type SpeedPlan = (machine: Machine, duty: Duty, index: number) => ArrayLike<number>;

/** Quietest adequate speeds, or those that come closest where there are none. */
export const quietestPlan: SpeedPlan = (machine, duty) => {
  const trial = createTrial(machine, duty);
  const { best, coolest } = quietestSpeeds(trial, fasterIsCooler(machine.plant));
  return (best ?? coolest).ratios;
};

/** Every bank as fast as its place allows. */
export const fullPlan: SpeedPlan = (machine, duty) => fullSpeed(createTrial(machine, duty));

/**
 * One speed for all banks in all duties.
 *
 * @param ratio share of full speed [-]
 */
export function evenPlan(ratio: number): SpeedPlan {
  return ({ banks }) => banks.map(() => ratio);
}

function tightestOf(duties: readonly OperatingState[]): TightestOfAll | undefined {
  return duties
    .flatMap(({ duty, tightest }) => (tightest ? [{ ...tightest, duty }] : []))
    .reduce<TightestOfAll | undefined>(
      (least, each) => (least && least.margin <= each.margin ? least : each),
      undefined,
    );
}

/**
 * A build in all duties at given speeds.
 *
 * @param machine the build
 * @param plan speeds by duty
 */
export function buildState(machine: Machine, plan: SpeedPlan): BuildState {
  const duties = machine.plant.enclosure.duties.map((duty, index) =>
    operatingBench(machine, duty)(plan(machine, duty, index)),
  );
  const lasting = duties.filter(({ share }) => share > 0);
  const tightest = tightestOf(duties);
  const failed = duties.find(({ failure }) => failure !== undefined);
  return {
    adequate: duties.every(({ adequate }) => adequate),
    level: levelOf(lasting.reduce((sum, { share, level }) => sum + share * energy(level), 0)),
    loudest: Math.max(...lasting.map(({ level }) => level)),
    ...(tightest ? { tightest } : {}),
    fanPower: duties.reduce((sum, { share, fanPower }) => sum + (share > 0 ? share * fanPower : 0), 0),
    duties,
    ...(failed ? { failure: `${failed.failure} in ${failed.duty}` } : {}),
  };
}

/**
 * How far a state is from adequate [K]: what the tightest limit lacks, the asked margin included; ≤ 0 if it is
 * adequate, +∞ without a solution or where a part fails.
 *
 * @param state of a build
 * @param margin asked of every limit [K]
 */
export function lackOf({ tightest, failure }: BuildState, margin: KelvinDifference): KelvinDifference {
  if (failure !== undefined) return Number.POSITIVE_INFINITY;
  return tightest ? margin - tightest.margin : Number.NEGATIVE_INFINITY;
}
