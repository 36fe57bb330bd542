import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hasOctaves, movedOctaves, octaveBands, ratedSpectrum } from '../../src/sound/rated-spectrum.ts';
import { atLevel, fanShape, fanSpectrum, OCTAVES, weightedLevel } from '../../src/sound/spectrum.ts';

const SEED = 83;
/** Invented octaves, 63 Hz to 8 kHz. */
const OWN = [26, 29, 31, 30, 27, 22, 16, 9];
const rating = (speed: number, octaves?: readonly number[]) => ({
  speed,
  level: 30,
  basisStated: true,
  ...(octaves ? { octaves } : {}),
});
const levels = (bands: readonly { readonly level: number }[]) => bands.map(({ level }) => level);

const octaveList = fc.array(fc.double({ min: -20, max: 60, noNaN: true }), { minLength: 8, maxLength: 8 });
const turning = fc.double({ min: 8, max: 120, noNaN: true });

describe('octaves moved to another speed', () => {
  it('stay where they are at their own', () => {
    expect(levels(movedOctaves(OWN, 20, 20))).toEqual(OWN);
  });

  it('move by a whole octave at half and double speed', () => {
    // Derived: at one Strouhal number, f goes with the speed. Nominal centres are rounded: 125/63 is 1 % off an octave.
    const half = levels(movedOctaves(OWN, 40, 20));
    const twice = levels(movedOctaves(OWN, 20, 40));
    for (let octave = 0; octave < 7; octave++) {
      expect(Math.abs((half[octave] ?? 0) - (OWN[octave + 1] ?? 0))).toBeLessThan(0.1);
      expect(Math.abs((twice[octave + 1] ?? 0) - (OWN[octave] ?? 0))).toBeLessThan(0.1);
    }
  });

  it('run straight against lg f between the octaves measured', () => {
    // Derived by hand: 1 kHz at √2 of the speed stood at 1000/√2 Hz, halfway from 500 Hz (30 dB) to 1 kHz (27 dB).
    expect(movedOctaves(OWN, 20, 20 * Math.SQRT2)[4]?.level).toBeCloseTo(28.5, 9);
  });

  it('carry on as the usual shape beyond those measured', () => {
    // Published: VDI 2081-1:2001, equation 15 (phonometry, hvac.py): -5 - 5 (lg St - 0.6)², St = f/(πn).
    const shape = (strouhal: number) => -5 * (Math.log10(strouhal) - 0.6) ** 2;
    const [low] = movedOctaves(OWN, 20, 60);
    expect(low?.level).toBeCloseTo(26 + shape(63 / (Math.PI * 60)) - shape(63 / (Math.PI * 20)), 9);
    const high = movedOctaves(OWN, 60, 20).at(-1);
    expect(high?.level).toBeCloseTo(9 + shape(8000 / (Math.PI * 20)) - shape(8000 / (Math.PI * 60)), 9);
  });

  it('of a fan that has the usual shape stay the usual shape', () => {
    // A second way to the same spectrum: the law moved by itself. Straight lines lie below a curve of 5 dB a square
    // decade by at most 5·lg²2/4 = 0.11 dB, and so does the level they are brought to.
    const usual = OCTAVES.map((centre) => fanShape(centre, 30));
    for (const speed of [10, 15, 24, 30, 45, 75]) {
      const moved = atLevel(movedOctaves(usual, 30, speed), 25);
      levels(fanSpectrum(25, speed)).forEach((level, octave) => {
        expect(Math.abs((moved[octave]?.level ?? 0) - level)).toBeLessThan(0.12);
      });
    }
  });
});

describe('the spectrum of a rated fan', () => {
  it('has the level asked for, whatever the octaves', () => {
    const ratings = fc.array(
      fc.tuple(turning, octaveList).map(([speed, octaves]) => rating(speed, octaves)),
      { minLength: 1, maxLength: 4 },
    );
    fc.assert(
      fc.property(ratings, turning, fc.double({ min: 5, max: 60, noNaN: true }), (given, speed, level) => {
        const bands = ratedSpectrum(given, speed, level);
        expect(bands.map(({ centre }) => centre)).toEqual(OCTAVES);
        expect(weightedLevel(bands)).toBeCloseTo(level, 8);
      }),
      { seed: SEED },
    );
  });

  it('has no jump over the speed, at a rating nor between two', () => {
    const other = [30, 28, 24, 20, 16, 10, 4, -3];
    const ratings = [rating(40, OWN), rating(20, other), rating(30)];
    const near = fc.oneof(
      fc.constantFrom(20, 40, Math.sqrt(800)),
      fc.double({ min: 8, max: 90, noNaN: true }),
    );
    fc.assert(
      fc.property(near, (speed) => {
        const [below, above] = [speed * (1 - 1e-9), speed * (1 + 1e-9)].map((at) =>
          levels(ratedSpectrum(ratings, at, 30)),
        );
        below?.forEach((level, octave) => {
          expect(Math.abs(level - (above?.[octave] ?? Number.NaN))).toBeLessThan(1e-6);
        });
      }),
      { seed: SEED },
    );
    // At each rating it is that rating's own shape.
    for (const [speed, octaves] of [
      [20, other],
      [40, OWN],
    ] as const) {
      const own = levels(atLevel(octaveBands(octaves), 30));
      levels(ratedSpectrum(ratings, speed, 30)).forEach((level, octave) => {
        expect(level).toBeCloseTo(own[octave] ?? Number.NaN, 9);
      });
    }
  });

  it('is moved from the nearest rating outside them', () => {
    const ratings = [rating(20, [30, 28, 24, 20, 16, 10, 4, -3]), rating(40, OWN)];
    const moved = levels(atLevel(movedOctaves(OWN, 40, 60), 30));
    levels(ratedSpectrum(ratings, 60, 30)).forEach((level, octave) => {
      expect(level).toBeCloseTo(moved[octave] ?? Number.NaN, 9);
    });
  });

  it('is the usual one without octaves of its own', () => {
    expect(hasOctaves([rating(20)])).toBe(false);
    expect(hasOctaves([rating(20), rating(30, OWN)])).toBe(true);
    expect(ratedSpectrum([rating(20)], 25, 30)).toEqual(fanSpectrum(30, 25));
  });
});
