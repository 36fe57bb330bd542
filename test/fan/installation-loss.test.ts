import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FAN_ASSUMPTIONS, type FanAssumptions, STOPPED_RANGE } from '../../src/fan/fan-assumptions.ts';
import {
  curtainLoss,
  discArea,
  ringArea,
  usedShare,
  wallCoefficient,
} from '../../src/fan/installation-loss.ts';

const SEED = 61;

/** A frame of 120 mm with a blade circle of 115 mm and a hub of 40 mm. */
const measured: FanAssumptions = { ...FAN_ASSUMPTIONS, bladeCircle: 115 / 120, hub: 40 / 115 };
const one = { size: 0.12, count: 1 };
const { deep, sheet } = FAN_ASSUMPTIONS.plenum;
const FRAME = 0.12 ** 2;

describe('what a fan leaves of its frame', () => {
  it('is the ring between hub and blade circle', () => {
    // Plane geometry: π/4·(0.115² − 0.040²) = 0.00913025 m², 63.4 % of the frame; the disc is 0.0103869 m².
    expect(ringArea(0.12, measured)).toBeCloseTo(0.00913025, 8);
    expect(ringArea(0.12, measured) / FRAME).toBeCloseTo(0.634, 3);
    expect(discArea(0.12, measured)).toBeCloseTo(0.0103869, 7);
  });

  it('by default is within 1 % of that example', () => {
    // Plane geometry, as above.
    expect(Math.abs(ringArea(0.12, FAN_ASSUMPTIONS) / 0.00913025 - 1)).toBeLessThan(0.01);
  });
});

describe('a wall close to a fan', () => {
  it.each([
    [0.5, 0.25],
    [0.25, 1],
    [0.125, 4],
  ])('at %d diameters costs %d heads', (share, heads) => {
    // Derived: one head of the velocity through the curtain πDh, on the disc πD²/4: (D/4h)².
    expect(curtainLoss(share * 0.115, 0.115)).toBeCloseTo(heads, 12);
  });

  it('costs its heads on the discs of all fans side by side, in full before them and by half behind', () => {
    // Derived: K/(2·(2·A)²) with K 1 at a quarter of a diameter; the half behind is a model assumption, no source.
    const row = { size: 0.12, count: 2 };
    const quarter = 0.25 * 0.115;
    const full = 1 / (2 * (2 * 0.0103869) ** 2);
    expect(wallCoefficient(row, { inlet: quarter }, measured) / full).toBeCloseTo(1, 5);
    expect(wallCoefficient(row, { outlet: quarter }, measured) / full).toBeCloseTo(0.5, 5);
    expect(wallCoefficient(row, { inlet: quarter, outlet: quarter }, measured) / full).toBeCloseTo(1.5, 5);
  });

  it('costs nothing from half a diameter on', () => {
    // ASHRAE study of 2005 on axial fans near plenum walls (abstract): nothing significant from there on.
    expect(wallCoefficient(one, { inlet: 0.5 * 0.115, outlet: 1 }, measured)).toBe(0);
    expect(wallCoefficient(one, {}, measured)).toBe(0);
  });

  it('can be left out of account', () => {
    // Contract: shares of 0, or no reach, switch it off.
    const off = { ...measured, wall: { ...measured.wall, inlet: 0, outlet: 0 } };
    const short = { ...measured, wall: { ...measured.wall, reach: 0 } };
    for (const assumptions of [off, short]) {
      expect(wallCoefficient(one, { inlet: 0.005, outlet: 0.005 }, assumptions)).toBe(0);
    }
  });

  it('costs less the farther it is', () => {
    // Monotone by its definition.
    fc.assert(
      fc.property(
        fc.double({ min: 1e-3, max: 0.2, noNaN: true }),
        fc.double({ min: 1e-3, max: 0.2, noNaN: true }),
        (a, b) => {
          const [near, far] = [Math.min(a, b), Math.max(a, b)];
          const cost = (inlet: number): number => wallCoefficient(one, { inlet }, FAN_ASSUMPTIONS);
          expect(cost(far)).toBeLessThanOrEqual(cost(near));
        },
      ),
      { seed: SEED, numRuns: 300 },
    );
  });
});

