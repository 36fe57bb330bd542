import { describe, expect, it } from 'vitest';
import { bundleDescent } from '../../../src/search/speeds/bundle-descent.ts';
import { surveySpeeds } from '../../../src/search/speeds/speed-survey.ts';
import { type Point, quieter, type Trial } from '../../../src/search/trial.ts';
import { writtenTrial } from './written-trial.ts';

/** A dent in log speeds around a place, 1 at its middle. */
function dent(ratios: Float64Array, middle: readonly number[], width: number): number {
  const distance = middle.reduce(
    (sum, value, bank) => sum + Math.log((ratios[bank] as number) / value) ** 2,
    0,
  );
  return Math.exp(-distance / width ** 2);
}

/** The best point that a survey meets, or descends to. */
function surveyed(trial: Trial): Point | null {
  let best: Point | null = null;
  const look = (point: Point): Point => {
    best = quieter(best, point);
    return point;
  };
  surveySpeeds(trial, false, {
    look,
    toBeat: () => best?.energy ?? Number.POSITIVE_INFINITY,
    descend: (ratios) => {
      bundleDescent({ trial, look, progress: 5e-5 }, look(trial.evaluate(ratios)), 0.1);
      return true;
    },
  });
  return best;
}

describe('a survey of speeds', () => {
  it.each([
    { banks: 2, deep: [0.9, 0.35], shallow: [0.4, 0.45] },
    { banks: 2, deep: [0.3, 0.95], shallow: [0.8, 0.8] },
    { banks: 3, deep: [0.9, 0.4, 0.9], shallow: [0.4, 0.45, 0.4] },
  ])('finds the deeper of two valleys of $banks banks, $deep', ({ banks, deep, shallow }) => {
    // By hand: nowhere is the energy lower than in the middle of the deeper dent.
    const energy = (ratios: Float64Array): number =>
      10 - 6 * dent(ratios, deep, banks === 2 ? 0.2 : 0.35) - 4 * dent(ratios, shallow, 0.5);
    const trial = writtenTrial({
      floors: new Array<number>(banks).fill(0.2),
      energy,
      excess: () => [-1],
    });
    const best = surveyed(trial);
    deep.forEach((value, bank) => {
      expect(best?.ratios[bank]).toBeCloseTo(value, 2);
    });
  });
});
