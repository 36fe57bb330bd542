import { describe, expect, it } from 'vitest';
import { plain } from '../../src/presentation/paint.ts';
import { solveView } from '../../src/presentation/solve-view.ts';
import { atSpeed, changed, dutyAt, FANS, readBoth, TWO_FANS } from './two-fans.ts';

/** A-weighting of the octaves from 63 Hz to 8 kHz [dB]. Published: IEC 61672-1:2013, table 3. */
const WEIGHTS = [-26.2, -16.1, -8.6, -3.2, 0, 1.2, 1, -1.1];
/** Invented octaves with the A-weighted sum 31.58 dB, computed with Python from that table. */
const OCTAVES = [26, 29, 31, 30, 27, 22, 16, 9];
const RATING = '{ level: 31.5 dB(A), speed: 2000 rpm, distance: 1 m }';
const QUIET_VENT = { ', vent: 50.2654825 cm²': '' };

const withOctaves = (levels: readonly number[], speed = 2000) =>
  changed(FANS, { [RATING]: `{ octaves: ${levels.join(' ')} dB, speed: ${speed} rpm, distance: 1 m }` });

function spectrumOf(changes: Readonly<Record<string, string>>, catalog: string, speed: number) {
  const duty = dutyAt(readBoth(changed(TWO_FANS, changes), catalog), speed);
  const { spectrum } = duty.sound;
  if (!spectrum) throw new Error('there is sound');
  return { level: duty.level, ...spectrum };
}

/** A-weighted level of octaves [dB]. */
const weighted = (octaves: readonly { readonly level: number }[]): number =>
  10 *
  Math.log10(
    octaves.reduce((sum, { level }, index) => sum + 10 ** ((level + (WEIGHTS[index] ?? 0)) / 10), 0),
  );

describe('the spectrum at the listener', () => {
  it('sums to the level, whatever the sources', () => {
    for (const catalog of [FANS, withOctaves(OCTAVES)]) {
      for (const speed of [0.3, 0.65, 1]) {
        const { octaves, level } = spectrumOf({}, catalog, speed);
        expect(octaves.map(({ centre }) => centre)).toEqual([63, 125, 250, 500, 1000, 2000, 4000, 8000]);
        expect(weighted(octaves)).toBeCloseTo(level, 9);
      }
    }
  });

  it('has the shape of the rated octaves at the speed they were rated at', () => {
    const { octaves, assumedShare } = spectrumOf(QUIET_VENT, withOctaves(OCTAVES, 1300), 0.65);
    const shift = (octaves[0]?.level ?? 0) - (OCTAVES[0] ?? 0);
    octaves.forEach(({ level }, index) => {
      expect(level - (OCTAVES[index] ?? 0)).toBeCloseTo(shift, 9);
    });
    expect(assumedShare).toBe(0);
  });

  it('moves with the speed: at half the speed the octaves are those of twice the frequency', () => {
    // Derived: one Strouhal number, f/n. The nominal centres 63 and 125 Hz are not quite an octave apart.
    const { octaves } = spectrumOf(QUIET_VENT, withOctaves(OCTAVES), 0.5);
    const shift = (octaves[3]?.level ?? 0) - (OCTAVES[4] ?? 0);
    for (let index = 0; index < 7; index++) {
      const there = (octaves[index]?.level ?? 0) - shift;
      expect(Math.abs(there - (OCTAVES[index + 1] ?? 0))).toBeLessThan(0.1);
    }
  });

  it('goes over from the octaves of one rating to those of the next', () => {
    const low = [30, 28, 24, 20, 16, 10, 4, -3];
    const both = changed(FANS, {
      [RATING]: `{ octaves: ${OCTAVES.join(' ')} dB, distance: 1 m }, { octaves: ${low.join(' ')} dB, speed: 1000 rpm }`,
    });
    const fall = (speed: number) => {
      const { octaves } = spectrumOf(QUIET_VENT, both, speed);
      return (octaves[1]?.level ?? 0) - (octaves[6]?.level ?? 0);
    };
    expect(fall(1)).toBeCloseTo(29 - 16, 9);
    expect(fall(0.5)).toBeCloseTo(28 - 4, 9);
    expect(fall(0.75)).toBeGreaterThan(29 - 16);
    expect(fall(0.75)).toBeLessThan(28 - 4);
  });

  it('has the usual shape of an axial fan where none is given', () => {
    // Published: VDI 2081-1:2001, equation 15 (phonometry, hvac.py): -5 - 5 (lg(60 f/(πN)) - 0.6)².
    const shape = (centre: number) => -5 - 5 * (Math.log10((60 * centre) / (Math.PI * 1300)) - 0.6) ** 2;
    const { octaves, assumedShare } = spectrumOf(QUIET_VENT, FANS, 0.65);
    for (const { centre, level } of octaves) {
      expect(level - (octaves[4]?.level ?? 0)).toBeCloseTo(shape(centre) - shape(1000), 9);
    }
    expect(assumedShare).toBe(1);
  });

  it('gives a noise rating by the highest curve', () => {
    // Published: ISO/R 1996 coefficients; NR of a spectrum is the highest (L - a)/b.
    const curve = [
      [35.5, 0.79],
      [22, 0.87],
      [12, 0.93],
      [4.8, 0.974],
      [0, 1],
      [-3.5, 1.015],
      [-6.1, 1.025],
      [-8, 1.03],
    ] as const;
    const { octaves, noiseRating, governing } = spectrumOf({}, withOctaves(OCTAVES), 1);
    const ratings = octaves.map(
      ({ level }, index) => (level - (curve[index]?.[0] ?? 0)) / (curve[index]?.[1] ?? 1),
    );
    expect(noiseRating).toBeCloseTo(Math.max(...ratings), 9);
    expect(octaves[ratings.indexOf(Math.max(...ratings))]?.centre).toBe(governing);
  });

  it('gives the loudness of fan noise computed elsewhere', () => {
    // Computed with MoSQITo (loudness_zwst) for the same shape: 0.54 sone at 25 dB(A), 1.15 at 30, 2.05 at 35; the
    // level between is interpolated in the logarithm.
    const { level, loudness, loudnessLevel } = spectrumOf(QUIET_VENT, FANS, 0.65);
    const share = (level - 30) / 5;
    expect(Math.abs(loudness - 1.15 * (2.05 / 1.15) ** share)).toBeLessThan(0.03);
    expect(Math.abs(loudnessLevel - (42 + 8 * share))).toBeLessThan(1);
  });

  it('is told as an estimate only where it is assumed', () => {
    const told = (catalog: string) => solveView(atSpeed(readBoth(TWO_FANS, catalog), 0.65), { paint: plain });
    expect(told(FANS)).toContain('(estimates: the usual spectrum of such sources)');
    // The vent makes 2 % of the sound; its spectrum is that of the law.
    expect(told(withOctaves(OCTAVES))).not.toContain('estimates');
  });
});
