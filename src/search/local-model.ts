import type { LocalModel } from './separable-step.ts';
import type { Point, Trial } from './trial.ts';

/** Step of the log speeds for slopes; the trial tolerance is far below what this moves. */
const SLOPE_STEP = 1e-3;

/**
 * Slopes of energy and limits around a point, by one-sided differences into the range.
 *
 * @param trial build and duty
 * @param point where the slopes are taken
 * @param trust greatest step of a log speed that the model is good for [-]
 */
export function localModel(trial: Trial, point: Point, trust: number): LocalModel {
  const size = point.ratios.length;
  const energySlopes = new Float64Array(size);
  const low = new Float64Array(size);
  const high = new Float64Array(size);
  const excessSlopes =
    point.excess.length === 0 ? [] : Array.from(point.excess, () => new Float64Array(size));
  for (let bank = 0; bank < size; bank++) {
    const ratio = point.ratios[bank] as number;
    const ceiling = trial.ceilings[bank] as number;
    const direction = ratio * Math.exp(SLOPE_STEP) <= ceiling ? 1 : -1;
    const moved = Float64Array.from(point.ratios);
    moved[bank] = ratio * Math.exp(direction * SLOPE_STEP);
    const there = trial.evaluate(moved);
    // Where a neighbour has no solution nothing is known: the bank stays as it is.
    if (there.failure) continue;
    energySlopes[bank] = (there.energy - point.energy) / (direction * SLOPE_STEP);
    excessSlopes.forEach((row, limit) => {
      row[bank] =
        ((there.excess[limit] as number) - (point.excess[limit] as number)) / (direction * SLOPE_STEP);
    });
    low[bank] = Math.max(-trust, Math.log((trial.floors[bank] as number) / ratio));
    high[bank] = Math.min(trust, Math.log(ceiling / ratio));
  }
  return { energySlopes, excess: point.excess, excessSlopes, low, high };
}
