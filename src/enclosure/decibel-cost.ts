import { HOPELESS } from '../heat/part-temperature.ts';
import { bracketedRoot } from '../numerics/roots.ts';
import type { KelvinDifference } from '../quantities/dimensions.ts';
import { askedLimits } from './asked-limits.ts';
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

/** Level and least margin when all speeds are moved by a factor. */
interface Moved {
  /** [dB] */
  readonly level: number;
  /** [K]; not finite if there is no solution or no margin. */
  readonly margin: KelvinDifference;
}

const NOTHING: Moved = { level: Number.NaN, margin: Number.NaN };

/** Speeds moved together by a factor, each held between its hold floor and full speed unless it was beyond. */
function scaled({ machine, ratios }: SolvedPass, shift: number): Float64Array {
  const factor = Math.exp(shift);
  return ratios.map((ratio, index) => {
    const floor = machine.banks[index]?.bank.fan.holdFloor ?? 0;
    return Math.min(Math.max(1, ratio), Math.max(Math.min(floor, ratio), ratio * factor));
  });
}

/** Tries all speeds moved by a factor, each time from the air of the time before. */
function mover(solved: SolvedPass): (shift: number) => Moved {
  const { machine, duty, conditions } = solved;
  const pass = createPass(machine);
  const state = newPassState(machine);
  const noise = newNoiseState(machine);
  const limits = askedLimits(machine, duty);
  return (shift) => {
    const speeds = scaled(solved, shift);
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
function rangeOf({ machine, ratios }: SolvedPass): { readonly low: number; readonly high: number } {
  let low = 0;
  let high = 0;
  ratios.forEach((ratio, index) => {
    if (ratio <= 0) return;
    low = Math.min(low, Math.log((machine.banks[index]?.bank.fan.holdFloor ?? ratio) / ratio));
    high = Math.max(high, -Math.log(ratio));
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
 * changes the level at the listener by 1 dB, air and heat are solved again, and the least margins are compared. Bands
 * of speed to avoid are not heeded.
 *
 * @param solved a pass that has settled
 * @returns undefined if nothing has a limit, nothing is heard or nothing can be moved
 */
export function decibelCost(solved: SolvedPass): DecibelCost | undefined {
  const move = mover(solved);
  const start = move(0);
  if (!(Number.isFinite(start.level) && Number.isFinite(start.margin))) return undefined;
  const { low, high } = rangeOf(solved);
  const slower = marginAfter(move, start, -STEP, low);
  const faster = marginAfter(move, start, STEP, high);
  if (slower === undefined && faster === undefined) return undefined;
  return {
    ...(slower === undefined ? {} : { quieter: start.margin - slower }),
    ...(faster === undefined ? {} : { louder: faster - start.margin }),
  };
}
