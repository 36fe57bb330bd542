import type { Fraction, Kelvins, KelvinsPerWatt, Watts } from '../quantities/dimensions.ts';
import { type PowerLaw, partPower } from './part-power.ts';

/** Heat pipes side by side between a part and its fins. */
export interface HeatPipes {
  readonly count: number;
  /** What one pipe carries before it dries out, as it lies and is bent [W]. */
  readonly capacity: Watts;
  /** Of all together, joints included [K/W]; does not depend on the flow of air. */
  readonly resistance: KelvinsPerWatt;
}

/**
 * Heat [W] at which the pipes dry out: count times capacity. Beyond it their resistance jumps several-fold.
 *
 * Source: capillary limit as makers of heat pipes state it (from memory): round 6 mm 35 to 50 W, round 8 mm 55 to 80 W.
 *
 * @param pipes side by side
 */
export function pipesCapacity({ count, capacity }: HeatPipes): Watts {
  return count * capacity;
}

/**
 * Part temperature [K] up to which heat pipes carry what the part draws: −∞ if they do not even with the part as cold
 * as the room, +∞ if they always do. A power that falls with temperature is judged at the temperature of the room,
 * where it is greatest.
 *
 * Source: inverse of `partPower`, derived.
 *
 * @param pipes side by side
 * @param law of the part's power
 * @param factor on that power [-], ≥ 0
 * @param room temperature nothing is colder than [K]
 */
export function dryOutTemperature(pipes: HeatPipes, law: PowerLaw, factor: Fraction, room: Kelvins): Kelvins {
  const capacity = pipesCapacity(pipes);
  if (partPower(law, factor, room) > capacity) return Number.NEGATIVE_INFINITY;
  const { power, slope, powerAt, leakage } = law;
  const spare = capacity / factor - power;
  // Without growth nothing more can come; a factor of 0 leaves endless room.
  if (!leakage) return slope > 0 ? powerAt + spare / (power * slope) : Number.POSITIVE_INFINITY;
  return powerAt + Math.log1p(spare / leakage.power) / leakage.growth;
}
