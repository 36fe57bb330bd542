import type { Bank } from '../enclosure/enclosure.ts';
import type {
  Decibels,
  Fraction,
  KilogramsPerCubicMetre,
  KilogramsPerSecond,
  Pascals,
} from '../quantities/dimensions.ts';
import { levelAtRatio, type SpeedLevel, speedModel, workingPointTerm } from '../sound/fan-noise.ts';
import { energy } from '../sound/levels.ts';
import type { SoundAssumptions } from '../sound/sound-assumptions.ts';
import { stallTerm } from '../sound/stall.ts';
import { riseAt, slowestGiving } from './slowest-speed.ts';

/** Speeds looked at between hold floor and full speed. */
const SPEEDS = 40;
/** Prices of pressure looked at, energy per pascal: a ratio of √2 loses at most 0.1 dB. */
export const PRICES = Float64Array.from({ length: 48 }, (_, index) => 2 ** (index / 2 - 3));

/** A bank with its noise compiled, as it would stand in one place of a leg. */
export interface PlacedBank {
  readonly bank: Bank;
  readonly speedLevel: SpeedLevel;
  /** Least installation and panel terms over what may stand around it [dB]. */
  readonly installation: Decibels;
  /** Factor on its sound energy that makes it count as far off as the box [-]. */
  readonly nearness: number;
  readonly sound: SoundAssumptions;
  /** Speeds looked at, from hold floor to full [-]. */
  readonly ratios: Float64Array;
  /** Sound energy of one fan at each of them, at its quietest working point and without its floor [-]. */
  readonly energies: Float64Array;
}

/**
 * Compiles the noise of a bank in its place.
 *
 * @param bank the fans
 * @param installation installation and panel terms [dB]
 * @param nearness factor on its sound energy that makes it count as far off as the box [-]
 * @param sound assumptions
 */
export function placedBank(
  bank: Bank,
  installation: Decibels,
  nearness: number,
  sound: SoundAssumptions,
): PlacedBank {
  const speedLevel = speedModel(bank.fan.ratings, bank.fan.fullSpeed, sound);
  const ratios = Float64Array.from(
    { length: SPEEDS },
    (_, index) => bank.fan.holdFloor ** (1 - index / (SPEEDS - 1)),
  );
  const energies = ratios.map((ratio) => energy(levelAtRatio(speedLevel, ratio) + installation));
  return { bank, speedLevel, installation, nearness, sound, ratios, energies };
}

/** Sound energies and pressure rises of a bank over its speeds, at one flow. */
export interface Effort {
  readonly energies: Float64Array;
  readonly rises: Float64Array;
}

/** Room for one effort: they are worked out by the ten thousand and read at once. */
export function newEffort(): Effort {
  return { energies: new Float64Array(SPEEDS), rises: new Float64Array(SPEEDS) };
}

/** Rise of a fan's level by its working point [dB], at a volume flow a fan. */
function workingTerm({ bank, sound }: PlacedBank, ratio: Fraction, perFan: number): Decibels {
  const { curve } = bank.fan;
  const share = perFan / (ratio * curve.freeDelivery);
  return Math.max(
    workingPointTerm(share, sound),
    stallTerm(share, curve.peakFlow / curve.freeDelivery, sound),
  );
}

/** Sound energy of a bank at 1 m [-] at a speed, with the working point of a given volume flow a fan. */
function energyAt(placed: PlacedBank, ratio: Fraction, perFan: number): number {
  const working = workingTerm(placed, ratio, perFan);
  const level = levelAtRatio(placed.speedLevel, ratio) + working + placed.installation;
  return placed.nearness * placed.bank.count * (energy(level) + energy(placed.sound.fanFloor));
}

/**
 * Energies and pressure rises of a bank over its range of speeds.
 *
 * @param placed the bank
 * @param flow mass flow that gives the pressure [kg/s]
 * @param mostFlow greatest mass flow meant: the working point is taken there, where it is quietest [kg/s]
 * @param density at the bank [kg/m³]
 * @param out overwritten and returned
 */
export function effortOf(
  placed: PlacedBank,
  flow: KilogramsPerSecond,
  mostFlow: KilogramsPerSecond,
  density: KilogramsPerCubicMetre,
  out: Effort,
): Effort {
  const { energies, rises } = out;
  const { count } = placed.bank;
  const perFan = mostFlow / (density * count);
  const floor = energy(placed.sound.fanFloor);
  for (let index = 0; index < SPEEDS; index++) {
    const ratio = placed.ratios[index] as number;
    // At its hold floor a fan cannot go slower and may move more air than asked: its working point is open.
    const working = index === 0 ? 0 : workingTerm(placed, ratio, perFan);
    const own = (placed.energies[index] as number) * (working > 0 ? energy(working) : 1);
    energies[index] = placed.nearness * count * (own + floor);
    rises[index] = riseAt(placed.bank, ratio, flow, density);
  }
  return out;
}

function isRising(values: Float64Array): boolean {
  for (let index = 1; index < values.length; index++) {
    if ((values[index] as number) < (values[index - 1] as number)) return false;
  }
  return true;
}

/**
 * For each price of pressure, the least of energy minus price times rise: the dual of "least energy for a rise".
 *
 * @param effort of a bank at one flow
 * @param derating factor on positive rises [-]
 * @param lost taken off the derated rises [Pa]
 * @param out overwritten, one entry per price
 */
export function dualOf(effort: Effort, derating: Fraction, lost: Pascals, out: Float64Array): void {
  const rising = isRising(effort.rises);
  let start = 0;
  for (let price = 0; price < PRICES.length; price++) {
    const cost = PRICES[price] as number;
    let least = Number.POSITIVE_INFINITY;
    let best = start;
    for (let index = start; index < SPEEDS; index++) {
      const given = effort.rises[index] as number;
      const value = (effort.energies[index] as number) - cost * (given > 0 ? derating * given : given);
      if (value < least) {
        least = value;
        best = index;
      }
    }
    out[price] = least + cost * lost;
    // At a higher price of pressure more of it is worth buying: the best speed never falls.
    if (rising) start = best;
  }
}

/**
 * Least sound energy of a bank alone that gives a rise [-]; infinite if it cannot.
 *
 * @param placed the bank
 * @param needed pressure rise [Pa]
 * @param flow, mostFlow, density as for `effortOf`
 */
export function leastEnergyFor(
  placed: PlacedBank,
  needed: Pascals,
  flow: KilogramsPerSecond,
  mostFlow: KilogramsPerSecond,
  density: KilogramsPerCubicMetre,
): number {
  const { holdFloor } = placed.bank.fan;
  const perFan = mostFlow / (density * placed.bank.count);
  if (riseAt(placed.bank, holdFloor, flow, density) >= needed) {
    // It cannot go slower and may move more air than asked: its working point is open.
    return energyAt(placed, holdFloor, Number.POSITIVE_INFINITY);
  }
  if (riseAt(placed.bank, 1, flow, density) < needed) return Number.POSITIVE_INFINITY;
  return energyAt(placed, slowestGiving(placed.bank, needed, flow, density), perFan);
}
