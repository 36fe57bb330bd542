import type { Asks } from '../../enclosure/asks.ts';
import { bankDepth, bankPrice, depthOf, priceOf } from '../../enclosure/build-costs.ts';
import type { Build, Enclosure } from '../../enclosure/enclosure.ts';
import type { Machine } from '../../enclosure/machine.ts';
import type { KelvinDifference } from '../../quantities/dimensions.ts';
import { energy } from '../../sound/levels.ts';
import type { OptionForest } from '../option-tree.ts';
import type { Promised, Promises } from '../promise.ts';
import { quietestSpeeds } from '../quietest-speeds.ts';
import { createTrial, type Point, type Trial } from '../trial.ts';
import { createBuildAsks } from './build-asks.ts';
import { worstDeadFan } from './dead-fan.ts';
import { type Goal, isByLevel } from './goal.ts';
import { createPowerBound, leastPowerSpeeds, meanPower, thinnestAir } from './least-power.ts';
import { optionCosts, sumOf } from './option-costs.ts';
import { powerPromises, wattsOf } from './power-promises.ts';
import type { AskReason } from './reasons.ts';
import { tonePointsOf } from './tone-ask.ts';

/** What may be asked of a search beside the length of its list: plain data. */
export interface WishOptions {
  /** What the ranking goes by; the mean level over time if absent. */
  readonly by?: Goal;
  /** Name of the only duty whose level counts; all that last if absent. */
  readonly duty?: string;
  /** Asked beside what the scenario asks; where both ask for the same, this one counts. */
  readonly asks?: Asks;
  /** Margin asked of every limit [K], instead of that of the scenario. */
  readonly margin?: KelvinDifference;
}

/** What is asked of the builds of a search beside holding their limits. */
export interface Wishes {
  readonly byLevel: boolean;
  /** Sound energy at the listener that no build may exceed, as the objective has it [-]; infinite if there is none. */
  readonly cap: number;
  /** What the builds of a set cost at least; 0 where the ranking goes by the level. */
  readonly costOf: (build: Build, promised: Promised) => number;
  /** What a build costs at the speeds found, energies and powers being those of its duties. */
  readonly exactCost: (machine: Machine, speeds: readonly (Float64Array | null)[]) => number;
  /** Why no build of a set can do, whatever its speeds. */
  readonly broken: (build: Build) => AskReason | null;
  /** Why a single build cannot do, by passes at full speed. */
  readonly fallen: (build: Build) => AskReason | null;
  /** Why the speeds found for a build do not do. */
  readonly refused: (machine: Machine, speeds: readonly (Float64Array | null)[]) => AskReason | null;
  /** The best speeds of a build in a duty; null if there are none. */
  readonly speedsOf: (trial: Trial, monotone: boolean, allowed: number) => Point | null;
}

/**
 * The scenario with what is asked of its builds by the options of a search.
 *
 * @param enclosure as read
 * @param options of the search
 */
export function withWishes(enclosure: Enclosure, { asks, margin }: WishOptions): Enclosure {
  return {
    ...enclosure,
    ...(asks ? { asks: { ...enclosure.asks, ...asks } } : {}),
    ...(margin === undefined ? {} : { margin }),
  };
}

/** Room for rounding at the cap [-]. */
const CAP_ROUNDING = 1e-9;

function costBound(enclosure: Enclosure, forest: OptionForest, goal: Goal): Wishes['costOf'] {
  const places = [...enclosure.places.keys()];
  if (goal === 'price') {
    const prices = optionCosts(enclosure, forest, bankPrice);
    return (build) => sumOf(prices, build, places);
  }
  if (goal === 'depth') {
    const depths = optionCosts(enclosure, forest, bankDepth);
    return (build) =>
      enclosure.legs.reduce((most, { through }) => Math.max(most, sumOf(depths, build, through)), 0);
  }
  if (goal !== 'power') return () => 0;
  const least = createPowerBound(enclosure, forest);
  const thinnest = thinnestAir(enclosure);
  return (build, { cost }) => Math.max(least(build), cost ? thinnest * wattsOf(enclosure, cost.energies) : 0);
}

function powerAt(machine: Machine, speeds: readonly (Float64Array | null)[]): number {
  const powers = machine.plant.enclosure.duties.map((duty, index) => {
    const ratios = speeds[index];
    return ratios ? createTrial(machine, duty).evaluate(ratios).fanPower : 0;
  });
  return meanPower(machine, powers);
}

/**
 * Prepares what is asked of the builds of a search.
 *
 * @param enclosure the scenario, with what is asked
 * @param forest groups of the options of its places
 * @param goal what the ranking goes by
 */
export function createWishes(enclosure: Enclosure, forest: OptionForest, goal: Goal): Wishes {
  const { level, deadFan = false, tonePoints } = enclosure.asks ?? {};
  const cap = level === undefined ? Number.POSITIVE_INFINITY : energy(level);
  return {
    byLevel: isByLevel(goal),
    cap: cap * (1 + CAP_ROUNDING),
    costOf: costBound(enclosure, forest, goal),
    exactCost: (machine, speeds) => {
      if (goal === 'price') return priceOf(enclosure, machine.build);
      if (goal === 'depth') return depthOf(enclosure, machine.build);
      return goal === 'power' ? powerAt(machine, speeds) : 0;
    },
    broken: createBuildAsks(enclosure, forest),
    fallen: (build) =>
      deadFan && (worstDeadFan(enclosure, build)?.over ?? 0) > 0 ? 'too warm with a dead fan' : null,
    refused: (machine, speeds) =>
      tonePoints !== undefined && tonePointsOf(machine, speeds) > tonePoints ? 'more tonal than asked' : null,
    speedsOf: (trial, monotone, allowed) => {
      if (goal !== 'power') return quietestSpeeds(trial, monotone, allowed).best;
      const point = leastPowerSpeeds(trial, monotone, trial.duty.share > 0 ? cap : Number.POSITIVE_INFINITY);
      return point && { ...point, energy: Math.min(point.energy, cap) };
    },
  };
}

/**
 * The bounds of a search with those of what it ranks by beside them.
 *
 * @param promises bounds of the noise
 * @param enclosure the scenario
 * @param forest groups of the options of its places
 * @param goal what the ranking goes by
 */
export function withCostPromises(
  promises: Promises,
  enclosure: Enclosure,
  forest: OptionForest,
  goal: Goal,
): Promises {
  if (goal !== 'power') return promises;
  const costs = powerPromises(enclosure, forest);
  const all = Number.POSITIVE_INFINITY;
  return {
    none: { ...promises.none, cost: costs.none },
    coarse: (build, from, toBeat) => ({
      ...promises.coarse(build, from, toBeat),
      cost: costs.coarse(build, from.cost ?? costs.none, all),
    }),
    fine: (build, from, toBeat) => ({
      ...promises.fine(build, from, toBeat),
      cost: costs.fine(build, from.cost ?? costs.none, all),
    }),
  };
}
