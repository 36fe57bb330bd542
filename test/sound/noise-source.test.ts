import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  fanLevel,
  installationTerm,
  levelAtRatio,
  speedModel,
  workingPointTerm,
} from '../../src/sound/fan-noise.ts';
import { energy, levelOf, sumLevels, sumOfIdentical } from '../../src/sound/levels.ts';
import { noiseBudget } from '../../src/sound/noise-source.ts';
import { openingEnergy } from '../../src/sound/opening-noise.ts';
import { SOUND_ASSUMPTIONS } from '../../src/sound/sound-assumptions.ts';
import { sumUncertainty } from '../../src/sound/uncertainty.ts';

/**
 * Two 92 mm fans side by side, rated 31.5 dB(A) at 2000 rpm, run at 1300 rpm and 42 % of free delivery, fins 10 mm
 * before the inlet; an 80 mm vent with loss coefficient 2.5 at 2.5 m/s; no panel. All figures computed with NumPy
 * from the laws of the single terms; the sizes of the terms are model assumptions.
 */
describe('a whole enclosure', () => {
  const model = speedModel(
    [{ speed: 2000 / 60, level: 31.5, basisStated: true }],
    2000 / 60,
    SOUND_ASSUMPTIONS,
  );
  const speed = levelAtRatio(model, 1300 / 2000);
  const level =
    speed +
    workingPointTerm(0.42, SOUND_ASSUMPTIONS) +
    installationTerm([{ disturbance: 'fins', gap: 0.01 }], [], 0.092, SOUND_ASSUMPTIONS);
  const face = (Math.PI / 4) * 0.08 ** 2;
  const vent = openingEnergy(face, 2.5 * face, (2.5 * 1.2 * 2.5 ** 2) / 2, 1.2, SOUND_ASSUMPTIONS);
  const emissions = [
    { place: 3, label: 'fans', energyAtOneMetre: 2 * energy(fanLevel(level, SOUND_ASSUMPTIONS.fanFloor)) },
    { place: 5, label: 'vent', energyAtOneMetre: vent },
  ];

  it('builds up term by term', () => {
    expect(speed).toBeCloseTo(21.2102, 3);
    expect(level).toBeCloseTo(24.2637, 3);
    expect(fanLevel(level, SOUND_ASSUMPTIONS.fanFloor)).toBeCloseTo(24.4235, 3);
    expect(sumOfIdentical(fanLevel(level, SOUND_ASSUMPTIONS.fanFloor), 2)).toBeCloseTo(27.4338, 3);
    expect(levelOf(vent)).toBeCloseTo(11.3698, 3);
  });

  it('comes to 27.54 dB(A) at 1 m and 30.64 dB(A) at 0.7 m', () => {
    const near = noiseBudget(emissions, 0.7, SOUND_ASSUMPTIONS);
    expect(Math.abs(near.levelAtOneMetre - 27.54)).toBeLessThan(0.005);
    expect(Math.abs(near.levelAtListener - 30.638)).toBeLessThan(0.005);
    expect(sumLevels([near.levelAtListener, 30])).toBeCloseTo(33.341, 3);
  });

  it('shows each source with its share', () => {
    const { sources } = noiseBudget(emissions, 0.7, SOUND_ASSUMPTIONS);
    expect(sources.map(({ place, label }) => [place, label])).toEqual([
      [3, 'fans'],
      [5, 'vent'],
    ]);
    expect(sources[1]?.levelAtListener).toBeCloseTo(14.4678, 3); // computed: 11.3698 - 20 lg 0.7
    expect(sources[1]?.share).toBeCloseTo(0.0241, 3); // computed: 10^((11.3698 - 27.54)/10)
  });

  it('has an uncertainty of 3.32 dB', () => {
    const fan = { level: 24.4235, uncertainty: 3.5882 };
    const opening = { level: 11.3698, uncertainty: SOUND_ASSUMPTIONS.uncertainty.opening };
    // Computed with NumPy: fans correlated by 0.8, the vent with neither.
    const { sameModel } = SOUND_ASSUMPTIONS.correlation;
    const rho = (one: number, other: number) => (one < 2 && other < 2 ? sameModel : 0);
    expect(sumUncertainty([fan, fan, opening], rho)).toBeCloseTo(3.324, 3);
  });
});

describe('noise budget', () => {
  it('sums to its total', () => {
    const emission = fc.record({
      place: fc.nat(20),
      label: fc.constant('fans'),
      energyAtOneMetre: fc.oneof(fc.constant(0), fc.double({ min: 1e-3, max: 1e6, noNaN: true })),
    });
    const distance = fc.double({ min: 0.2, max: 5, noNaN: true });
    fc.assert(
      fc.property(fc.array(emission, { minLength: 1, maxLength: 8 }), distance, (emissions, far) => {
        const budget = noiseBudget(emissions, far, SOUND_ASSUMPTIONS);
        const heard = sumLevels(budget.sources.map((source) => source.levelAtListener));
        const shares = budget.sources.reduce((sum, source) => sum + source.share, 0);
        const silent = emissions.every((one) => one.energyAtOneMetre === 0);
        expect(shares).toBeCloseTo(silent ? 0 : 1, 9);
        if (silent) expect(budget.levelAtListener).toBe(Number.NEGATIVE_INFINITY);
        else expect(heard).toBeCloseTo(budget.levelAtListener, 6);
      }),
      { seed: 78 },
    );
  });

  it('takes the assumed attenuation off at the listener only', () => {
    const emissions = [{ place: 1, label: 'fans', energyAtOneMetre: energy(30) }];
    const budget = noiseBudget(emissions, 1, { ...SOUND_ASSUMPTIONS, attenuation: 4 });
    expect(budget.levelAtOneMetre).toBeCloseTo(30, 10);
    expect(budget.levelAtListener).toBeCloseTo(26, 10);
  });

  it('of silence is silence', () => {
    const budget = noiseBudget([{ place: 1, label: 'fans', energyAtOneMetre: 0 }], 2, SOUND_ASSUMPTIONS);
    expect(budget.levelAtListener).toBe(Number.NEGATIVE_INFINITY);
    expect(budget.sources[0]?.share).toBe(0);
  });
});
