import quadprog from 'quadprog';
import { describe, expect, it } from 'vitest';
import type { Condition } from '../../src/numerics/condition-rows.ts';
import { leastQuadratic } from '../../src/numerics/quadratic-program.ts';
import { between, seededRandom } from '../airway/seeded-random.ts';

interface Program {
  readonly curvatures: readonly number[];
  readonly slopes: readonly number[];
  readonly conditions: readonly Condition[];
}

/** Bounds around nothing and limits of all steepnesses, some of which nothing meets. */
function randomProgram(random: () => number): Program {
  const size = 1 + Math.floor(random() * 6);
  const list = (low: number, high: number): number[] =>
    Array.from({ length: size }, () => between(random, low, high));
  const bounds = Array.from({ length: size }, (_, index) => {
    const axis = new Float64Array(size).with(index, 1);
    return [
      { slopes: axis, most: 0.4 * random() },
      { slopes: axis.map((slope) => -slope), most: 0.4 * random() },
    ];
  }).flat();
  const limits = Array.from({ length: Math.floor(random() * 25) }, () => ({
    slopes: list(-100, 100),
    most: between(random, -0.5, 4.5),
  }));
  return { curvatures: list(0.5, 30), slopes: list(-2, 2), conditions: [...bounds, ...limits] };
}

/** The library's answer, or null if it finds none. */
function byLibrary({ curvatures, slopes, conditions }: Program): readonly number[] | null {
  const { solution, message } = quadprog.solveQP(
    [
      [],
      ...curvatures.map((value, row) => [0, ...curvatures.map((_, column) => (row === column ? value : 0))]),
    ],
    [0, ...slopes.map((slope) => -slope)],
    [
      [],
      ...curvatures.map((_, row) => [
        0,
        ...conditions.map((condition) => -(condition.slopes[row] as number)),
      ]),
    ],
    [0, ...conditions.map(({ most }) => -most)],
  );
  return message === '' ? solution.slice(1) : null;
}

describe('a quadratic program', () => {
  it('has the solution of a library, or none where that finds none', () => {
    // Computed with quadprog 1.6.1, the dual method of Goldfarb and Idnani.
    const random = seededRandom(71);
    let solved = 0;
    let impossible = 0;
    for (let trial = 0; trial < 1500; trial++) {
      const program = randomProgram(random);
      const expected = byLibrary(program);
      const found = leastQuadratic(program.curvatures, program.slopes, program.conditions);
      expect(found === null, `trial ${trial}`).toBe(expected === null);
      if (expected === null) impossible += 1;
      else solved += 1;
      expected?.forEach((value, index) => {
        expect(found?.[index], `trial ${trial}`).toBeCloseTo(value, 5);
      });
    }
    expect(Math.min(solved, impossible)).toBeGreaterThan(100);
  });

  it('ends where conditions are doubled, touch or leave a single point', () => {
    // By hand: nearest point of the line x + y = 1 to nothing is (1/2, 1/2), of a single point that point.
    const line = [
      { slopes: [1, 1], most: 1 },
      { slopes: [-1, -1], most: -1 },
    ];
    const nearest = leastQuadratic([1, 1], [0, 0], [...line, ...line]);
    expect(nearest?.[0]).toBeCloseTo(0.5, 6);
    expect(nearest?.[1]).toBeCloseTo(0.5, 6);
    const point = leastQuadratic(
      [1, 1],
      [0, 0],
      [...line, { slopes: [1, -1], most: 0.2 }, { slopes: [-1, 1], most: -0.2 }],
    );
    expect(point?.[0]).toBeCloseTo(0.6, 6);
    expect(point?.[1]).toBeCloseTo(0.4, 6);
  });

  it('has its free least value without conditions', () => {
    // By hand: curvature · x + slope = 0.
    expect(leastQuadratic([2, 4], [1, -2], [])).toEqual(Float64Array.of(-0.5, 0.5));
  });

  it('has no solution where a condition without slopes does not hold', () => {
    expect(leastQuadratic([1], [1], [{ slopes: [0], most: -1 }])).toBeNull();
  });
});
