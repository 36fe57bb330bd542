import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { levelOf } from '../../src/sound/levels.ts';
import { openingEnergy, openingPower, velocityForLevel } from '../../src/sound/opening-noise.ts';
import { SOUND_ASSUMPTIONS } from '../../src/sound/sound-assumptions.ts';
import { OCTAVES, weightedLevel } from '../../src/sound/spectrum.ts';

const SEED = 74;
const DENSITY = 1.2;

/** Level at 1 m over the half space of an opening by its loss coefficient. */
function level(face: number, velocity: number, zeta: number, assumptions = SOUND_ASSUMPTIONS): number {
  const loss = (zeta * DENSITY * velocity * velocity) / 2;
  return levelOf(openingEnergy(face, face * velocity, loss, DENSITY, assumptions));
}

const round = (diameter: number) => (Math.PI / 4) * diameter ** 2;

/**
 * A-weighted power over unweighted power by octaves: peak at 160.1 v Hz, -5.82 - 0.15 a - 1.13 a² per octave.
 * Published: Long, equation 13.31, round device, 48.8 Hz per ft/s, through phonometry, page on the duct path.
 */
function weightingByOctaves(velocity: number): number {
  const peak = (48.8 / 0.3048) * velocity;
  const bands = OCTAVES.map((centre) => {
    const below = Math.log2(peak / centre);
    return { centre, level: -5.82 - 0.15 * below - 1.13 * below ** 2 };
  });
  const total = 10 * Math.log10(bands.reduce((sum, band) => sum + 10 ** (band.level / 10), 0));
  return weightedLevel(bands) - total;
}

describe('flow noise of openings, unweighted', () => {
  it('has the constant of the handbook', () => {
    // Published: -31.3 in ft² and ft/s (Long, equation 13.27, through phonometry, hvac.py); converted it is 9.9788.
    const converted = -31.3 - 10 * Math.log10(0.3048 ** 2) - 60 * Math.log10(0.3048);
    expect(converted).toBeCloseTo(9.9788, 3);
    expect(Math.abs(openingPower(1, 1, 1) - converted)).toBeLessThan(0.05);
  });

  it('reproduces a printed grille', () => {
    // Published: phonometry, page on the duct path: 0.6096 m square, 0.39624 m/s, 12.45 Pa (zeta 132), 45.196 dB.
    expect(Math.abs(openingPower(0.3716, 0.39624, 132) - 45.196)).toBeLessThan(0.05);
  });

  it('gives the digits of an independent computation', () => {
    expect(openingPower(0.0028274, 4, 2.5)).toBeCloseTo(32.5757, 3); // computed
    expect(openingPower(round(0.08), 2.5, 2.5)).toBeCloseTo(22.8273, 3); // computed
  });

  it('agrees with the damper law of VDI 2081', () => {
    // Published: VDI 2081-1:2019 through a public C# library: 10 + 60 lg v + 22 lg(zeta + 1) + 10 lg S.
    const damper = 10 + 60 * Math.log10(6) + 22 * Math.log10(2.5 + 1) + 10 * Math.log10(0.0036);
    expect(damper).toBeCloseTo(44.2216, 3);
    expect(openingPower(0.0036, 6, 2.5)).toBeCloseTo(44.1903, 3); // computed
  });

  it('falls by 15 dB when the area doubles at one flow', () => {
    // Derived: 10 lg 2 - 60 lg 2.
    expect(openingPower(0.02, 1.5, 2.5) - openingPower(0.01, 3, 2.5)).toBeCloseTo(-15.0515, 4);
  });
});

