import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { hushwright, scenarioText, written } from './program.ts';

const changeForm = z.object({
  lever: z.string(),
  at: z.string(),
  adequate: z.boolean(),
  level_dBA: z.number(),
  quieter_dB: z.number().nullable(),
  cooler_K: z.number().nullable(),
});
const dutyForm = z.object({
  banks: z.array(z.object({ place: z.string(), fan: z.string(), ratio: z.number() })),
  sources: z.array(z.object({ share: z.number() })),
  sound: z.object({
    tones: z.object({
      beats: z.array(z.object({ places: z.array(z.string()), runApart_1_s: z.number() })),
    }),
  }),
});
const solveForm = z.object({
  result: z.object({
    outcome: z.object({ duties: z.array(dutyForm) }),
    next: z.object({ changes: z.array(changeForm), flowShare: z.number() }).nullable(),
    wouldDo: z.object({ change: changeForm.nullable() }).nullable(),
  }),
});
describe('nothing is enough', () => {
  const run = hushwright(['rank', 'scenarios/sealed-drive-dock.yaml']);

  it('names the limit, the nearest miss and the cheapest single change that would meet it, and exits 1', () => {
    expect(run.code).toBe(1);
    expect(run.out).toContain('Nearest miss: in hot day, controller is');
    expect(run.out).toMatch(
      /The cheapest single change that would do: larger field, holes: field of [\d.]+ x [\d.]+ mm/,
    );
  });

  it('and it is true: with that change written into the scenario a build is adequate', () => {
    const field = /larger field, holes: field of ([\d.]+ x [\d.]+ mm)/.exec(run.out)?.[1];
    const text = scenarioText('sealed-drive-dock').replace('perforated: 60 x 20 mm', `perforated: ${field}`);
    expect(hushwright(['rank', written('dock.yaml', text), '--top', '1']).code).toBe(0);
  });
});

describe('too loud', () => {
  const run = hushwright(['solve', 'scenarios/shelf-charger.yaml', '--json']);
  const { next, outcome } = solveForm.parse(JSON.parse(run.out)).result;
  const { duties } = outcome;

  it('tells the gain of each lever, best first, with the degrees it costs or gains', () => {
    const gains = (next?.changes ?? []).map(({ quieter_dB: gain }) => gain ?? Number.NaN);
    expect(gains.length).toBeGreaterThan(5);
    expect(gains).toEqual([...gains].sort((one, other) => other - one));
    const names = new Set(next?.changes.map(({ lever }) => lever));
    for (const name of ['thicker fan', 'larger holes', 'no filter']) expect(names).toContain(name);
  });

  it('tells whose share of the noise it is in percent, and how two equal fans are kept from beating', () => {
    for (const { sources, sound } of duties) {
      expect(sources.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 6);
      const pair = sound.tones.beats.find(({ places }) => places.includes('push') && places.includes('pull'));
      // Both places hold one model at speeds within 3 % of each other.
      expect(pair?.runApart_1_s).toBeGreaterThan(0);
    }
  });
});

describe('too hot', () => {
  const run = hushwright(['solve', 'scenarios/sealed-drive-dock.yaml']);

  it('shows where the degrees are, as a picture and in words, and which lever acts on the largest step', () => {
    expect(run.code).toBe(1);
    const picture = run.out.slice(run.out.indexOf('Part        Temperature'));
    const bars = [...picture.matchAll(/[+-]\d+\.\d {2}( *)(█+)/g)].map(([, space = '', bar = '']) => [
      space.length,
      space.length + bar.length,
    ]);
    // A step begins where the one before it ended.
    expect(bars.slice(0, 3).map(([from]) => from)).toEqual([0, bars[0]?.[1], bars[1]?.[1]]);
    expect(run.out).toMatch(
      /the largest step up to controller is "air to fin base", [\d.]+ K of [\d.]+ K; of these changes "/,
    );
  });

  it('is not told at a speed that somebody sets', () => {
    const fixed = hushwright([
      'solve',
      'scenarios/desk-scanner.yaml',
      '--build',
      'as-built',
      '--speed',
      '80',
      '--json',
    ]);
    expect(solveForm.parse(JSON.parse(fixed.out)).result).toMatchObject({ next: null, wouldDo: null });
  });
});
