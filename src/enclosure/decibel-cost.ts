import { HOPELESS } from '../heat/part-temperature.ts';
import { bracketedRoot } from '../numerics/roots.ts';
import type { KelvinDifference } from '../quantities/dimensions.ts';
import { askedLimits } from './asked-limits.ts';
import type { SpeedRange } from './avoided-speeds.ts';
import { type Drive, drivesOf } from './drives.ts';
import { levelOfEnergy, newNoiseState, soundEnergy } from './noise.ts';
import { createPass } from './pass.ts';
import { newPassState } from './pass-state.ts';
import type { SolvedPass } from './solved-pass.ts';
import type { DecibelCost } from './sound-outcome.ts';

/** Change of level that is priced [dB]. */
const STEP = 1;
/** Accuracy of the temperatures [K]. */
const TOLERANCE = 1e-6;
/** Accuracy of the common factor on the speeds, as a logarithm [-]: 0.001 dB. */
const FACTOR_TOLERANCE = 5e-5;
/** Slack for rounding of speeds at the end of a range [-]. */
const ROUNDING = 1e-9;

/** Level and least margin when all speeds are moved by a factor. */
interface Moved {
  /** [dB] */
  readonly level: number;
  /** [K]; not finite if there is no solution or no margin. */
  readonly margin: KelvinDifference;
}

const NOTHING: Moved = { level: Number.NaN, margin: Number.NaN };

/** How far a bank may move from its speed without passing a band to avoid. */
interface Reach extends SpeedRange {
  /** Whether a band to avoid ends it. */
  readonly heldByBand: boolean;
}

/**
 * Reach of each bank. A bank below its hold floor, or in a band to avoid since its speed was told, is held where it is
 * on that side, or by nothing but floor and full speed.
 */
function reachesOf({ machine, ratios }: SolvedPass): readonly Reach[] {
  const drives = drivesOf(machine);
  return machine.banks.map((_, index) => {
    const ratio = ratios[index] as number;
    const { banks, ranges } = drives.find((drive) => drive.banks.includes(index)) as Drive;
    const floors = banks.map((bank) => machine.banks[bank]?.bank.fan.holdFloor ?? 0);
    const whole = { from: Math.max(...floors), to: 1 };
    const range = ranges.find(({ from, to }) => ratio >= from - ROUNDING && ratio <= to + ROUNDING) ?? whole;
    return {
      from: Math.min(range.from, ratio),
      to: Math.max(range.to, ratio),
      heldByBand: ratio > 0 && (range.from > whole.from || range.to < whole.to),
    };
  });
}

/** Speeds moved together by a factor, each held within its reach. */
function scaled(ratios: Float64Array, reaches: readonly Reach[], shift: number): Float64Array {
  const factor = Math.exp(shift);
  return ratios.map((ratio, index) => {
    const { from, to } = reaches[index] as Reach;
    return Math.min(to, Math.max(from, ratio * factor));
  });
}

/** Tries all speeds moved by a factor, each time from the air of the time before. */
function mover(solved: SolvedPass, reaches: readonly Reach[]): (shift: number) => Moved {
  const { machine, duty, conditions, ratios } = solved;
  const pass = createPass(machine);
  const state = newPassState(machine);
  const noise = newNoiseState(machine);
  const limits = askedLimits(machine, duty);
  return (shift) => {
    const speeds = scaled(ratios, reaches, shift);
    if (pass(conditions, speeds, state, TOLERANCE)) return NOTHING;
    const level = levelOfEnergy(soundEnergy(machine, speeds, state, noise));
    const margins = limits.map(({ found, limit }) => {
      const temperature = found(state);
      return temperature < HOPELESS ? limit - temperature : Number.NaN;
    });
    return { level, margin: Math.min(...margins) };
  };
}

/** How far the speeds can be moved down and up before none moves any more, as a logarithm of the factor. */
function rangeOf(
  ratios: Float64Array,
  reaches: readonly Reach[],
): { readonly low: number; readonly high: number } {
  let low = 0;
  let high = 0;
  ratios.forEach((ratio, index) => {
    if (ratio <= 0) return;
    const { from, to } = reaches[index] as Reach;
    low = Math.min(low, Math.log(from / ratio));
    high = Math.max(high, Math.log(to / ratio));
  });
  return { low, high };
}

/** Margin at the speeds that change the level by a step; undefined if none within the range does. */
function marginAfter(
  move: (shift: number) => Moved,
  start: Moved,
  step: number,
  end: number,
): KelvinDifference | undefined {
  if (end === 0) return undefined;
  const miss = (shift: number): number =>
    (shift === 0 ? start.level : move(shift).level) - start.level - step;
  const found = bracketedRoot(miss, 0, end, { tolerance: FACTOR_TOLERANCE });
  if (!found.ok) return undefined;
  const { margin } = move(found.root);
  return Number.isFinite(margin) ? margin : undefined;
}

/**
 * What 1 dB is worth in kelvin of the tightest limit: all speeds are moved down, then up, by the common factor that
 * changes the level at the listener by 1 dB, air and heat are solved again, and the least margins are compared. A bank
 * stops at its hold floor, at full speed and at a band to avoid, and the others go on without it.
 *
 * @param solved a pass that has settled
 * @returns undefined if nothing has a limit, nothing is heard or nothing can be moved
 */
export function decibelCost(solved: SolvedPass): DecibelCost | undefined {
  const reaches = reachesOf(solved);
  const move = mover(solved, reaches);
  const start = move(0);
  if (!(Number.isFinite(start.level) && Number.isFinite(start.margin))) return undefined;
  const { low, high } = rangeOf(solved.ratios, reaches);
  const slower = marginAfter(move, start, -STEP, low);
  const faster = marginAfter(move, start, STEP, high);
  if (slower === undefined && faster === undefined) return undefined;
  return {
    heldByBands: reaches.some(({ heldByBand }) => heldByBand),
    ...(slower === undefined ? {} : { quieter: start.margin - slower }),
    ...(faster === undefined ? {} : { louder: faster - start.margin }),
  };
}
