import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  countHoles,
  endlessOpenShare,
  type HolePattern,
  holeCentres,
  pitches,
} from '../../src/elements/hole-pattern.ts';
import { type HoleShape, holeFigures } from '../../src/elements/hole-shape.ts';
import { off } from './loss-of.ts';

function pattern(
  shape: HoleShape,
  size: number,
  web: number,
  arrangement: HolePattern['arrangement'] = 'staggered',
  length = 4 * size,
): HolePattern {
  return { hole: { shape, size, length }, web, arrangement };
}

describe('the open share of a pattern without edges', () => {
  it('is that of plane geometry', () => {
    // Derived: π/(2√3)·(d/p)², π/4·(d/p)², (a/p)², (s/p)².
    expect(off(endlessOpenShare(pattern('round', 3, 2)), 0.326484)).toBeLessThan(1e-5);
    expect(off(endlessOpenShare(pattern('round', 3, 2, 'square')), 0.282743)).toBeLessThan(1e-5);
    expect(off(endlessOpenShare(pattern('square', 5, 2)), 0.510204)).toBeLessThan(1e-5);
    expect(off(endlessOpenShare(pattern('hexagon', 8, 1.5)), 0.709141)).toBeLessThan(1e-5);
    expect(off(endlessOpenShare(pattern('round', 3, 1)), 0.510131)).toBeLessThan(1e-5);
    expect(off(endlessOpenShare(pattern('round', 3, 1.5)), 0.403067)).toBeLessThan(1e-5);
  });

  it('counts the round ends of slots', () => {
    // Derived: [3·17 + π·9/4]/(24·6) = 0.403254 for slots of 3 x 20 mm at 24 x 6 mm.
    const slots = holeFigures({ shape: 'slot', size: 3, length: 20 });
    expect(off(slots.area / (24 * 6), 0.403254)).toBeLessThan(1e-5);
    expect(pitches(pattern('slot', 3, 4, 'square', 20))).toEqual({ hole: 24, row: 7, shift: 0 });
  });
});

describe('holes in a field', () => {
  it('are those that fit whole, fewer than the pattern without edges promises', () => {
    // Derived: 23 rows 4.330 mm apart, 20 and 19 holes in turn; without edges 461.9.
    const round = pattern('round', 3, 2);
    const field = { width: 100, height: 100 };
    expect(countHoles(round, field)).toBe(12 * 20 + 11 * 19);
    const promised = (endlessOpenShare(round) * 1e4) / holeFigures(round.hole).area;
    expect(Math.abs(promised - 461.9)).toBeLessThan(0.05);
  });

  it('fill a field they fit exactly', () => {
    // Derived: 10 holes of 5 with 9 webs of 2 are 68.
    expect(countHoles(pattern('square', 5, 2, 'square'), { width: 68, height: 68 })).toBe(100);
    expect(countHoles(pattern('square', 0.005, 0.002, 'square'), { width: 0.068, height: 0.068 })).toBe(100);
    expect(countHoles(pattern('square', 5, 2, 'square'), { width: 67.9, height: 68 })).toBe(90);
    expect(countHoles(pattern('round', 5, 2), { width: 4.9, height: 60 })).toBe(0);
    expect(countHoles(pattern('round', 5, 2), { width: 5, height: 5 })).toBe(1);
  });

  it('keep their webs, their field and their number, whatever the pattern', () => {
    const shapes = fc.constantFrom<HoleShape>('round', 'square', 'hexagon', 'slot');
    const arrangements = fc.constantFrom<HolePattern['arrangement']>('staggered', 'square');
    const size = fc.double({ min: 1, max: 10, noNaN: true });
    const side = fc.double({ min: 5, max: 60, noNaN: true });
    fc.assert(
      fc.property(
        shapes,
        arrangements,
        size,
        size,
        side,
        side,
        (shape, arrangement, hole, web, width, height) => {
          const drawn = pattern(shape, hole, web, arrangement, 2 * hole);
          const centres = holeCentres(drawn, { width, height });
          expect(centres.length).toBe(countHoles(drawn, { width, height }));
          expect(overhang(drawn, centres, width, height)).toBeLessThan(1e-6);
          expect(leastWeb(drawn, centres)).toBeGreaterThan(web - 1e-9);
        },
      ),
      { seed: 7, numRuns: 100 },
    );
  });

  it('stand in the middle of the field', () => {
    const drawn = pattern('round', 4, 2);
    const centres = holeCentres(drawn, { width: 50, height: 30 });
    const middle = (values: number[]) => (Math.min(...values) + Math.max(...values)) / 2;
    expect(middle(centres.map(([x]) => x))).toBeCloseTo(25, 9);
    expect(middle(centres.map(([, y]) => y))).toBeCloseTo(15, 9);
  });
});

type Centres = readonly (readonly [number, number])[];

/** How far a hole stands out of the field. */
function overhang(drawn: HolePattern, centres: Centres, width: number, height: number): number {
  const hole = holeFigures(drawn.hole);
  return centres.reduce((most, [x, y]) => {
    const across = Math.max(hole.width / 2 - x, x + hole.width / 2 - width);
    const along = Math.max(hole.height / 2 - y, y + hole.height / 2 - height);
    return Math.max(most, across, along);
  }, Number.NEGATIVE_INFINITY);
}

/** Least metal between two holes. */
function leastWeb(drawn: HolePattern, centres: Centres): number {
  const hole = holeFigures(drawn.hole);
  let least = Number.POSITIVE_INFINITY;
  centres.forEach(([x, y], index) => {
    for (const [u, v] of centres.slice(index + 1)) {
      least = Math.min(least, webBetween(drawn.hole.shape, hole, Math.abs(u - x), Math.abs(v - y)));
    }
  });
  return least;
}

function webBetween(
  shape: HoleShape,
  hole: { width: number; height: number },
  dx: number,
  dy: number,
): number {
  if (shape === 'round') return Math.hypot(dx, dy) - hole.width;
  if (shape === 'hexagon') return outsideHexagon(hole.width, dx, dy);
  return Math.max(dx - hole.width, dy - hole.height);
}

/** Distance of a point outside a hexagon from its middle one, whose upright flats stand `apothem` from the middle. */
function outsideHexagon(apothem: number, x: number, y: number): number {
  const half = apothem / Math.sqrt(3);
  return Math.min(
    toSegment(x, y, [apothem, -half], [apothem, half]),
    toSegment(x, y, [apothem, half], [0, 2 * half]),
  );
}

function toSegment(
  x: number,
  y: number,
  from: readonly [number, number],
  to: readonly [number, number],
): number {
  const [u, v] = [to[0] - from[0], to[1] - from[1]];
  const share = ((x - from[0]) * u + (y - from[1]) * v) / (u * u + v * v);
  const near = Math.min(1, Math.max(0, share));
  return Math.hypot(x - from[0] - near * u, y - from[1] - near * v);
}
