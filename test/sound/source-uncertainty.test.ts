import { describe, expect, it } from 'vitest';
import { speedModel } from '../../src/sound/fan-noise.ts';
import { SOUND_ASSUMPTIONS } from '../../src/sound/sound-assumptions.ts';
import {
  commonUncertainty,
  fanUncertainty,
  speedUncertainty,
  workingPointUncertainty,
} from '../../src/sound/source-uncertainty.ts';

function rating(speed: number, level: number) {
  return { speed, level, basisStated: true };
}

describe('uncertainty of the speed', () => {
  it('grows with the way from the rating', () => {
    const model = speedModel([rating(40, 31.5)], 40, SOUND_ASSUMPTIONS);
    expect(speedUncertainty(model, 0.5)).toBeCloseTo(1.5051, 4); // computed: 5 lg 2
    expect(speedUncertainty(model, 0.65)).toBeCloseTo(0.9354, 4); // computed: 5 lg(2000/1300)
    expect(speedUncertainty(model, 2)).toBeCloseTo(1.5051, 4);
    expect(speedUncertainty(model, 1)).toBe(0);
    expect(speedUncertainty(model, 0)).toBe(Number.POSITIVE_INFINITY);
  });

  it('is that of the joined exponent for two ratings', () => {
    const model = speedModel([rating(20, 16.5), rating(40, 33)], 40, SOUND_ASSUMPTIONS);
    expect(speedUncertainty(model, 0.5)).toBeCloseTo(3.4237 * Math.log10(2), 4); // computed with NumPy
  });

  it('is nothing between ratings that are interpolated', () => {
    const model = speedModel([rating(10, 12), rating(20, 26), rating(40, 45)], 40, SOUND_ASSUMPTIONS);
    expect(speedUncertainty(model, 0.4)).toBe(0);
    expect(speedUncertainty(model, 0.2)).toBeGreaterThan(0);
  });
});

// Sizes: model assumption, no source.
describe('uncertainty of a fan', () => {
  it.each([
    { share: 0.1, stalled: false, uncertainty: 3.5 },
    { share: 0.34, stalled: false, uncertainty: 3.5 },
    { share: 0.35, stalled: false, uncertainty: 2.5 },
    { share: 0.5, stalled: false, uncertainty: 1.5 },
    { share: 1, stalled: false, uncertainty: 1.5 },
    { share: 1.1, stalled: false, uncertainty: 3 },
    { share: 0.6, stalled: true, uncertainty: 3.5 },
  ])('at flow share $share, stalled $stalled', ({ share, stalled, uncertainty }) => {
    expect(workingPointUncertainty(share, stalled, SOUND_ASSUMPTIONS)).toBe(uncertainty);
  });

  it('joins its parts as squares', () => {
    const fan = { basisStated: true, speed: 0.9354, workingPoint: 2.5, installation: 1.4535, level: 80 };
    // Computed with NumPy: √(2² + 0.9354² + 2.5² + 1²); at 80 dB the floor counts for nothing.
    expect(fanUncertainty(fan, SOUND_ASSUMPTIONS)).toBeCloseTo(3.4821, 3);
    expect(fanUncertainty({ ...fan, installation: 6 }, SOUND_ASSUMPTIONS)).toBeCloseTo(4.4861, 3); // 3 for 1
    expect(fanUncertainty({ ...fan, installation: 0 }, SOUND_ASSUMPTIONS)).toBeCloseTo(3.3354, 3); // 0 for 1
    expect(fanUncertainty({ ...fan, basisStated: false }, SOUND_ASSUMPTIONS)).toBeCloseTo(4.5962, 3); // √13 for 2
  });

  it('becomes that of the floor when only the floor is heard', () => {
    const fan = { basisStated: true, speed: 0, workingPoint: 1.5, installation: 0, level: -60 };
    expect(fanUncertainty(fan, SOUND_ASSUMPTIONS)).toBeCloseTo(3, 4);
  });

  it('leaves panel and way out to absolute claims', () => {
    expect(commonUncertainty(SOUND_ASSUMPTIONS)).toBeCloseTo(Math.hypot(2, 3), 12);
  });
});
