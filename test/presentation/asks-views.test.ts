import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { frontView } from '../../src/presentation/asks/front-view.ts';
import { whyData } from '../../src/presentation/asks/why-data.ts';
import { whyView } from '../../src/presentation/asks/why-view.ts';
import { checkView } from '../../src/presentation/check-view.ts';
import { plain } from '../../src/presentation/paint.ts';
import { rankView } from '../../src/presentation/rank-view.ts';
import { ASK_REASONS } from '../../src/search/asks/reasons.ts';
import type { Front } from '../../src/search/front/front.ts';
import type { WhyNot } from '../../src/search/why/why-not.ts';
import { bare, scenario } from '../reading/good-scenario.ts';
import { bank, build, duty, miss, ranking } from './sample-outcomes.ts';

const front = (changes: Partial<Front> = {}): Front => ({
  title: 'Film scanner, desk side, 7 litre',
  against: 'price',
  stopped: false,
  rows: ranking().rows.map(({ outcome }) => ({
    outcome,
    level: outcome.level,
    value: outcome.build.price ?? 0,
  })),
  complete: true,
  by: { goal: 'mean' },
  gap: 0.01,
  step: 2,
  space: 14_860,
  searches: 6,
  ...changes,
});

const more = { level: 1.23, price: -12.5, fanPower: 0.4, depth: 0.01, reserve: -2.2 };
const why = (changes: Partial<WhyNot> = {}): WhyNot => ({
  name: 'as-built',
  build: build(),
  broken: [],
  level: 22.03,
  more,
  ...changes,
});

/** The whole text with single spaces: where lines break does not matter here. */
const flat = (text: string): string => text.replace(/\s+/g, ' ').trim();

// Outcomes made up for these tests; the words are those the README tells.
describe('why a build is not the first, in words', () => {
  it('tells the level and all differences of one that is adequate', () => {
    expect(flat(whyView(why(), 0, {}))).toContain(
      '"as-built" is not in the list: it is adequate, at 22.0 dB(A). Against row 1 it is 1.2 dB louder, 12.50 cheaper, 0.4 W more for its fans, 10 mm deeper and 2.2 K less in hand at full speed.',
    );
  });

  it('tells each limit that is broken, and by how much', () => {
    const { level: _, more: __, ...rest } = why({ build: miss().outcome });
    const tightest = miss().outcome.duties.find(({ adequate }) => !adequate)?.tightest;
    const over = (2 - (tightest?.margin ?? 0)).toFixed(1);
    const text = flat(whyView(rest, 2, {}));
    expect(text).toContain('"as-built" is not in the list: it does not hold its limits.');
    expect(text).toContain(
      `In hot day, processor is ${over} K over its limit, the asked margin included, at the coolest speeds met.`,
    );
  });

  it('has a sentence for whatever may be asked', () => {
    const broken = ASK_REASONS.map((reason) => ({ reason, found: 3, most: 2, at: 'exit' }));
    const text = flat(whyView(why({ broken }), 0, {}));
    expect(text).toContain('it is adequate, at 22.0 dB(A), but not all is as asked.');
    expect(text).toContain('Its fans cost 3, and 2 is the most that is asked for.');
    expect(text).toContain('The header exit would have to give 3.00 A, and it gives 2.00 A.');
    expect(text).toContain(
      'With a fan of exit dead and all others at full speed, a limit is exceeded by 3.0 K.',
    );
  });

  it('has no figure beyond all use for other programs', () => {
    // No source: what the README promises, no more than 700 K.
    const found = (over: number) => {
      const broken = [{ reason: 'too warm with a dead fan', found: over, most: 0, at: 'exit' }] as const;
      return whyData(why({ broken }));
    };
    expect(found(3)).toMatchObject({ broken: [{ found: 3 }] });
    expect(found(388_491.9)).toMatchObject({ broken: [{ found: null }] });
  });

  it('says of the first that it is', () => {
    expect(whyView(why({ row: 1 }), 0, {})).toMatch(/^"as-built" is the first of the list\./);
  });
});

