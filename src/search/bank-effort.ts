import type { Bank } from '../enclosure/enclosure.ts';
import type {
  Decibels,
  Fraction,
  KilogramsPerCubicMetre,
  KilogramsPerSecond,
  Pascals,
} from '../quantities/dimensions.ts';
import { levelAtRatio, type SpeedLevel, speedModel } from '../sound/fan-noise.ts';
import { energy } from '../sound/levels.ts';
import type { SoundAssumptions } from '../sound/sound-assumptions.ts';
import { type FanGrid, fanGrid, SPEED_STEPS, workingFactor } from './duals/fan-grid.ts';
import { FLOW_STEP } from './duals/flow-grid.ts';
import { riseAt, slowestGiving } from './slowest-speed.ts';

/** A bank with its noise compiled, as it would stand in one place of a leg. */
export interface PlacedBank {
  readonly bank: Bank;
  readonly speedLevel: SpeedLevel;
  /** Least installation and panel terms over what may stand around it [dB]. */
  readonly installation: Decibels;
  /** Factor on its sound energy that makes it count as far off as the box [-]. */
  readonly nearness: number;
  readonly sound: SoundAssumptions;
  /** Speeds looked at: the hold floor, then whole steps of the grid of flows apart up to full speed [-]. */
  readonly ratios: Float64Array;
  /** Sound energy of one fan at each of them, at its quietest working point and without its floor [-]. */
  readonly energies: Float64Array;
  readonly grid: FanGrid;
}

/** Speeds looked at: the hold floor, then all above it that are whole steps below full speed. */
function lookedAt(holdFloor: Fraction): Float64Array {
  const ratios = [];
  for (let index = 0, ratio = 1; ratio > holdFloor; index++) {
    ratios.push(ratio);
    ratio = Math.exp(-(index + 1) * SPEED_STEPS * FLOW_STEP);
  }
  return Float64Array.from([holdFloor, ...ratios.reverse()]);
}

/**
 * Compiles the noise of a bank in its place.
 *
 * @param bank the fans
 * @param installation installation and panel terms [dB]
 * @param nearness factor on its sound energy that makes it count as far off as the box [-]
 * @param sound assumptions
 * @param grid of the bank, if there is one already
 */
export function placedBank(
  bank: Bank,
  installation: Decibels,
  nearness: number,
  sound: SoundAssumptions,
  grid: FanGrid = fanGrid(bank, sound),
): PlacedBank {
  const speedLevel = speedModel(bank.fan.ratings, bank.fan.fullSpeed, sound);
  const ratios = lookedAt(bank.fan.holdFloor);
  const energies = ratios.map((ratio) => energy(levelAtRatio(speedLevel, ratio) + installation));
  return { bank, speedLevel, installation, nearness, sound, ratios, energies, grid };
}

/** Sound energies and pressure rises of a bank over its speeds, at one flow. */
export interface Effort {
  energies: Float64Array;
  rises: Float64Array;
  /** Speeds that are filled in [-]. */
  length: number;
}

/** Room for one effort: they are worked out by the ten thousand and read at once. */
export function newEffort(): Effort {
  return { energies: new Float64Array(0), rises: new Float64Array(0), length: 0 };
}

/** Makes room for so many speeds. */
export function cleared(out: Effort, length: number): Effort {
  if (out.rises.length < length) {
    out.energies = new Float64Array(length);
    out.rises = new Float64Array(length);
  }
  out.length = length;
  return out;
}

/** Greatest rise of a bank: the one at full speed [Pa]. */
export function fullRise({ rises, length }: Effort): Pascals {
  return rises[length - 1] as number;
}

/** Factor of a fan's working point on its sound energy [-], at a volume flow a fan. */
function workingAt({ bank, sound }: PlacedBank, ratio: Fraction, perFan: number): number {
  return workingFactor(bank, perFan / (ratio * bank.fan.curve.freeDelivery), sound);
}

/** Sound energy of a bank at 1 m [-] at a speed, with the working point of a given volume flow a fan. */
function energyAt(placed: PlacedBank, ratio: Fraction, perFan: number): number {
  const own = energy(levelAtRatio(placed.speedLevel, ratio) + placed.installation);
  const heard = own * workingAt(placed, ratio, perFan) + energy(placed.sound.fanFloor);
  return placed.nearness * placed.bank.count * heard;
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
  const { ratios } = placed;
  const { energies, rises } = cleared(out, ratios.length);
  const { count } = placed.bank;
  const perFan = mostFlow / (density * count);
  const floor = energy(placed.sound.fanFloor);
  for (let index = 0; index < ratios.length; index++) {
    const ratio = ratios[index] as number;
    // At its hold floor a fan cannot go slower and may move more air than asked: its working point is open.
    const working = index === 0 ? 1 : workingAt(placed, ratio, perFan);
    energies[index] = placed.nearness * count * ((placed.energies[index] as number) * working + floor);
    rises[index] = riseAt(placed.bank, ratio, flow, density);
  }
  return out;
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
