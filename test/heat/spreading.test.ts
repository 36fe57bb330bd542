import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BasePlate, spreading } from '../../src/heat/spreading.ts';
import { circularSeries, type ExactPlate, rectangularSeries } from './exact-spreading.ts';

const SEED = 1995;

interface Case {
  readonly name: string;
  readonly exact: ExactPlate;
  /** Closed form: max and mean [K/W]. */
  readonly closed: readonly [number, number];
  /** Series over round and over rectangular plates: max and mean [K/W]. */
  readonly round: readonly [number, number];
  readonly square: readonly [number, number];
}

/**
 * Closed form: Lee, Electronics Cooling 4 (1998) (from memory), computed with Python. Series: computed with Python by an
 * independent script; here they are summed once more, with fewer terms.
 */
const cases: readonly Case[] = [
  {
    name: '25 x 25 on 100 x 100 x 1.3 mm aluminium',
    exact: {
      source: [0.025, 0.025],
      plate: [0.1, 0.1],
      thickness: 0.0013,
      conductivity: 200,
      beyond: 1,
    },
    closed: [0.65658, 0.503922],
    round: [0.668016, 0.530361],
    square: [0.667076, 0.526325],
  },
  {
    name: '20 x 16 on 60 x 60 x 5 mm copper',
    exact: { source: [0.02, 0.016], plate: [0.06, 0.06], thickness: 0.005, conductivity: 390, beyond: 0.08 },
    closed: [0.0852267, 0.0632769],
    round: [0.0854169, 0.0666065],
    square: [0.0847091, 0.0655423],
  },
  {
    name: '15 x 15 on 40 x 40 x 3 mm copper',
    exact: { source: [0.015, 0.015], plate: [0.04, 0.04], thickness: 0.003, conductivity: 390, beyond: 0.1 },
    closed: [0.100197, 0.0702003],
    round: [0.100827, 0.0741091],
    square: [0.100511, 0.0731913],
  },
];

function baseOf({ source, plate, thickness, conductivity }: ExactPlate): BasePlate {
  return {
    footprint: { width: source[0], height: source[1] },
    plate: { width: plate[0], height: plate[1] },
    thickness,
    conductivity,
  };
}

function off(found: number, expected: number): number {
  return found / expected - 1;
}

describe.each(cases)('$name', ({ exact, closed, round, square }) => {
  const found = spreading(baseOf(exact), exact.beyond);

  it('has the values of the closed form', () => {
    expect(Math.abs(off(found.max, closed[0]))).toBeLessThan(1e-4);
    expect(Math.abs(off(found.mean, closed[1]))).toBeLessThan(1e-4);
  });

  it('is near the exact series', () => {
    const circular = circularSeries(exact, 300);
    const rectangular = rectangularSeries(exact, 300);
    expect(Math.abs(off(circular.max, round[0]))).toBeLessThan(1e-3);
    expect(Math.abs(off(circular.mean, round[1]))).toBeLessThan(1e-3);
    expect(Math.abs(off(rectangular.max, square[0]))).toBeLessThan(1e-3);
    expect(Math.abs(off(rectangular.mean, square[1]))).toBeLessThan(1e-3);
    for (const { max, mean } of [circular, rectangular]) {
      expect(Math.abs(off(found.max, max))).toBeLessThan(0.04);
      expect(off(found.mean, mean)).toBeLessThan(0);
      expect(off(found.mean, mean)).toBeGreaterThan(-0.08);
    }
  });
});

describe('a base under a small part', () => {
  const [first] = cases;
  const base = first ? baseOf(first.exact) : undefined;

  it('adds what a catalog figure with full-face heating leaves out', () => {
    // Published lesson, computed: 1.0 K/W becomes 1.66 K/W under 25 x 25 mm.
    if (!base) throw new RangeError('no case');
    expect(1 + spreading(base, 1).max).toBeCloseTo(1.66, 2);
    expect(spreading(base, 1).through).toBeCloseTo(0.0013 / (200 * 0.01), 12);
  });

  it('spreads nothing if the part covers it', () => {
    // Limit of one-dimensional conduction.
    const full = { footprint: { width: 0.05, height: 0.04 }, plate: { width: 0.05, height: 0.04 } };
    const { max, mean } = spreading({ ...full, thickness: 0.003, conductivity: 200 }, 0.5);
    expect([max, mean]).toEqual([0, 0]);
  });

  it('never spreads less against a greater resistance, nor more if it is thicker or conducts better', () => {
    // Physics: a film that resists drives the heat sideways.
    const plates = fc.record({
      side: fc.double({ min: 0.01, max: 0.2, noNaN: true }),
      share: fc.double({ min: 0.05, max: 0.99, noNaN: true }),
      thickness: fc.double({ min: 5e-4, max: 0.02, noNaN: true }),
      conductivity: fc.double({ min: 20, max: 400, noNaN: true }),
      beyond: fc.double({ min: 0, max: 10, noNaN: true }),
    });
    fc.assert(
      fc.property(plates, ({ side, share, thickness, conductivity, beyond }) => {
        const footprint = { width: side * share, height: side * share };
        const plate = { footprint, plate: { width: side, height: side }, thickness, conductivity };
        const here = spreading(plate, beyond);
        expect(here.max).toBeGreaterThanOrEqual(here.mean * (1 - 1e-12));
        expect(spreading(plate, beyond * 1.5 + 0.01).max).toBeGreaterThanOrEqual(here.max * (1 - 1e-12));
        expect(spreading({ ...plate, conductivity: conductivity * 1.2 }, beyond).max).toBeLessThan(here.max);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });
});
