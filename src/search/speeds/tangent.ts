import { HOPELESS } from '../../heat/part-temperature.ts';
import { clampRatio, type Point, type Trial } from '../trial.ts';

/** Step of the log speeds for slopes; the trial tolerance is far below what this moves. */
const SLOPE_STEP = 1e-3;

/** Energy and excess at speeds, and how they change from there. */
export interface Tangent {
  /** Log speeds. */
  readonly place: Float64Array;
  /** Logarithm of the sound energy. */
  readonly energy: number;
  /** Change of that for each log speed. */
  readonly energySlopes: Float64Array;
  /** Excess of each limit [K]. */
  readonly excess: Float64Array;
  /** Change of each for each log speed [K], row by limit. */
  readonly excessSlopes: readonly Float64Array[];
}

/**
 * Slopes of energy and limits at a point, by one-sided differences.
 *
 * @param trial build and duty
 * @param point where the slopes are taken
 * @param direction of the differences, 1 or -1, where there is room for it
 * @returns null where there is no telling: the point or one beside it has no solution, or parts run away there
 */
export function tangentAt(trial: Trial, point: Point, direction: number): Tangent | null {
  if (!isTold(point)) return null;
  const size = point.ratios.length;
  const energySlopes = new Float64Array(size);
  const excessSlopes = Array.from(point.excess, () => new Float64Array(size));
  for (let bank = 0; bank < size; bank++) {
    const ratio = point.ratios[bank] as number;
    const floor = trial.floors[bank] as number;
    const ceiling = trial.ceilings[bank] as number;
    // A bank that is held moves nothing.
    if (floor >= ceiling) continue;
    const aimed = ratio * Math.exp(direction * SLOPE_STEP);
    const step = aimed <= ceiling && aimed >= floor ? direction * SLOPE_STEP : -direction * SLOPE_STEP;
    const there = trial.evaluate(point.ratios.with(bank, ratio * Math.exp(step)));
    if (!isTold(there)) return null;
    energySlopes[bank] = Math.log(there.energy / point.energy) / step;
    excessSlopes.forEach((row, limit) => {
      row[bank] = ((there.excess[limit] as number) - (point.excess[limit] as number)) / step;
    });
  }
  const place = point.ratios.map(Math.log);
  return { place, energy: Math.log(point.energy), energySlopes, excess: point.excess, excessSlopes };
}

function isTold({ worst, energy }: Point): boolean {
  return worst < HOPELESS && energy > 0;
}

/**
 * Sum of the products of two lists.
 *
 * @param one list
 * @param other of the same length
 */
export function dot(one: ArrayLike<number>, other: ArrayLike<number>): number {
  let sum = 0;
  for (let index = 0; index < one.length; index++) sum += (one[index] as number) * (other[index] as number);
  return sum;
}

/** What a tangent foretells of other speeds. */
export interface Forecast {
  /** Logarithm of the sound energy. */
  readonly energy: number;
  /** Excess of each limit [K]. */
  readonly excess: Float64Array;
}

/**
 * What a tangent foretells.
 *
 * @param tangent at speeds close by
 * @param place log speeds of interest
 */
export function forecastAt(tangent: Tangent, place: Float64Array): Forecast {
  const way = place.map((value, bank) => value - (tangent.place[bank] as number));
  return {
    energy: tangent.energy + dot(tangent.energySlopes, way),
    excess: tangent.excess.map(
      (value, limit) => value + dot(tangent.excessSlopes[limit] as Float64Array, way),
    ),
  };
}

/**
 * The point a step away; banks stop at their floors and at their ceilings.
 *
 * @param trial build and duty
 * @param from a point
 * @param step of each log speed [-]
 */
export function stepped(trial: Trial, from: Point, step: Float64Array): Point {
  return trial.evaluate(
    from.ratios.map((ratio, bank) => clampRatio(trial, bank, ratio * Math.exp(step[bank] as number))),
  );
}

/**
 * How far each log speed may move from a point [-].
 *
 * @param trial build and duty
 * @param from a point
 * @param reach greatest step [-]
 */
export function roomAround(
  trial: Trial,
  from: Point,
  reach: number,
): { low: Float64Array; high: Float64Array } {
  const to = (limit: number, bank: number): number => Math.log(limit / (from.ratios[bank] as number));
  return {
    low: trial.floors.map((floor, bank) => Math.min(0, Math.max(-reach, to(floor, bank)))),
    high: trial.ceilings.map((ceiling, bank) => Math.max(0, Math.min(reach, to(ceiling, bank)))),
  };
}