describe('what is asked, where a scenario is checked', () => {
  it('is told with the headers', () => {
    const text = checkView(
      scenario(
        `${bare}ask: { price: 40, fan-power: 6 W, models: 2, depth: { exhaust: 30 mm }, level: 30 dB(A), dead-fan: survived, stall: never, back-flow: never, tone-points: 1 }
headers: { cooler: { banks: [push, pull], current: 0.8 A, voltage: 12 V } }
`,
      ).enclosure,
      1,
      { file: 'a.yaml', paint: plain },
    );
    expect(text).toContain('  headers   cooler (push, pull, up to 0.80 A at 12.0 V)\n');
    expect(text).toContain(
      '  asked     price up to 40, fans up to 6.0 W at full speed, models of fans up to 2, fans up to 30 mm deep in exhaust, level up to 30.0 dB(A), any one dead fan survived, no fan stalled, no back-flow through fans, points of tone risk up to 1\n',
    );
  });
});

describe('how noise trades against something else, as text', () => {
  it('tells what it proves, and whether it goes on', () => {
    const text = flat(frontView(front(), { paint: plain }));
    expect(text).toContain('noise against price');
    expect(text).toContain('No build is quieter than a row by more than 0.01 dB and no dearer.');
    expect(text).toContain('No adequate build is cheaper than the last row. 6 searches of 14 860 builds.');
    const cut = flat(frontView(front({ complete: false, against: 'margin' }), { paint: plain }));
    expect(cut).toContain('more margin than the one above it by 2.0 K at least.');
    expect(cut).toContain('It goes on beyond the last row.');
    const stopped = flat(frontView(front({ complete: false, stopped: true }), { paint: plain }));
    expect(stopped).toContain('Stopped before the end: it may go on beyond the last row.');
    const none = flat(frontView(front({ rows: [] }), { paint: plain }));
    expect(none).toContain('No build is adequate and does what is asked.');
  });

  it('shows the depth that the rows are ordered by', () => {
    const text = frontView(front({ against: 'depth' }), { paint: plain });
    expect(text).toMatch(/Depth/);
    expect(text).toMatch(/^1 +50 /m);
  });

  it('never makes a line wider than the terminal', () => {
    fc.assert(
      fc.property(fc.integer({ min: 60, max: 140 }), (width) => {
        const lines = [frontView(front(), { paint: plain, width }), whyView(why(), 0, { width })];
        for (const line of lines.join('').split('\n')) expect(stringWidth(line)).toBeLessThanOrEqual(width);
      }),
      { seed: 7, numRuns: 20 },
    );
  });
});

describe('a ranking by something else than the level', () => {
  const draw = (changes: Parameters<typeof ranking>[0]) =>
    flat(rankView(ranking(changes), { paint: plain, tie: 1 }));

  it('says what it goes by and what it proves', () => {
    const text = draw({ by: { goal: 'price', cap: 25 } });
    expect(text).toContain('cheapest adequate builds up to 25.0 dB(A)');
    expect(text).toContain('No build left out that is adequate is cheaper than the last row.');
    expect(draw({ by: { goal: 'power' } })).toContain('Fans');
    expect(draw({ by: { goal: 'mean', duty: 'work' } })).toContain('quietest adequate builds in work');
  });

  it('does not say that no other build is adequate where some were put out for what is asked', () => {
    const { count } = ranking();
    const asked = { ...count, ruledOut: [{ bound: 'dearer than asked', builds: 3 }] };
    const text = draw({ asked: 9, count: asked });
    expect(text).toContain('No other build is adequate and does what is asked.');
    expect(draw({ rows: [], count: asked })).toContain('is adequate and does what is asked.');
  });

  it('shows which header feeds a bank', () => {
    const banks = [{ ...bank('push', 'p92-15-b', 0.5), header: 'cooler' }];
    const outcome = build({ duties: [duty('work', 1, { banks })] });
    const text = draw({ rows: [{ rank: 1, tie: 1, outcome }] });
    expect(text).toContain('Header');
    expect(text).toContain('cooler');
  });
});
