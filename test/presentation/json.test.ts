import { describe, expect, it } from 'vitest';
import { ASSUMPTIONS } from '../../src/enclosure/assumptions.ts';
import type { Enclosure } from '../../src/enclosure/enclosure.ts';
import { documentOf, toText } from '../../src/presentation/document.ts';
import { checkDocument, problemsDocument, rankDocument, solveDocument } from '../../src/presentation/json.ts';
import { build, duty, miss, ranking } from './sample-outcomes.ts';

const meta = { version: '1.2.3', command: 'rank' };

/** All keys that hold a number, anywhere in a document. */
function numberKeys(value: unknown, key = ''): readonly string[] {
  if (typeof value === 'number') return [key];
  if (Array.isArray(value)) return value.flatMap((entry) => numberKeys(entry, key));
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([name, entry]) => numberKeys(entry, name));
}

describe('a document', () => {
  it('says what it is before the result', () => {
    expect(
      toText(documentOf({ a: 1 }, { ...meta, warnings: [{ code: 'odd', message: 'An odd thing.' }] })),
    ).toBe(
      `{
  "formatVersion": 1,
  "tool": "hushwright",
  "version": "1.2.3",
  "command": "rank",
  "warnings": [
    {
      "code": "odd",
      "message": "An odd thing."
    }
  ],
  "result": {
    "a": 1
  }
}
`,
    );
  });

  it('rounds to seven digits, but keeps whole numbers exact', () => {
    const numbers = [1 / 3, 123_456.789_01, 1.2e-7 / 7, 123_456_789, -0, 0.1 + 0.2];
    expect(documentOf(numbers, meta).result).toEqual([
      0.333_333_3, 123_456.8, 1.714_286e-8, 123_456_789, 0, 0.3,
    ]);
  });

  it('has null for what is no number, and says where and why', () => {
    const result = {
      'a/b': [Number.NaN, { level_dBA: Number.NEGATIVE_INFINITY }],
      c: Number.POSITIVE_INFINITY,
    };
    const document = documentOf(result, meta);
    expect(document.result).toEqual({ 'a/b': [null, { level_dBA: null }], c: null });
    expect(document.warnings).toEqual([
      { code: 'not-finite', message: 'null stands for a value that does not exist', at: '/result/a~1b/0' },
      { code: 'not-finite', message: 'null stands for minus infinity', at: '/result/a~1b/1/level_dBA' },
      { code: 'not-finite', message: 'null stands for plus infinity', at: '/result/c' },
    ]);
  });
});

describe('a solved build as a document', () => {
  it('holds every number in SI, with the unit in its key', () => {
    const keys = new Set(numberKeys(solveDocument(build(), meta).result));
    const bare = ['options', 'fanCount', 'price', 'share', 'count', 'ratio', 'flowShare', 'loopGain'];
    const kelvins = [
      'reserve_K',
      'room_K',
      'exhaustTemperature_K',
      'limit_K',
      'found_K',
      'margin_K',
      'temperature_K',
    ];
    const watts = ['fanPower_W', 'heatCarried_W', 'power_W'];
    const pressures = ['pressureRise_Pa', 'pressureDifference_Pa', 'pressure_Pa'];
    const flows = ['throughFlow_kg_s', 'massFlow_kg_s', 'flow_m3_s', 'speed_1_s'];
    const budgets = ['amount_Pa', 'amount_K', 'amount_W'];
    const lost = ['dead', 'missing', 'lostFlow_m3_s'];
    const sounds = ['level_dBA', 'loudest_dBA', 'level_dB', 'distance_m', 'directivity_dB', 'depth_m'];
    const tones = ['centre_Hz', 'governing_Hz', 'bladePass_Hz', 'points', 'noiseRating', 'assumedShare'];
    const loudness = ['loudness_sone', 'loudnessLevel_phon', 'quieter_K', 'louder_K'];
    const all = [
      ...bare,
      ...kelvins,
      ...watts,
      ...pressures,
      ...flows,
      ...budgets,
      ...lost,
      ...sounds,
      ...tones,
      ...loudness,
    ];
    expect([...keys].sort()).toEqual(all.sort());
  });

  it('has the same bytes for the same answer, in whatever order its facts were put together', () => {
    const outcome = build();
    const turned = Object.fromEntries(Object.entries(outcome).reverse()) as unknown as typeof outcome;
    expect(toText(solveDocument(turned, meta))).toBe(toText(solveDocument(outcome, meta)));
  });

  it('holds one duty like this', () => {
    const { result } = solveDocument(build({ duties: [duty('work', 1)] }), meta);
    const tightest = { part: 'processor', of: 'part', limit_K: 358.15, found_K: 347.103, margin_K: 11.047 };
    expect(result).toMatchObject({
      outcome: { duties: [{ duty: 'work', room_K: 299.15, level_dBA: 24.64, tightest }] },
    });
  });

  it('has null for a price nobody knows and for no limit', () => {
    const { price, ...free } = build().build;
    const { tightest, ...still } = duty('work', 1);
    const text = toText(solveDocument(build({ build: free, duties: [still] }), meta));
    expect([price, tightest?.of]).toEqual([38, 'part']);
    expect(text).toContain('"price": null');
    expect(text).toContain('"tightest": null');
  });
});

