import { describe, expect, it } from 'vitest';
import type { DecibelCost, SoundOutcome } from '../../src/enclosure/sound-outcome.ts';
import { plain } from '../../src/presentation/paint.ts';
import { solveView } from '../../src/presentation/solve-view.ts';
import { soundSentences } from '../../src/presentation/sound-sentences.ts';
import { beatSentences, toneTable } from '../../src/presentation/tones.ts';
import { beatRemedies } from '../../src/sound/beating.ts';
import { SOUND_ASSUMPTIONS } from '../../src/sound/sound-assumptions.ts';
import { build, duty, heard, sound } from './sample-outcomes.ts';

const told = (level: number, changes: Partial<SoundOutcome> = {}): string =>
  soundSentences(duty('work', 1, { level, sound: sound(level, changes) })).join('\n');

describe('what a level means', () => {
  // Model assumption, no source: the bands of levels.
  it.each([
    [12, 'below the threshold of hearing'],
    [17, 'very quiet'],
    [22, 'is quiet'],
    [27, 'noticeable in a quiet room'],
    [33, 'plain to notice in a quiet room'],
    [40, 'loud for a living room'],
  ])('%d dB is told as %s', (level, words) => {
    expect(told(level)).toContain(words);
  });

  it('says nothing of being heard or masked unless a background is stated', () => {
    for (let level = 0; level <= 60; level += 0.5) {
      expect(told(level)).not.toMatch(/audible|masked|background|border/);
    }
    const against = { background: 25, together: 25.4, audibility: 'masked' } as const;
    expect(told(15, { against })).toContain('Against the stated background of 25.0 dB(A): masked');
    expect(told(24, { against: { ...against, audibility: 'audible' } })).toMatch(
      /: audible.*; 25\.4 together/,
    );
    expect(told(17, { against: { ...against, audibility: 'borderline' } })).toContain(
      'at the border of being heard',
    );
  });

  it('tells the WHO value for bedrooms from 30 dB on', () => {
    // Published: WHO, Guidelines for Community Noise, 1999.
    expect(told(29.9)).not.toContain('WHO');
    expect(told(30)).toContain('WHO value for bedrooms at night, 30.0 dB(A)');
  });

  it('calls figures of a spectrum estimates where the spectrum is assumed', () => {
    const { spectrum } = sound(25);
    if (!spectrum) throw new Error('the sample has a spectrum');
    expect(told(25)).toContain('estimates');
    expect(told(25, { spectrum: { ...spectrum, assumedShare: 0.02 } })).not.toContain('estimates');
  });

  it('tells what the room adds', () => {
    const room = { stand: 'plane', absorption: 10, level: 30.1, rise: 5.1 } as const;
    expect(told(25, { room })).toContain(
      'The box on a surface in a room of 10.0 m² absorption: 30.1 dB(A), 5.1 dB more than in the free field.',
    );
    const open = { stand: 'corner', absorption: Number.POSITIVE_INFINITY, level: 34, rise: 9 } as const;
    expect(told(25, { room: open })).toContain('The box in a corner: 34.0 dB(A)');
  });

  it('tells where a decibel cannot be had', () => {
    const cost = (changes: Partial<DecibelCost>) =>
      told(25, { decibelCost: { heldByBands: false, ...changes } });
    expect(cost({ louder: 0.8 })).toContain('1 dB less is beyond the hold floors, 1 dB more');
    expect(cost({ quieter: 0.8 })).toContain('1 dB more is beyond full speed.');
    expect(cost({ quieter: -0.8, louder: -0.3 })).toContain(
      '1 dB less would gain 0.8 K of the margin, 1 dB more would cost 0.3 K',
    );
    expect(cost({ louder: 0.8, heldByBands: true })).toContain(
      '1 dB less is beyond the hold floors or a band to avoid',
    );
    expect(cost({ quieter: 0.8, heldByBands: true })).toContain(
      '1 dB more is beyond full speed or a band to avoid',
    );
  });
});

describe('tones in words', () => {
  const tones = (changes: Partial<SoundOutcome['tones']>) => {
    const base = sound(25);
    return duty('work', 1, { sound: { ...base, tones: { ...base.tones, ...changes } } });
  };
  const { locked } = SOUND_ASSUMPTIONS.toneRisk;

  it('give numbers of revolutions against a beat inside a bank', () => {
    const beat = {
      places: ['exit', 'exit'],
      nominal: 0,
      expected: { from: 6.3, to: 21 },
      peak: 6.0206,
      ...beatRemedies(210, 7, 30, locked),
    } as const;
    // Computed with Python: 60·0.3/7 = 2.571; critical band at 210 Hz 103.165 Hz (ECMA-418-1), 60·103.165/7 = 884.27.
    expect(beatSentences(tones({ beats: [beat] }))).toEqual([
      'The fans of exit may beat, 6.3 to 21.0 Hz as speeds of real fans differ, up to 6.0 dB over the louder tone. ' +
        'Hold them within 2.6 rpm of each other, run one at least 890 rpm apart, or give one 3 blades or fewer, ' +
        'or 11 blades or more.',
    ]);
  });

  it('give a band to keep out of against a beat of two banks', () => {
    const beat = {
      places: ['push', 'exit'],
      nominal: 7,
      expected: { from: 0, to: 28 },
      peak: 4.64,
      swing: 15.34,
      ...beatRemedies(210, 7, 29, locked),
    } as const;
    expect(beatSentences(tones({ beats: [beat] }))).toEqual([
      'push and exit may beat, 0.0 to 28.0 Hz as speeds of real fans differ, up to 4.6 dB over the louder tone, ' +
        '7.0 Hz at these speeds. Hold exit within 2.6 rpm of 1800 rpm, keep it out of 910 to 2690 rpm, ' +
        'or give it a fan with 3 blades or fewer, or 11 blades or more.',
    ]);
  });

  it('do not ask for a fan with one blade', () => {
    const beat = {
      places: ['exit', 'exit'],
      nominal: 0,
      expected: { from: 3, to: 10 },
      peak: 6,
      ...beatRemedies(105, 7, 15, locked),
    } as const;
    expect(beatSentences(tones({ beats: [beat] }))[0]).toMatch(/or give one 14 blades or more\.$/);
  });

  it('are a table with a mark for a high risk', () => {
    const columns = toneTable(tones({ banks: [{ place: 'push', bladePass: 210, risk: 'high', points: 3 }] }));
    expect(columns.map(({ cells }) => cells[0])).toEqual([
      'push',
      '210',
      '3',
      'high: may be felt as 3 dB more',
    ]);
  });
});

describe('a solved build', () => {
  const view = (changes: Parameters<typeof duty>[2]) =>
    solveView(build({ duties: [duty('work', 1, changes)] }), { paint: plain });

  it('tells distances of sources only where they differ', () => {
    expect(view({})).toMatch(/^push +\d/m);
    const sources = [
      { source: 'push', kind: 'fans', ...heard, level: 24, share: 0.8 },
      { source: 'rear', kind: 'opening', distance: 1.5, directivity: 0, level: 18, share: 0.2 },
    ] as const;
    expect(view({ sources })).toMatch(/^push, 1\.00 m +24\.0/m);
    expect(view({ sources })).toMatch(/^rear \(opening\), 1\.50 m +18\.0/m);
  });

  it('warns of holes that may whistle', () => {
    const whistles = [{ place: 'rear', velocity: 8.44 }];
    expect(view({ sound: sound(25, { whistles }) })).toContain('rear may whistle: 8.4 m/s in its holes.');
  });
});