describe('flow noise of openings, A-weighted at 1 m', () => {
  it('gives the digits of the closed form', () => {
    const face = 0.0028274;
    // Computed: 3.5 + 10 lg S + 30 lg 2.5 + 67.6 lg 4 = 30.651, less 10 lg 2π.
    expect(Math.abs(level(face, 4, 2.5) - 22.669)).toBeLessThan(0.01);
    expect(Math.abs(level(face, 4, 2.5) + 10 * Math.log10(2 * Math.PI) - 30.651)).toBeLessThan(0.01);
  });

  it.each([1.5, 2, 3, 4, 5, 6, 8])('is within 0.6 dB of the octave sum at %d m/s', (velocity) => {
    const octaves = openingPower(0.01, velocity, 2.5) + weightingByOctaves(velocity);
    expect(Math.abs(level(0.01, velocity, 2.5) + 10 * Math.log10(2 * Math.PI) - octaves)).toBeLessThan(0.6);
  });

  // Computed with NumPy from the octave shape; the closed form is allowed its 0.6 dB.
  it.each([
    { zeta: 1, levels: [-9.3, 2.7, 11.1, 17.4, 22.6] },
    { zeta: 2.5, levels: [2.63, 14.66, 23.01, 29.37, 34.49] },
    { zeta: 4, levels: [8.75, 20.78, 29.13, 35.49, 40.62] },
    { zeta: 10, levels: [20.69, 32.72, 41.07, 47.43, 52.55] },
  ])('of a 60 mm hole with loss coefficient $zeta', ({ zeta, levels }) => {
    levels.forEach((expected, index) => {
      expect(Math.abs(level(round(0.06), index + 2, zeta) - expected)).toBeLessThan(0.65);
    });
  });

  // Computed: 10^((T + 4.482 - 10 lg S - 30 lg zeta)/67.6), rounded to 0.01 m/s.
  it.each([
    { diameter: 0.06, zeta: 2.5, velocities: [2.6, 3.08, 3.65] },
    { diameter: 0.06, zeta: 4, velocities: [2.11, 2.5, 2.97] },
    { diameter: 0.06, zeta: 10, velocities: [1.4, 1.67, 1.97] },
    { diameter: 0.08, zeta: 2.5, velocities: [2.39, 2.83, 3.35] },
    { diameter: 0.12, zeta: 2.5, velocities: [2.12, 2.51, 2.98] },
    { diameter: 0.12, zeta: 4, velocities: [1.72, 2.04, 2.42] },
  ])(
    'reaches 10, 15, 20 dB of $diameter m and $zeta at $velocities m/s',
    ({ diameter, zeta, velocities }) => {
      velocities.forEach((velocity, index) => {
        const target = 10 + 5 * index;
        const found = velocityForLevel(round(diameter), zeta, target, SOUND_ASSUMPTIONS);
        expect(Math.abs(found - velocity)).toBeLessThan(0.006);
        expect(level(round(diameter), found, zeta)).toBeCloseTo(target, 9);
      });
    },
  );

  it('reaches 15 dB of a 60 mm hole at 3.080 m/s', () => {
    expect(Math.abs(velocityForLevel(round(0.06), 2.5, 15, SOUND_ASSUMPTIONS) - 3.08)).toBeLessThan(0.005); // computed
  });

  it('ignores the direction of the flow', () => {
    expect(openingEnergy(0.01, -0.03, -20, 1.2, SOUND_ASSUMPTIONS)).toBe(
      openingEnergy(0.01, 0.03, 20, 1.2, SOUND_ASSUMPTIONS),
    );
  });

  it('is nothing below 0.8 m/s, half at 1 m/s and full from 1.2 m/s', () => {
    // Model assumption, no source; half at the middle of a symmetric step is derived.
    const open = {
      ...SOUND_ASSUMPTIONS,
      opening: { ...SOUND_ASSUMPTIONS.opening, velocityFade: { from: 0, to: 0 } },
    };
    expect(level(0.01, 0.8, 2.5)).toBe(Number.NEGATIVE_INFINITY);
    expect(level(0.01, 0, 2.5)).toBe(Number.NEGATIVE_INFINITY);
    expect(level(0.01, 1, 2.5)).toBeCloseTo(level(0.01, 1, 2.5, open) - 3.0103, 4);
    expect(level(0.01, 1.2, 2.5)).toBeCloseTo(level(0.01, 1.2, 2.5, open), 12);
  });

  it('is nothing below a loss coefficient of 0.5', () => {
    // Model assumption, no source.
    expect(level(0.01, 5, 0.499)).toBe(Number.NEGATIVE_INFINITY);
    expect(level(0.01, 5, 0.6)).toBeGreaterThan(0);
  });

  it('has no jump and no kink in velocity or loss', () => {
    const velocity = fc.oneof(fc.constantFrom(0.8, 1.2), fc.double({ min: 0.5, max: 2, noNaN: true }));
    const zeta = fc.oneof(fc.constantFrom(0.5, 0.6), fc.double({ min: 0.3, max: 3, noNaN: true }));
    fc.assert(
      fc.property(velocity, zeta, (at, loss) => {
        const value = (v: number, z: number) =>
          openingEnergy(0.01, 0.01 * v, (z * DENSITY * v * v) / 2, DENSITY, SOUND_ASSUMPTIONS);
        const step = 1e-6;
        const bends = [
          value(at + step, loss) - 2 * value(at, loss) + value(at - step, loss),
          value(at, loss + step) - 2 * value(at, loss) + value(at, loss - step),
        ];
        // A jump or a kink would leave far more than the curvature bound 2000/s² over steps of a millionth.
        for (const bend of bends) expect(Math.abs(bend)).toBeLessThan(2000 * step * step + 1e-12);
        // Rounding of the loss coefficient on the edge of its fade leaves some 1e-31.
        expect(value(at + step, loss) - value(at, loss)).toBeGreaterThanOrEqual(-1e-20);
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  it('follows constants a user measured', () => {
    const measured = {
      ...SOUND_ASSUMPTIONS,
      opening: { ...SOUND_ASSUMPTIONS.opening, constant: 6, lossFactor: 18, velocityFactor: 60 },
    };
    // Derived: 6 + 10 lg 0.01 + 18 lg 4 + 60 lg 3 - 10 lg 2π.
    expect(level(0.01, 3, 4, measured)).toBeCloseTo(17.4826, 3);
  });
});
