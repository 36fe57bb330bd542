import type { Duty } from '../../enclosure/enclosure.ts';
import { assemble, type Machine, plantOf } from '../../enclosure/machine.ts';
import { bracketedRoot } from '../../numerics/roots.ts';
import type { Decibels, Fraction, KelvinDifference } from '../../quantities/dimensions.ts';
import { type OperatingState, operatingBench } from '../operating-state.ts';
import type { Variant } from './variants.ts';

/** A variant that can be run with all fans at one share of full speed. */
export interface EvenRunner {
  readonly variant: Variant;
  readonly machine: Machine;
  /** Least share that holds all its fans turning [-]. */
  readonly floor: Fraction;
  readonly at: (ratio: Fraction) => OperatingState;
}

/** Accuracy of the logarithm of a speed [-]: 0.0003 dB. */
const ACCURACY = 1e-5;

/** Levels that differ by less are the same [dB]. */
const SAME_LEVEL: Decibels = 0.02;

/** Prepares a variant for one duty. */
export function evenRunner(variant: Variant, duty: Duty): EvenRunner {
  const machine = assemble(plantOf(variant.enclosure), variant.build);
  const bench = operatingBench(machine, duty);
  return {
    variant,
    machine,
    floor: Math.max(0, ...machine.banks.map(({ bank }) => bank.fan.holdFloor)),
    at: (ratio) => bench(machine.banks.map(() => ratio)),
  };
}

/** What a speed misses: rises with it, zero where it is right. */
type Miss = (state: OperatingState) => number;

/** State at the speed where nothing is missed; at the floor if even that is too fast; null if full speed is too slow. */
function stateWhere(runner: EvenRunner, miss: Miss): OperatingState | null {
  const { floor, at } = runner;
  const full = at(1);
  // What full speed misses by rounding it does not miss.
  if (Math.abs(miss(full)) < 1e-6) return full;
  if (!(miss(full) > 0)) return null;
  const slowest = at(Math.max(floor, 1e-3));
  if (miss(slowest) >= 0) return slowest;
  const low = Math.log(Math.max(floor, 1e-3));
  const found = bracketedRoot((shift) => miss(at(Math.exp(shift))), low, 0, { tolerance: ACCURACY });
  return at(Math.exp(found.ok ? found.root : found.best));
}

/**
 * State at the speed at which a variant has a level.
 *
 * @param runner the variant
 * @param level wanted [dB]
 * @returns null if full speed is quieter, or the slowest speed louder
 */
export function atLevel(runner: EvenRunner, level: Decibels): OperatingState | null {
  const found = stateWhere(runner, (state) => state.level - level);
  return found && Math.abs(found.level - level) < SAME_LEVEL ? found : null;
}

/**
 * State at the speed at which the tightest limit of a variant has a margin.
 *
 * @param runner the variant
 * @param margin wanted [K]
 * @returns the state at its slowest speed if that has more; null if full speed has less
 */
export function atMargin(runner: EvenRunner, margin: KelvinDifference): OperatingState | null {
  return stateWhere(runner, (state) => (state.tightest?.margin ?? Number.NaN) - margin);
}
