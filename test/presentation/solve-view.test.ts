import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import type { DutyOutcome } from '../../src/enclosure/outcome.ts';
import { curveFromPoints } from '../../src/fan/curve.ts';
import { curveShape } from '../../src/fan/curve-shape.ts';
import { plain } from '../../src/presentation/paint.ts';
import { type SolveViewOptions, solveView } from '../../src/presentation/solve-view.ts';
import { bank, build, duty, heard, leg, part } from './sample-outcomes.ts';

/** Invented points with a dip of stall. */
const dipped = curveFromPoints({ flows: [0, 0.01, 0.015, 0.018, 0.03], pressures: [40, 25, 22, 24, 0] });

const draw = (outcome = build(), options: Partial<SolveViewOptions> = {}): string =>
  solveView(outcome, { width: 80, paint: plain, ...options });

describe('a solved build', () => {
  it('is shown with its speeds first, then its budgets', () => {
    expect(draw(build(), { title: 'Film scanner', duty: 'hot day' })).toBe(`Film scanner
push on stack, exit exhausting
Adequate: every limit holds in every duty.
Noise at the listener: 20.8 dB(A) on average over time, 24.6 dB(A) in the
loudest duty.
3 fans, 0.5 W on average, price 38.
With every bank at full speed, 9.3 K would be in hand.

Place  Holds
push   p92-15-b x1
pull   empty
exit   p80-25-c x2
rear   hole 5 mm

Duty     Time  Noise  Margin  Tightest   Power  Place  Fan          Speed
            %  dB(A)       K                 W                          %   rpm
idle       70   15.2    11.0  processor    1.2  push   p92-15-b x1     27   650
                                                exit   p80-25-c x1     20   480
work       30   24.6    11.0  processor    1.2  push   p92-15-b x1     62  1490
                                                exit   p80-25-c x2     45  1070
hot day     0   31.4     2.0  processor    1.2  push   p92-15-b x1     62  1490
                                                exit   p80-25-c x2     45  1070

hot day: only to be survived, room 35.0 °C, 31.4 dB(A)

Place  Fan          Speed        Flow  Of free  Rise  Power
                        %   rpm  m³/h        %    Pa      W
push   p92-15-b x1     62  1490  31.3       56  14.3    0.7
exit   p80-25-c x2     45  1070  32.8       56  14.3    0.7

Limit on   Found  Limit  Margin
              °C     °C       K
processor   83.0   85.0     2.0  ok

Part           Temperature              °C
processor      room                   35.0  ▏
95.0 W         recirculated exhaust   +1.2  █
loop gain 6 %  fans before the fins   +0.1   ▏
               air to fin base       +31.5   ███████████████
               fin base to part      +15.2                  ████████
               sum: part              83.0  ▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒▒

Chamber         Pressure   Air
                      Pa    °C
outside              0.0  35.0
core                 3.2  46.3
exhaust, mixed            46.3

Leg              Pressure lost              Pa
intake           front                     0.9
outside to core  dust                      1.2
31.2 m³/h        push                    -14.3
                 stack                     9.0
                 sum: outside less core   -3.2
exhaust          exit                     -1.4
core to outside  rear                      4.6
32.8 m³/h        sum: core less outside    3.2

Source of noise  Level  Share
                 dB(A)      %
push              29.4     63
exit              26.9     35
rear (opening)    14.9      2
at the listener   31.4    100

31.4 dB(A) is plain to notice in a quiet room.
At or above the WHO value for bedrooms at night, 30.0 dB(A).
Octaves 63 Hz to 8 kHz: 20 25 23 20 17 12 7 0 dB; NR 17 by the octave at 1000
Hz; 0.51 sone, 31 phon (estimates: the usual spectrum of such sources).
All fans together: 1 dB less would cost 1.2 K of the margin, 1 dB more would
gain 1.1 K.

Tones  Blade pass  Points  Risk
               Hz
push          174       2  medium
exit            –       0  low

Heat                             W
processor                     95.1
board                         22.0
push                           0.8
exit                           0.4
sum: carried out by the air  118.3
`);
  });

  it('is shown in all duties unless one is asked for', () => {
    const text = draw();
    for (const title of [
      'idle: 70 % of the time',
      'work: 30 % of the time',
      'hot day: only to be survived',
    ]) {
      expect(text).toContain(title);
    }
  });

  it('marks each limit in words', () => {
    const over = duty('work', 1, {
      adequate: false,
      parts: [
        part('hot', 300, 330, [{ label: 'air', amount: 30.5 }]),
        part('near', 300, 330, [{ label: 'air', amount: 28.5 }]),
        part('edge', 300, 330, [{ label: 'air', amount: 30.000_000_4 }]),
        part('cool', 300, 330, [{ label: 'air', amount: 10 }]),
      ],
    });
    const outcome = build({ adequate: false, duties: [over], reserve: -0.4 });
    const text = draw(outcome, { margin: 2 });
    expect(text).toMatch(/^hot .* -0\.5 {2}OVER$/m);
    expect(text).toMatch(/^near .* 1\.5 {2}short of the asked margin$/m);
    expect(text).toMatch(/^cool .* 20\.0 {2}ok$/m);
    expect(draw(outcome)).toMatch(/^edge .* 0\.0 {2}ok$/m);
    expect(text).toContain('Not adequate: a limit is broken in work.');
    expect(text).toContain('Even with every bank at full speed, 0.4 K would be missing.');
  });

  it('tells what is out of the ordinary in words', () => {
    const odd = duty('work', 1, {
      banks: [
        bank('push', 'a', 0.6, {
          stalled: true,
          synthesisedCurve: true,
          shape: curveShape(dipped, 0.008, 0.6, 1),
        }),
        bank('exit', 'b', 0.5, { overdriven: true, backflow: true }),
      ],
      legs: [leg('gap', 'outside', 'core', -0.001, [{ label: 'slot', amount: -2 }])],
      remarks: ['The pitch of the fins is outside the range of the law.'],
    });
    const text = draw(build({ duties: [odd] }), { width: undefined });
    expect(text).toContain('push (a) runs stalled: too much resistance for its speed.');
    expect(text).toContain('push (a) on its curve at this speed: 28.8 m³/h');
    expect(text).toContain('● works here');
    expect(text).toContain('push (a) has a pressure curve made up from the two figures on the box.');
    expect(text).toContain(
      'exit (b) is overdriven: more air is driven through it than it delivers by itself.',
    );
    expect(text).toContain('exit (b) lets air flow backwards through it.');
    expect(text).toContain('gap runs in reverse: air flows from core to outside.');
    expect(text).toContain('The pitch of the fins is outside the range of the law.');
  });

  it('can be silent and without fans, limits or a price', () => {
    const still: DutyOutcome = {
      ...duty('off', 1),
      banks: [],
      parts: [],
      sources: [],
      level: Number.NEGATIVE_INFINITY,
      exhaustTemperature: Number.NaN,
    };
    const { tightest, ...without } = still;
    const { price, ...free } = build().build;
    const outcome = build({
      build: { ...free, fanCount: 0, places: [] },
      duties: [without],
      level: Number.NEGATIVE_INFINITY,
      reserve: Number.POSITIVE_INFINITY,
    });
    const text = draw(outcome);
    expect([tightest?.part, price]).toEqual(['processor', 38]);
    expect(text).toContain('Noise at the listener: silent.');
    expect(text).toContain('price unknown');
    expect(text).toMatch(/^at the listener +silent +0$/m);
    expect(text).toMatch(/^exhaust, mixed +–$/m);
    expect(text).not.toMatch(/NaN|Infinity|full speed/);
  });
});

