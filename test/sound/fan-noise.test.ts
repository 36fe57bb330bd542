import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fanLevel, installationTerm, type Obstacle, workingPointTerm } from '../../src/sound/fan-noise.ts';
import { SOUND_ASSUMPTIONS } from '../../src/sound/sound-assumptions.ts';

const SEED = 73;

describe('working point', () => {
  // Model assumption, no source: 0 from half free delivery on, 3 dB at 0.35, 6 dB from 0.15 down, straight between.
  it.each([
    [0.42, 1.6],
    [0.35, 3],
    [0.25, 4.5],
    [0.15, 6],
    [0.1, 6],
    [0.5, 0],
    [1, 0],
    [1.4, 0],
    [0, 6],
    [-0.3, 6],
  ])('at flow share %d adds %d dB', (share, rise) => {
    expect(workingPointTerm(share, SOUND_ASSUMPTIONS)).toBeCloseTo(rise, 10);
  });

  it('has no jump and never falls towards shut-off', () => {
    const share = fc.double({ min: -0.5, max: 1.5, noNaN: true });
    fc.assert(
      fc.property(share, fc.double({ min: 0, max: 0.01, noNaN: true }), (at, step) => {
        const fall = workingPointTerm(at, SOUND_ASSUMPTIONS) - workingPointTerm(at + step, SOUND_ASSUMPTIONS);
        expect(fall).toBeGreaterThanOrEqual(-1e-12);
        expect(fall).toBeLessThanOrEqual(20 * step + 1e-12); // steepest piece: 3 dB over 0.15
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  it('has no jump at a knot', () => {
    for (const { flowShare } of SOUND_ASSUMPTIONS.workingPoint) {
      const [below, above] = [-1e-12, 1e-12].map((step) =>
        workingPointTerm(flowShare + step, SOUND_ASSUMPTIONS),
      );
      expect(above).toBeCloseTo(below ?? Number.NaN, 9);
    }
  });

  it('is nothing without knots', () => {
    expect(workingPointTerm(0.1, { ...SOUND_ASSUMPTIONS, workingPoint: [] })).toBe(0);
  });
});

describe('installation', () => {
  const touching = (disturbance: Obstacle['disturbance']) => ({ disturbance, gap: 0 });

  // Model assumption, no source for the sizes; digits computed: ΔL0 exp(-g/(0.15 D)).
  it.each([
    { inlet: [{ disturbance: 'fins', gap: 0.01 }], size: 0.092, rise: 1.4535 },
    { inlet: [{ disturbance: 'guard', gap: 0.005 }], size: 0.06, rise: 0.5738 },
    { inlet: [touching('panel')], size: 0.06, rise: 4 },
    { inlet: [touching('fan')], size: 0.08, rise: 3 },
  ] as const)('before the fan: $inlet', ({ inlet, size, rise }) => {
    expect(installationTerm(inlet, [], size, SOUND_ASSUMPTIONS)).toBeCloseTo(rise, 4);
  });

  it('counts the second neighbour of a side half, and no third', () => {
    const sides = [touching('mesh'), touching('panel'), touching('guard'), touching('fins')];
    // Model assumption, no source: 4 + 3/2.
    expect(installationTerm(sides, [], 0.08, SOUND_ASSUMPTIONS)).toBeCloseTo(5.5, 12);
    expect(installationTerm([...sides].reverse(), [], 0.08, SOUND_ASSUMPTIONS)).toBeCloseTo(5.5, 12);
  });

  it('disturbs less on the outlet, and nothing by a fan there', () => {
    expect(installationTerm([], [touching('fins')], 0.08, SOUND_ASSUMPTIONS)).toBe(1.5);
    expect(installationTerm([], [touching('fan')], 0.08, SOUND_ASSUMPTIONS)).toBe(0);
  });

  it('adds both sides up to 8 dB', () => {
    const inlet = [touching('counter-fan'), touching('panel')];
    const outlet = [touching('wall'), touching('panel')];
    expect(installationTerm([touching('mesh')], outlet, 0.08, SOUND_ASSUMPTIONS)).toBe(5); // 2 + 2 + 2/2
    expect(installationTerm(inlet, outlet, 0.08, SOUND_ASSUMPTIONS)).toBe(8); // 5 + 4/2 + 2 + 2/2, capped
  });

  it('is smooth and falls to nothing with the gap', () => {
    const obstacle = fc.record({
      disturbance: fc.constantFrom(
        ...(Object.keys(SOUND_ASSUMPTIONS.installation.inlet) as Obstacle['disturbance'][]),
      ),
      gap: fc.double({ min: 0, max: 0.05, noNaN: true }),
    });
    const side = fc.array(obstacle, { maxLength: 4 });
    fc.assert(
      fc.property(side, side, fc.double({ min: 0, max: 0.02, noNaN: true }), (inlet, outlet, away) => {
        const moved = (from: readonly Obstacle[], by: number) =>
          from.map(({ disturbance, gap }) => ({ disturbance, gap: gap + by }));
        const near = installationTerm(inlet, outlet, 0.08, SOUND_ASSUMPTIONS);
        const further = installationTerm(moved(inlet, away), moved(outlet, away), 0.08, SOUND_ASSUMPTIONS);
        const far = installationTerm(moved(inlet, 1), moved(outlet, 1), 0.08, SOUND_ASSUMPTIONS);
        expect(near).toBeLessThanOrEqual(8);
        expect(near - further).toBeGreaterThanOrEqual(-1e-12);
        expect(near - further).toBeLessThanOrEqual((11 * away) / (0.15 * 0.08) + 1e-12);
        expect(far).toBeLessThan(1e-9);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  it('takes an overlap for a touch', () => {
    const inlet = [{ disturbance: 'panel', gap: -0.01 }] as const;
    expect(installationTerm(inlet, [], 0.08, SOUND_ASSUMPTIONS)).toBe(4);
  });
});

describe('floor', () => {
  const FLOOR = SOUND_ASSUMPTIONS.fanFloor;

  it('is added energetically', () => {
    // Computed: 10 lg(10^2.42637 + 10^1).
    expect(fanLevel(24.2637, FLOOR)).toBeCloseTo(24.4234, 4);
    expect(fanLevel(Number.NEGATIVE_INFINITY, FLOOR)).toBeCloseTo(10, 12);
    expect(fanLevel(10, FLOOR)).toBeCloseTo(13.0103, 4); // computed: 10 + 10 lg 2
  });

  it('is no jump and keeps the order of levels', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -30, max: 60, noNaN: true }),
        fc.double({ min: 1e-3, max: 1, noNaN: true }),
        (level, step) => {
          const rise = fanLevel(level + step, 15) - fanLevel(level, 15);
          expect(rise).toBeGreaterThan(0);
          expect(rise).toBeLessThanOrEqual(step + 1e-9);
          expect(fanLevel(level, 15)).toBeGreaterThanOrEqual(Math.max(level, 15));
        },
      ),
      { seed: SEED },
    );
  });
});
