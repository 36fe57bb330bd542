import { describe, expect, it } from 'vitest';
import { SOUND_ASSUMPTIONS } from '../../src/sound/sound-assumptions.ts';
import { type ToneCircumstances, toneRisk } from '../../src/sound/tone-risk.ts';

const quiet: ToneCircumstances = {
  bladePass: 100,
  beats: [],
  flowShare: 0.6,
  closeSeries: false,
  strutsMatchBlades: false,
};

// Model assumption, no source: one point a circumstance, medium from 2, high from 3.
describe('tone risk', () => {
  it.each([
    { change: {}, points: 0 },
    { change: { bladePass: 150 }, points: 1 },
    { change: { bladePass: 2000 }, points: 1 },
    { change: { bladePass: 2001 }, points: 0 },
    { change: { inletGap: 0.25 }, points: 1 },
    { change: { inletGap: 0.26 }, points: 0 },
    { change: { beats: [0.4, 21] }, points: 0 },
    { change: { beats: [0.4, 20, 7] }, points: 1 },
    { change: { flowShare: 0.39 }, points: 1 },
    { change: { flowShare: 0.4 }, points: 0 },
    { change: { closeSeries: true }, points: 1 },
    { change: { strutsMatchBlades: true }, points: 1 },
  ])('with $change gives $points', ({ change, points }) => {
    expect(toneRisk({ ...quiet, ...change }, SOUND_ASSUMPTIONS)).toEqual({ risk: 'low', points });
  });

  it('counts up to high', () => {
    const medium = { ...quiet, bladePass: 210, flowShare: 0.3 };
    expect(toneRisk(medium, SOUND_ASSUMPTIONS)).toEqual({ risk: 'medium', points: 2 });
    expect(toneRisk({ ...medium, beats: [4] }, SOUND_ASSUMPTIONS)).toEqual({ risk: 'high', points: 3 });
    const all = { ...medium, beats: [4], inletGap: 0, closeSeries: true, strutsMatchBlades: true };
    expect(toneRisk(all, SOUND_ASSUMPTIONS)).toEqual({ risk: 'high', points: 6 });
  });

  it('does not guess an unknown blade number', () => {
    const { bladePass: _, ...unknown } = quiet;
    expect(toneRisk(unknown, SOUND_ASSUMPTIONS).points).toBe(0);
  });
});
