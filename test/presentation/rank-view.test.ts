import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { plain } from '../../src/presentation/paint.ts';
import { rankView } from '../../src/presentation/rank-view.ts';
import type { Ranking } from '../../src/search/ranking.ts';
import { bank, build, duty, miss, ranking } from './sample-outcomes.ts';

const draw = (answer: Ranking, width?: number): string => rankView(answer, { width, paint: plain, tie: 1 });

describe('a ranking', () => {
  it('fits a terminal of 80 columns', () => {
    expect(draw(ranking(), 80)).toBe(
      `Film scanner, desk side, 7 litre: quietest adequate builds

 #   Mean    Max  Margin  Flow  Power   Price  Place  Fan, choice   Speed
    dB(A)  dB(A)       K  m³/h      W                                   %   rpm
1a   20.8   24.6     2.0  31.2    0.5   38.00  push   p92-15-b x1      62  1490
    tightest: processor in hot day             exit   p80-25-c x2      45  1070
    push on stack, exit exhausting             rear   hole 5 mm
2a   20.6   26.1     1.2  31.2    0.5   12.50  exit   d92-38-e x1      88  2110
    tightest: processor in hot day             rear   hole 5 mm
    exit exhausting
3a   21.2   24.6     1.0  31.2    0.5   38.00  push   p92-15-b x1      51  1220
    tightest: processor in hot day             pull   p92-15-b x1*     51  1220
    push-pull on stack, exit exhausting        exit   p80-25-c x2      33   790
                                               rear   hole 6 mm
4    23.1   26.1     1.2  31.2    0.5   12.50  exit   d92-38-e x1      88  2110
    tightest: processor in hot day             rear   hole 5 mm
    exit exhausting
5    24.5   24.6     1.0  31.2    0.5  112.40  push   p92-15-b x1      51  1220
    tightest: processor in hot day             pull   p92-15-b x1*     51  1220
    push-pull on stack, exit exhausting        exit   p80-25-c x2      33   790
                                               rear   hole 6 mm
(left out to fit 80 columns: in hand)

Rows with the same letter are within 1 dB: a tie, ordered by the margin in hand
at full speed, then fewer fans, then price.
dB(A) at the listener: mean over time, and the loudest duty. Flow and speeds: in
work. Margin: the least of all duties.
* pressure curve made up from the two figures on the box.
14 860 builds in the space: 212 solved, 14 648 ruled out (13 900 too little air
power for so little noise, 748 too warm at full speed).
No build left out is quieter than the noisiest row by more than 0.01 dB.
`,
    );
  });

  it('shows five builds on 24 lines', () => {
    const lines = draw(ranking(), 80).split('\n');
    const end = lines.indexOf('', 2);
    expect(end).toBeLessThanOrEqual(24);
    expect(lines.slice(0, end).filter((line) => /^ *\d+[a-z ]? /.test(line))).toHaveLength(5);
  });

  it('has more columns where there is room', () => {
    const [, , head = '', , first = '', second = ''] = draw(ranking(), 120).split('\n');
    expect(head).toBe(
      ' #   Mean    Max  Margin  Tightest              Flow  In hand  Power   Price  Place  Fan, choice   Speed',
    );
    expect(first).toBe(
      '1a   20.8   24.6     2.0  processor in hot day  31.2      9.3    0.5   38.00  push   p92-15-b x1      62  1490',
    );
    expect(second).toBe(
      '    push on stack, exit exhausting                                            exit   p80-25-c x2      45  1070',
    );
  });

  it('leaves out nothing where lines may be of any length', () => {
    const [, , head = '', , first = ''] = draw(ranking()).split('\n');
    expect(head).toContain('Arrangement');
    expect(first).toContain('push on stack, exit exhausting');
  });

  it('says which columns a narrow terminal has no room for', () => {
    expect(draw(ranking(), 60)).toContain('(left out to fit 60 columns: in hand, power, price, flow)');
  });

  it('names the duty of each row where the loudest is not the same', () => {
    const quiet = build({ duties: [duty('idle', 0.7, { level: 30 }), duty('work', 0.3)] });
    const rows = [...ranking().rows.slice(0, 1), { rank: 2, tie: 2, outcome: quiet }];
    const text = draw(ranking({ rows }), 100);
    expect(text).toMatch(/Duty +Place/);
    expect(text).toMatch(/^1 .* work +push/m);
    expect(text).toMatch(/^2 .* idle +push/m);
    expect(text).toContain('Flow and speeds: in the duty named.');
  });

  it('states a choice once that is the same in all rows', () => {
    const rows = ranking().rows.slice(0, 2);
    expect(draw(ranking({ rows }), 80)).toContain('The same in every row: pull empty, rear hole 5 mm.');
  });

  it('does not hide a stalled fan', () => {
    const stalled = build({
      duties: [duty('work', 1, { banks: [bank('exit', 'd92', 0.9, { stalled: true })] })],
    });
    const text = draw(ranking({ rows: [{ rank: 1, tie: 1, outcome: stalled }] }), 80);
    expect(text).toContain('d92 x1!');
    expect(text).toContain('! runs stalled.');
  });
});