it('every printed budget sums to its printed total', () => {
  const lines = draw(build(), { width: undefined }).split('\n');
  let sum = 0;
  let totals = 0;
  for (const line of lines) {
    // Bars of a waterfall may stand behind the numbers.
    const number = /([+-]?\d+\.\d)(?: +[█▒▏]+)?$/.exec(line)?.[1];
    if (line === '' || number === undefined) sum = 0;
    else if (/sum: /.test(line)) {
      expect(Math.round(sum * 10)).toBe(Math.round(Number(number) * 10));
      sum = 0;
      totals += 1;
    } else sum += Number(number);
  }
  // A part, two legs and the heat, in each of three duties.
  expect(totals).toBe(12);
});

it('no line is wider than the terminal, whatever the names', () => {
  const shape = curveShape(dipped, 0.0165, 0.5, 1);
  const name = fc.stringMatching(/^[a-z散熱風扇][a-z0-9 散熱風扇-]{0,27}$/);
  fc.assert(
    fc.property(
      fc.array(name, { minLength: 5, maxLength: 5 }),
      fc.integer({ min: 60, max: 160 }),
      (some, width) => {
        const [a = '', b = '', c = '', d = '', e = ''] = some;
        const odd = duty(a, 1, {
          banks: [bank(b, c, 0.5, { stalled: true, shape })],
          legs: [leg(d, a, b, -0.01, [{ label: e, amount: -12.3 }])],
          parts: [part(e, 300, 350, [{ label: d, amount: 20 }])],
          chambers: [{ chamber: c, pressure: 0, temperature: 300 }],
          sources: [{ source: b, kind: 'opening', ...heard, level: 20, share: 1 }],
          heat: [{ label: c, amount: 118.26 }],
        });
        const outcome = build({ duties: [odd] });
        const text = draw(
          { ...outcome, build: { ...outcome.build, arrangement: `${d}, ${e}` } },
          { width, title: a },
        );
        for (const line of text.split('\n')) expect(stringWidth(line)).toBeLessThanOrEqual(width);
      },
    ),
    { seed: 41, numRuns: 60 },
  );
});
