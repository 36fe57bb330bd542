import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { wrapped } from '../../src/presentation/prose.ts';

describe('wrapped text', () => {
  it('breaks at spaces, but not within a grouped number', () => {
    expect(wrapped('of 14 860 builds', 8)).toEqual(['of', '14 860', 'builds']);
  });

  it('cuts a word that is longer than a line', () => {
    expect(wrapped('a processor', 5)).toEqual(['a', 'proce', 'ssor']);
  });

  it('counts wide characters twice', () => {
    // East Asian Width W takes two columns: Unicode Standard Annex 11.
    expect(wrapped('散熱風扇', 5)).toEqual(['散熱', '風扇']);
  });

  it('shows characters that would steer the terminal as a mark', () => {
    expect(wrapped('a\u001b[31mb\u202ec\nd')).toEqual(['a\uFFFD[31mb\uFFFDc\uFFFDd']);
  });

  it('stays within the width and loses nothing but spaces', () => {
    const text = fc.array(fc.stringMatching(/^[a-z0-9散熱]{1,12}$/), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(text, fc.integer({ min: 2, max: 40 }), (words, width) => {
        const lines = wrapped(words.join(' '), width);
        expect(lines.join('').replaceAll(' ', '')).toBe(words.join(''));
        for (const line of lines) expect(stringWidth(line)).toBeLessThanOrEqual(width);
      }),
      { seed: 11, numRuns: 200 },
    );
  });
});