describe('a ranking as a document', () => {
  it('holds rows, counts and the proof', () => {
    const { result } = rankDocument(ranking(), meta);
    expect(result).toMatchObject({
      title: 'Film scanner, desk side, 7 litre',
      complete: true,
      count: { space: 14_860, solved: 212, open: 0, gap_dB: 0.01, passes: 51_234 },
      rows: [
        { rank: 1, tie: 1 },
        { rank: 2, tie: 1 },
        { rank: 3, tie: 1 },
        { rank: 4, tie: 2 },
        { rank: 5, tie: 3 },
      ],
      nearestMiss: null,
    });
  });

  it('holds the nearest miss', () => {
    const { result } = rankDocument(ranking({ rows: [], nearestMiss: miss() }), meta);
    expect(result).toMatchObject({
      rows: [],
      nearestMiss: { duty: 'hot day', part: 'processor', over_K: 2.953 },
    });
  });

  it('never holds what JSON cannot', () => {
    const silent = build({ level: Number.NEGATIVE_INFINITY, reserve: Number.POSITIVE_INFINITY });
    const document = rankDocument(ranking({ rows: [{ rank: 1, tie: 1, outcome: silent }] }), meta);
    expect(toText(document)).not.toMatch(/NaN|Infinity/);
    expect(document.warnings).toMatchObject([
      { at: '/result/rows/0/outcome/level_dBA' },
      { at: '/result/rows/0/outcome/reserve_K' },
    ]);
  });
});

describe('a checked scenario as a document', () => {
  const enclosure: Enclosure = {
    title: 'Box',
    site: { pressure: 101_325, relativeHumidity: 0.5 },
    listener: { distance: 1 },
    chambers: ['outside', 'core'],
    places: [{ kind: 'bank', id: 'push', options: [null], depth: 0.025, inletGap: 1, outletGap: 1 }],
    legs: [{ id: 'intake', from: 0, to: 1, through: [0], recirculation: 0 }],
    parts: [
      {
        id: 'board',
        power: 22,
        slope: 0,
        powerAt: 298.15,
        seat: { kind: 'chamber', chamber: 1 },
        resistance: 0,
        limits: [{ of: 'air', temperature: 323.15 }],
      },
    ],
    duties: [{ id: 'work', share: 1, heat: [1], room: 299.15 }],
    builds: [{ id: 'as-built', options: [0] }],
    margin: 2,
    assumptions: ASSUMPTIONS,
  };

  it('says what the scenario holds', () => {
    expect(checkDocument(enclosure, 1, { ...meta, command: 'check' }).result).toEqual({
      title: 'Box',
      space: 1,
      margin_K: 2,
      chambers: ['outside', 'core'],
      places: [{ place: 'push', kind: 'bank', options: 1 }],
      legs: [{ leg: 'intake', from: 'outside', to: 'core', through: ['push'] }],
      parts: [{ part: 'board', power_W: 22, limits: [{ of: 'air', limit_K: 323.15 }] }],
      duties: [{ duty: 'work', share: 1, room_K: 299.15 }],
      builds: [{ build: 'as-built', options: [0] }],
      problems: [],
    });
  });
});

describe('problems as a document', () => {
  it('hold the same facts as the text', () => {
    const problem = {
      code: 'misspelt-key' as const,
      file: 'box.yaml',
      line: 3,
      column: 5,
      path: ['heat', 0, 'powr'],
      message: 'there is no such key',
      suggestion: 'power',
    };
    expect(problemsDocument([problem], meta).result).toEqual({
      problems: [{ ...problem, found: null, expected: null, sourceLine: null }],
    });
  });
});
