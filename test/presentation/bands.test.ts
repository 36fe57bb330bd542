import { describe, expect, it } from 'vitest';
import type { BuildBands } from '../../src/bands/build-bands.ts';
import type { RowBands } from '../../src/bands/outcome-bands.ts';
import { bandsData, rowBandsData } from '../../src/presentation/bands/band-data.ts';
import { bandTable } from '../../src/presentation/bands/band-table.ts';
import { buildWords, probability, rowWords } from '../../src/presentation/bands/band-words.ts';
import { plain } from '../../src/presentation/paint.ts';
import { rankView } from '../../src/presentation/rank-view.ts';
import { solveView } from '../../src/presentation/solve-view.ts';
import { table } from '../../src/presentation/table.ts';
import { build, ranking } from './sample-outcomes.ts';

const band = (low: number, expected: number, high: number) => ({ low, expected, high });

const bands: BuildBands = {
  level: band(15.2, 20.8, 27.4),
  loudest: band(18, 24.6, 31),
  fanPower: band(0.45, 0.5, 0.56),
  holding: 0.42,
  duties: [
    {
      duty: 'work',
      holding: 0.42,
      level: band(18, 24.6, 31),
      fanPower: band(0.45, 0.5, 0.56),
      through: band(0.008, 0.0087, 0.0094),
      margins: [{ subject: 'processor', of: 'part', margin: band(Number.NEGATIVE_INFINITY, 2, 8) }],
      parts: [{ part: 'processor', temperature: band(350, 356.15, Number.POSITIVE_INFINITY) }],
      legs: [{ leg: 'intake', flow: band(0.008, 0.0087, 0.0094) }],
    },
  ],
};

const unlike: RowBands = { bands, first: { probability: 0.95, verdict: 'clearly-quieter' } };
const like: RowBands = { bands, first: { probability: 0.55, verdict: 'no-real-difference' } };

// Outcomes made up for these tests; the words are those the README tells.
describe('the bands of a ranking', () => {
  const rows = [{ bands }, like, like, like, unlike];
  const text = (width: number, confidence?: number): string =>
    rankView(ranking(), { width, paint: plain, tie: 1, bands: { rows, probable: 0.7, confidence } });

  it.each([60, 80, 100])('stand under the numbers of each row on %i columns', (width) => {
    const lines = text(width).split('\n');
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(width);
    expect(lines.filter((line) => line.includes('15 to 27 dB(A), limits hold: 42 %'))).toHaveLength(5);
  });

  it('mark the rows that cannot be told from the first', () => {
    const marks = text(100)
      .split('\n')
      .flatMap((line) => /^ *(\d[a-z ]?[~ ]) {2}/.exec(line)?.[1]?.trim() ?? []);
    expect(marks.map((mark) => mark.endsWith('~')).slice(0, 5)).toEqual([false, true, true, true, false]);
    expect(text(200)).toContain('~ no real difference from row 1: less than 70 % sure which is quieter');
  });

  it('say what the quietest speeds mean, unless more was asked for', () => {
    expect(text(300)).toContain('about one half, or less if several do: --confidence 90 asks for more');
    expect(text(300, 0.9)).not.toContain('--confidence');
    expect(text(300, 0.9)).toContain('quietest adequate builds with 90 % probability');
  });

  it('are none where there are none', () => {
    expect(rowWords(null)).toBe('');
    expect(rowBandsData(null)).toEqual({ bands: null, firstQuieter: null, aboveQuieter: null });
  });
});

describe('the bands of a build', () => {
  it('are a table', () => {
    expect(table(bandTable(bands.duties[0]), { paint: plain })).toEqual([
      'Nine times in ten            From  Expected    To',
      'level                 dB(A)  18.0      24.6  31.0',
      'margin of processor   K       –         2.0   8.0',
      'processor             °C     76.9      83.0   –',
      'flow through the box  m³/h   28.8      31.3  33.8',
      'power of the fans     W       0.5       0.5   0.6',
    ]);
  });

  it('are sentences', () => {
    expect(buildWords(bands)).toEqual([
      'Nine times in ten the true level lies between 15 and 27 dB(A).',
      'Every limit holds with a probability of 42 %.',
    ]);
    expect(solveView(build(), { paint: plain, bands })).toContain('between 15 and 27 dB(A)');
  });

  it('never make certain what is not', () => {
    expect(probability(0.9995)).toBe('more than 99 %');
    expect(probability(0.0005)).toBe('less than 1 %');
    expect([probability(1), probability(0.5)]).toEqual(['100 %', '50 %']);
    expect(probability(0)).toBe('less than 1 %');
  });

  it('are data with the unit in each key, and null where they have no end', () => {
    expect(bandsData(null)).toBeNull();
    expect(bandsData(bands)).toMatchObject({
      level_dBA: { low: 15.2, expected: 20.8, high: 27.4 },
      holding: 0.42,
      duties: [
        {
          throughFlow_m3_s: { low: 0.008 },
          limits: [{ part: 'processor', of: 'part', margin_K: { low: null, expected: 2, high: 8 } }],
          parts: [{ part: 'processor', temperature_K: { high: null } }],
        },
      ],
    });
  });
});
