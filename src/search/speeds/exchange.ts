import { clampRatio, isAdequate, type Point, type Trial } from '../trial.ts';

/** Strides of the exchange of speed between banks, in log speed: long ones to cross rises, short ones beside edges. */
const LONG_STRIDES = [0.4, 0.16] as const;
const SHORT_STRIDES = [0.08, 0.04, 0.015, 0.005, 0.0015, 0.0005] as const;
/** Steps in one direction, at most [-]. */
const MOST_STEPS = 8;
/** Shift in log speed for slopes of all banks together; trials are far more accurate than what this moves. */
const SLOPE_SHIFT = 1e-3;
/** How far a forecast may be wrong, for the square of a stride and of the shift that follows it [-]. */
const STRIDE_DOUBT = 1;
const SHIFT_DOUBT = 3;

/** What an exchange needs of the search it serves. */
export interface Exchange {
  readonly trial: Trial;
  /** Is told of every point met. */
  readonly look: (point: Point) => Point;
  /** Brings speeds to the limits, all banks together; no further once nothing below an energy is to be expected. */
  readonly toLimits: (ratios: Float64Array, enough: number) => Point;
  /** Least relative gain of energy that counts [-]. */
  readonly progress: number;
  /** Whether edges or jumps are about that slopes do not tell of. */
  readonly isRough: boolean;
}

/** How energy and excess change with the speeds of all banks together, each for a unit of log speed. */
interface Together {
  readonly loudness: number;
  readonly excess: readonly number[];
}

function together({ trial, look }: Exchange, here: Point, direction: number): Together {
  const factor = Math.exp(direction * SLOPE_SHIFT);
  const ratios = here.ratios.map((ratio, bank) => clampRatio(trial, bank, ratio * factor));
  const there = look(trial.evaluate(ratios));
  const slope = (from: number, to: number): number => (to - from) / (direction * SLOPE_SHIFT);
  return {
    loudness: slope(Math.log(here.energy), Math.log(there.energy)),
    excess: Array.from(here.excess, (value, limit) => slope(value, there.excess[limit] as number)),
  };
}

/** Shift of all banks together at which a point meets its limits, by slopes; no number if they do not tell. */
function shiftToLimits({ excess, worst }: Point, slopes: Together): number {
  let shift = worst > 0 ? 0 : Number.NEGATIVE_INFINITY;
  excess.forEach((value, limit) => {
    const slope = slopes.excess[limit] as number;
    if (slope < 0) shift = Math.max(shift, value / -slope);
    else if (value > 0) shift = Number.NaN;
  });
  return shift;
}

/**
 * Exchanges speed between banks along the limits: gives some to one bank, or takes some from it, and lets all together
 * make up for it. Cures kinks that a descent by slopes sticks to. A forecast by slopes tells which exchanges are worth
 * being brought to the limits.
 *
 * @param exchange the trial, and what to do with its points
 * @param start an adequate point
 * @returns the quietest point met
 */
export function exchangeSpeeds(exchange: Exchange, start: Point): Point {
  const { trial, look, toLimits, progress, isRough } = exchange;
  let here = start;
  const slopes = new Map<number, Together>();
  const slopesOf = (direction: number): Together => {
    const known = slopes.get(direction) ?? together(exchange, here, direction);
    slopes.set(direction, known);
    return known;
  };

  const mayGain = (moved: Point, stride: number): boolean => {
    if (isAdequate(moved) && moved.energy < here.energy) return true;
    if (!Number.isFinite(moved.energy)) return false;
    const forecast = slopesOf(isAdequate(moved) ? -1 : 1);
    const shift = shiftToLimits(moved, forecast);
    const gain = Math.log(here.energy / moved.energy) - shift * forecast.loudness;
    const doubt = STRIDE_DOUBT * stride ** 2 + SHIFT_DOUBT * shift ** 2;
    // Where slopes do not tell, it is tried.
    return !Number.isFinite(gain) || gain > progress - doubt;
  };

  const step = (bank: number, stride: number): boolean => {
    const ratio = clampRatio(trial, bank, (here.ratios[bank] as number) * Math.exp(stride));
    if (ratio === here.ratios[bank]) return false;
    const moved = look(trial.evaluate(here.ratios.with(bank, ratio)));
    if (!mayGain(moved, stride)) return false;
    const enough = here.energy * (1 - progress);
    const there = toLimits(moved.ratios, enough);
    if (!isAdequate(there) || there.energy >= enough) return false;
    here = there;
    slopes.clear();
    return true;
  };

  for (const stride of isRough ? [...LONG_STRIDES, ...SHORT_STRIDES] : LONG_STRIDES) {
    for (let bank = 0; bank < start.ratios.length; bank++) {
      for (const direction of [1, -1]) {
        for (let count = 0; count < MOST_STEPS && step(bank, direction * stride); count++);
      }
    }
  }
  return here;
}