describe('a face close to a fan', () => {
  it('as large as the frame is used as the ring, which makes 2.49 times its loss', () => {
    // Derived: (A_face/A_ring)² of the 115/40 mm fan in its frame of 120 mm. The distances are a model assumption.
    for (const gap of [0, 0.1 * 0.115, 0.25 * 0.115]) {
      const used = usedShare(one, gap, FRAME, deep, measured);
      expect(used ** -2).toBeCloseTo(2.4874, 3);
    }
  });

  it('is used as a whole from half a diameter on, with an even growth between', () => {
    // Model assumption, no source.
    const ring = 0.00913025 / FRAME;
    expect(usedShare(one, 0.5 * 0.115, FRAME, deep, measured)).toBe(1);
    expect(usedShare(one, 0.375 * 0.115, FRAME, deep, measured)).toBeCloseTo(0.5 * (1 + ring), 6);
  });

  it('is used sooner if it is a sheet', () => {
    // Model assumption, no source: only the ring within a tenth of a diameter, all from a quarter on.
    const ring = 0.00913025 / FRAME;
    expect(usedShare(one, 0.0999 * 0.115, FRAME, sheet, measured)).toBeCloseTo(ring, 6);
    expect(usedShare(one, 0.175 * 0.115, FRAME, sheet, measured)).toBeCloseTo(0.5 * (1 + ring), 6);
    expect(usedShare(one, 0.25 * 0.115, FRAME, sheet, measured)).toBe(1);
  });

  it('no larger than the ring is used as a whole', () => {
    // The ring covers it.
    expect(usedShare(one, 0, 0.009, deep, measured)).toBe(1);
  });

  it('far larger than the frame is reached in part through the gap round it', () => {
    // Derived: the part beyond and the curtain 4·0.12 m·25 mm as two equal losses in series, beside the ring.
    const face = 0.24 * 0.15;
    const beyond = face - FRAME;
    const curtain = 4 * 0.12 * 0.025;
    const reached = 1 / Math.sqrt(beyond ** -2 + curtain ** -2);
    const used = usedShare(one, 0.025, face, deep, measured);
    expect(used * face).toBeCloseTo(0.00913025 + reached, 7);
    expect(usedShare(one, 0, face, deep, measured) * face).toBeCloseTo(0.00913025, 8);
  });

  it('counts all fans side by side', () => {
    // Derived: four fans use four times the face of one.
    const four = usedShare({ size: 0.12, count: 4 }, 0.01, 4 * FRAME, deep, measured);
    expect(four).toBeCloseTo(usedShare(one, 0.01, FRAME, deep, measured), 12);
  });

  it('can be left out of account', () => {
    // Contract: no reach switches it off.
    expect(usedShare(one, 0, FRAME, { ringUpTo: 0.25, fullFrom: 0 }, measured)).toBe(1);
  });

  const areas = fc.double({ min: 1e-4, max: 0.2, noNaN: true });
  const gaps = fc.double({ min: 0, max: 0.1, noNaN: true });
  const counts = fc.integer({ min: 1, max: 6 });

  it('is never used less the farther it is, and never more than as a whole', () => {
    // Monotone by its definition, also across the ends of its three parts.
    fc.assert(
      fc.property(areas, gaps, gaps, counts, fc.constantFrom(deep, sheet), (face, a, b, count, reach) => {
        const row = { size: 0.08, count };
        const [near, far] = [Math.min(a, b), Math.max(a, b)];
        const shares = [near, far].map((gap) => usedShare(row, gap, face, reach, FAN_ASSUMPTIONS));
        expect(shares[0]).toBeGreaterThan(0);
        expect(shares[1]).toBeGreaterThanOrEqual((shares[0] ?? 0) * (1 - 1e-12));
        expect(shares[1]).toBeLessThanOrEqual(1);
      }),
      { seed: SEED + 1, numRuns: 500 },
    );
  });

  it('is used without a jump as the gap grows', () => {
    // Continuous by its definition.
    fc.assert(
      fc.property(areas, gaps, fc.constantFrom(deep, sheet), (face, gap, reach) => {
        const at = (distance: number): number => usedShare(one, distance, face, reach, FAN_ASSUMPTIONS);
        expect(Math.abs(at(gap + 1e-9) - at(gap))).toBeLessThan(1e-5);
      }),
      { seed: SEED + 2, numRuns: 300 },
    );
  });
});

describe('the resistance of a fan that does not turn', () => {
  it('is assumed inside its plausible range', () => {
    // Model assumption, no source: 0.3 turned by the stream to 3 locked.
    expect(STOPPED_RANGE).toEqual({ low: 0.3, high: 3 });
    expect(FAN_ASSUMPTIONS.lost.stopped).toBeGreaterThan(STOPPED_RANGE.low);
    expect(FAN_ASSUMPTIONS.lost.stopped).toBeLessThan(STOPPED_RANGE.high);
  });
});
