import { describe, expect, it } from 'vitest';
import { audibility, BEDROOM_GUIDELINE, levelBand } from '../../src/sound/audibility.ts';
import { SOUND_ASSUMPTIONS } from '../../src/sound/sound-assumptions.ts';

// All limits in this file but the WHO value: model assumption, no source.
describe('audibility', () => {
  it.each([
    { level: 20, background: 30, toneRisk: false, code: 'masked' },
    { level: 20.1, background: 30, toneRisk: false, code: 'borderline' },
    { level: 24, background: 30, toneRisk: false, code: 'borderline' },
    { level: 24.1, background: 30, toneRisk: false, code: 'audible' },
    { level: 40, background: 30, toneRisk: false, code: 'audible' },
    { level: 20, background: 30, toneRisk: true, code: 'borderline' },
    { level: 16, background: 30, toneRisk: true, code: 'masked' },
    { level: 13, background: 5, toneRisk: true, code: 'silent' },
    { level: Number.NEGATIVE_INFINITY, background: 25, toneRisk: false, code: 'silent' },
  ])('$level dB in $background dB, tone risk $toneRisk: $code', ({ level, background, toneRisk, code }) => {
    expect(audibility(level, background, toneRisk, SOUND_ASSUMPTIONS)).toBe(code);
  });

  it('is not judged without a background, unless below hearing', () => {
    expect(audibility(14, undefined, false, SOUND_ASSUMPTIONS)).toBe('unjudged');
    expect(audibility(13, undefined, false, SOUND_ASSUMPTIONS)).toBe('silent');
  });

  it('follows margins a user sets', () => {
    const strict = {
      ...SOUND_ASSUMPTIONS,
      audibility: { ...SOUND_ASSUMPTIONS.audibility, masked: 15, borderline: 12 },
    };
    expect(audibility(18, 30, false, strict)).toBe('borderline');
    expect(audibility(20, 30, false, strict)).toBe('audible');
  });
});

describe('level bands', () => {
  it.each([
    [13, 'silent'],
    [13.1, 'very-quiet'],
    [18, 'very-quiet'],
    [23, 'quiet'],
    [23.1, 'noticeable'],
    [28.1, 'clear'],
    [35, 'clear'],
    [35.1, 'loud'],
  ])('%d dB is %s', (level, band) => {
    expect(levelBand(level, SOUND_ASSUMPTIONS)).toBe(band);
  });

  it('knows the WHO value for bedrooms', () => {
    // Published: WHO, Guidelines for Community Noise, 1999, inside bedrooms, 30 dB LAeq over 8 h.
    expect(BEDROOM_GUIDELINE).toBe(30);
  });
});