describe('a ranking without an adequate build', () => {
  it('says that miss and change go by the limits alone where more is asked', () => {
    const none = ranking({ rows: [], nearestMiss: miss() });
    const words = 'Both go by the limits alone';
    expect(rankView(none, { paint: plain, tie: 1 })).not.toContain(words);
    expect(rankView(none, { paint: plain, tie: 1, asked: ['price up to 5.00'] })).toContain(words);
    const capped = { ...none, by: { goal: 'mean', cap: 20 } } as const;
    expect(rankView(capped, { paint: plain, tie: 1 })).toContain(words);
  });

  it('tells the nearest miss first', () => {
    expect(draw(ranking({ rows: [], nearestMiss: miss() }), 80)).toBe(
      `Film scanner, desk side, 7 litre
No build in the space is adequate.
Nearest miss: in hot day, processor is 3.0 K over its limit of 85.0 °C (the
asked margin of 2.0 K included).
The build: push on stack, exit exhausting.

#   Mean    Max  Margin  Flow  Power  Price  Place  Fan, choice  Speed
   dB(A)  dB(A)       K  m³/h      W                                 %   rpm
-   20.8   24.6    -1.0  31.2    0.5     38  push   p92-15-b x1     62  1490
   tightest: processor in hot day            exit   p80-25-c x2     45  1070
   push on stack, exit exhausting            pull   empty
                                             rear   hole 5 mm
(left out to fit 80 columns: in hand)

dB(A) at the listener: mean over time, and the loudest duty. Flow and speeds: in
hot day. Margin: the least of all duties.
14 860 builds in the space: 212 solved, 14 648 ruled out (13 900 too little air
power for so little noise, 748 too warm at full speed).
`,
    );
  });

  it('says it of the air where the air is too warm', () => {
    const text = draw(
      ranking({ rows: [], nearestMiss: { ...miss(), of: 'air', part: 'board', over: 0.44 } }),
      80,
    );
    expect(text).toContain('in hot day, air at board is 0.4 K over its limit.');
  });
});

describe('a search that was stopped', () => {
  const count = { ...ranking().count, open: 3000 };

  it('gives the gap that is proved so far', () => {
    const text = draw(ranking({ complete: false, count: { ...count, gap: 3.14 } }));
    expect(text).toContain('748 too warm at full speed), 3000 not looked at.\n');
    expect(text).toContain(
      'Stopped before the end: this is the best so far. No build left out is quieter than the noisiest row by more than 3.2 dB.',
    );
  });

  it('claims nothing where nothing is proved', () => {
    const text = draw(ranking({ complete: false, count: { ...count, gap: Number.POSITIVE_INFINITY } }));
    expect(text).toContain('Nothing is proved about the builds not looked at.');
  });

  it('does not call the space empty', () => {
    const text = draw(ranking({ rows: [], complete: false, count }));
    expect(text).toContain('No adequate build found so far.');
    expect(text).toContain('an adequate build may be among those not looked at');
  });
});

/** A ranking in which people gave other names. */
function renamed(names: readonly string[]): Ranking {
  const [place = '', fan = '', part = '', words = ''] = names;
  const original = ranking();
  return {
    ...original,
    title: words,
    rows: original.rows.map((row) => ({
      ...row,
      outcome: {
        ...row.outcome,
        build: { ...row.outcome.build, arrangement: words },
        duties: row.outcome.duties.map((entry) => ({
          ...entry,
          banks: entry.banks.map((there) => ({ ...there, place, fan })),
          ...(entry.tightest ? { tightest: { ...entry.tightest, part } } : {}),
        })),
      },
    })),
  };
}

describe('names of any kind', () => {
  it('never make a line wider than the terminal', () => {
    const name = fc.stringMatching(/^[a-z散熱風扇][a-z0-9 散熱風扇-]{0,27}$/);
    const names = fc.array(name, { minLength: 4, maxLength: 4 });
    fc.assert(
      fc.property(names, fc.integer({ min: 60, max: 160 }), (some, width) => {
        for (const line of draw(renamed(some), width).split('\n')) {
          expect(stringWidth(line)).toBeLessThanOrEqual(width);
        }
      }),
      { seed: 31, numRuns: 60 },
    );
  });

  it('cannot steer the terminal', () => {
    const text = draw(renamed(['a\u001b[2Jb', '\u009b31mfan', 'x\u202ey', 'title\u0007\r\nnext']), 80);
    expect(text).not.toMatch(/[^\P{Cc}\n]|\p{Cf}/u);
    expect(text).toContain('a\uFFFD[2Jb');
  });
});

it('colour changes no character', () => {
  const mark = (text: string): string => `\u001b[1m${text}\u001b[22m`;
  const paint = { good: mark, bad: mark, faint: mark, strong: mark };
  const text = rankView(ranking(), { width: 80, paint, tie: 1 });
  expect(text).toContain('\u001b[1m');
  expect(text.replaceAll('\u001b[1m', '').replaceAll('\u001b[22m', '')).toBe(draw(ranking(), 80));
});
