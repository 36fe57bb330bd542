import { describe, expect, it } from 'vitest';
import { bundleDescent } from '../../../src/search/speeds/bundle-descent.ts';
import { restored } from '../../../src/search/speeds/restoration.ts';
import type { Point, Trial } from '../../../src/search/trial.ts';
import { levelOf } from '../../../src/sound/levels.ts';
import { between, seededRandom } from '../../airway/seeded-random.ts';
import { writtenTrial } from './written-trial.ts';

const look = (point: Point): Point => point;

function descentFrom(trial: Trial, speeds: readonly number[]): Point {
  const start = trial.evaluate(Float64Array.from(speeds));
  return bundleDescent({ trial, look, progress: 5e-5 }, start).end;
}

describe('a descent along the limits', () => {
  it('ends at the quietest speeds where noise and cooling are powers of speed', () => {
    // Derived (Lagrange): of Σ a·r^5.5 with Σ c·r^-0.8 = 1 the speeds are t·(c/a)^(1/6.3).
    const random = seededRandom(81);
    for (let trial = 0; trial < 60; trial++) {
      const banks = 2 + Math.floor(random() * 3);
      const noise = Array.from({ length: banks }, () => 10 ** between(random, -1, 1));
      const heat = Array.from({ length: banks }, () => between(random, 0.2, 1) * (0.5 / banks));
      const shape = noise.map((value, bank) => ((heat[bank] as number) / value) ** (1 / 6.3));
      const scale =
        shape.reduce((sum, value, bank) => sum + (heat[bank] as number) * value ** -0.8, 0) ** (1 / 0.8);
      const best = shape.map((value) => value * scale);
      if (Math.max(...best) > 1) continue;
      const written = writtenTrial({
        floors: best.map((value) => Math.min(0.2, 0.5 * value)),
        energy: (ratios) =>
          noise.reduce((sum, value, bank) => sum + value * (ratios[bank] as number) ** 5.5, 0),
        excess: (ratios) => [
          20 * (heat.reduce((sum, value, bank) => sum + value * (ratios[bank] as number) ** -0.8, 0) - 1),
        ],
      });
      const found = descentFrom(written, new Array<number>(banks).fill(1));
      const least = written.evaluate(Float64Array.from(best)).energy;
      expect(found.worst).toBeLessThanOrEqual(0);
      expect(levelOf(found.energy) - levelOf(least), `trial ${trial}`).toBeLessThan(0.003);
    }
  });

  it('follows the edge where two limits meet', () => {
    // Derived: x held by one limit alone, y and z traded along another; least where z is at its ceiling.
    const trial = writtenTrial({
      floors: [0.2, 0.2, 0.2],
      energy: ([x, y, z]) => (x as number) + 4 * (y as number) + 0.01 * (z as number),
      excess: ([x, y, z]) => [50 * (0.8 - (x as number)), 40 * (1.2 - (y as number) - 0.9 * (z as number))],
    });
    const found = descentFrom(trial, [0.9, 0.8, 0.6]);
    expect(found.ratios[0]).toBeCloseTo(0.8, 4);
    expect(found.ratios[1]).toBeCloseTo(0.3, 4);
    expect(found.ratios[2]).toBeCloseTo(1, 4);
  });

  it('follows a kink to its lowest place', () => {
    // Derived: the larger of two energies is least where both are equal, at the ceiling of what lowers them both.
    const trial = writtenTrial({
      floors: [0.2, 0.2],
      energy: ([x, y]) =>
        Math.max(3 * (x as number) - (y as number), 2 - (x as number) - 0.5 * (y as number)) + 1,
      excess: () => [-1],
    });
    const found = descentFrom(trial, [0.9, 0.5]);
    expect(found.ratios[1]).toBeCloseTo(1, 3);
    expect(found.ratios[0]).toBeCloseTo(0.625, 3);
  });
});

describe('speeds that break limits', () => {
  it('are mended by a short way', () => {
    // By hand: of the line x + y = 1 the point nearest to (0.45, 0.45), as logarithms go, has equal speeds.
    const trial = writtenTrial({
      floors: [0.1, 0.1],
      energy: ([x, y]) => (x as number) + (y as number),
      excess: ([x, y]) => [30 * (1 - (x as number) - (y as number))],
    });
    const found = restored(trial, trial.evaluate(Float64Array.of(0.45, 0.45)), look);
    expect(found?.worst).toBeLessThanOrEqual(0);
    expect(found?.ratios[0]).toBeCloseTo(0.5, 2);
    expect(found?.ratios[1]).toBeCloseTo(0.5, 2);
  });

  it('are given up where nothing mends them', () => {
    const trial = writtenTrial({ floors: [0.1], energy: ([x]) => x as number, excess: () => [3] });
    expect(restored(trial, trial.evaluate(Float64Array.of(0.5)), look)).toBeNull();
  });
});
