import type { Bank, Enclosure } from '../enclosure/enclosure.ts';
import { peakAirPower, REFERENCE_DENSITY } from '../fan/curve.ts';
import type { Decibels, Fraction } from '../quantities/dimensions.ts';
import { levelAtRatio, type SpeedLevel, speedModel } from '../sound/fan-noise.ts';
import { energy, levelOf } from '../sound/levels.ts';
import { ratioAtLevel } from '../sound/speed-at-level.ts';

/**
 * Greatest speed at which a bank by itself stays within a sound energy at 1 m [-], its working point at its
 * quietest; 1 at most. 0 if it is louder even at its hold floor.
 *
 * @param model level of one fan over its speed
 * @param count fans in the bank
 * @param floor hold floor [-]
 * @param installation installation and panel terms of one fan [dB]
 * @param fanFloor level no fan falls below [dB]
 * @param allowed sound energy at 1 m [-]
 */
export function fastestWithin(
  model: SpeedLevel,
  count: number,
  floor: Fraction,
  installation: Decibels,
  fanFloor: Decibels,
  allowed: number,
): Fraction {
  const own = allowed / count - energy(fanFloor);
  if (own <= 0) return 0;
  const level = levelOf(own) - installation;
  if (levelAtRatio(model, 1) <= level) return 1;
  if (levelAtRatio(model, floor) > level) return 0;
  return Math.min(1, ratioAtLevel(model, level));
}

/** Step of the tables of air power against level [dB]: at most this much is lost to the bound. */
export const LEVEL_STEP: Decibels = 0.1;
/** Number of steps, from 0 dB at 1 m. */
export const LEVEL_STEPS = 900;

/**
 * Most air power [W] a bank can give while it stays, by itself, within each level of a table at 1 m:
 * entry i is for i · LEVEL_STEP dB, the last one for any level.
 *
 * An upper bound in any surroundings: installation and working-point terms, never negative, are left out, and
 * the air power is the peak of the curve, which grows with the cube of the speed and with density.
 *
 * @param enclosure for its assumptions
 * @param bank fans of one model
 * @param near factor on its sound energy that makes it count as far off as the box [-]
 * @param density greatest density the bank may see [kg/m³]
 */
export function airPowerByLevel(
  enclosure: Enclosure,
  bank: Bank,
  near: number,
  density: number,
): Float64Array {
  const { sound } = enclosure.assumptions;
  const model = speedModel(bank.fan.ratings, bank.fan.fullSpeed, sound);
  const full = bank.count * peakAirPower(bank.fan.curve) * (density / REFERENCE_DENSITY);
  const table = new Float64Array(LEVEL_STEPS + 1);
  for (let step = 0; step <= LEVEL_STEPS; step++) {
    // The last entry stands for all levels above it too.
    const allowed = step < LEVEL_STEPS ? energy(step * LEVEL_STEP) / near : Number.POSITIVE_INFINITY;
    const ratio = fastestWithin(
      model,
      bank.count,
      bank.fan.holdFloor,
      sound.panelMounting,
      sound.fanFloor,
      allowed,
    );
    table[step] = full * ratio ** 3;
  }
  return table;
}

/**
 * Least sound energy at 1 m of a bank that runs at all [-]: at its hold floor, its working point at its quietest.
 *
 * @param enclosure for its assumptions
 * @param bank fans of one model
 * @param near factor on its sound energy that makes it count as far off as the box [-]
 */
export function energyAtFloor(enclosure: Enclosure, bank: Bank, near: number): number {
  const { sound } = enclosure.assumptions;
  const model = speedModel(bank.fan.ratings, bank.fan.fullSpeed, sound);
  const level = levelAtRatio(model, bank.fan.holdFloor) + sound.panelMounting;
  return near * bank.count * (energy(level) + energy(sound.fanFloor));
}
