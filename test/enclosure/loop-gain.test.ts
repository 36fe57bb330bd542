import { describe, expect, it } from 'vitest';
import { dutyOutcome } from '../../src/enclosure/duty-outcome.ts';
import { settledPart } from '../../src/heat/part-power.ts';
import { HOPELESS } from '../../src/heat/part-temperature.ts';
import { elementFrom } from '../airway/element-pool.ts';
import { dressed, outcomeOf, partOf, riseOf } from './dressed.ts';
import { type Drawing, dutyOf, elementPlace, fans, fanWith, lossOfForm, ZERO } from './hand-made.ts';
import { STACK } from './plain-box.ts';

const CP = 1006;
const ROOM = 25 + ZERO;

/** A fan and a stack with parts on it, then a chamber with one part. */
function box(
  onStack: readonly { power: number; slope?: number; resistance?: number }[],
  inChamber: readonly { power: number; slope?: number; resistance?: number }[] = [],
  changes: { recirculation?: number; room?: number } = {},
): Drawing {
  const stack = elementPlace(elementFrom('fins', STACK), 'stack');
  const { recirculation = 0, room = ROOM } = changes;
  return {
    inner: 1,
    legs: [
      { from: 0, to: 1, through: [fans(fanWith()), stack], recirculation },
      { from: 1, to: 0, through: [elementPlace(lossOfForm(100, 5e4))] },
    ],
    parts: [
      ...onStack.map((part) => ({ ...part, on: stack })),
      ...inChamber.map((part) => ({ ...part, in: 1 })),
    ],
    room,
  };
}

/** Resistance of the fins [K/W] and capacity of the stream [W/K]. */
function surroundings(drawing: Drawing, power: number): { readonly fins: number; readonly capacity: number } {
  const outcome = outcomeOf(dressed(drawing, {}));
  return {
    fins: (riseOf(outcome, 0).get('air to fin base') ?? Number.NaN) / power,
    capacity: (outcome.legs[0]?.massFlow ?? Number.NaN) * CP,
  };
}

describe('the loop gain', () => {
  it('of a part alone is its resistance times the growth of its power', () => {
    // Definition; the growth is that at the present power: 0.4 % of 80 W for each kelvin.
    const drawing = box([{ power: 80, slope: 0.004, resistance: 0.15 }]);
    const outcome = outcomeOf(dressed(drawing, {}));
    const power = partOf(outcome, 0).power;
    const { fins } = surroundings(drawing, power);
    expect(partOf(outcome, 0).loopGain).toBeCloseTo((fins + 0.15) * 0.32, 9);
  });

  it('of the whole loop is the same where nothing comes back', () => {
    // Derived; what the warmer air does to the flow is small.
    const part = partOf(outcomeOf(dressed(box([{ power: 80, slope: 0.004, resistance: 0.15 }]), {})), 0);
    expect(Math.abs((part.wholeLoopGain ?? Number.NaN) / part.loopGain - 1)).toBeLessThan(0.01);
  });

  it('of the whole loop counts what is drawn in again', () => {
    // Derived: f/(1 − f)/C kelvins more for each watt.
    const drawing = box([{ power: 80, slope: 0.004, resistance: 0.15 }], [], { recirculation: 0.3 });
    const part = partOf(outcomeOf(dressed(drawing, {})), 0);
    const { capacity } = surroundings(drawing, 80);
    const expected = part.loopGain + (0.32 * (0.3 / 0.7)) / capacity;
    expect(Math.abs((part.wholeLoopGain ?? Number.NaN) / expected - 1)).toBeLessThan(0.01);
    expect(part.wholeLoopGain).toBeGreaterThan(part.loopGain * 1.03);
  });

  it('of the whole loop counts the air of the chamber', () => {
    // Derived: 1/C kelvins for each watt, whatever the part's own resistance to that air.
    const drawing = box([{ power: 10 }], [{ power: 60, slope: 0.006 }]);
    const outcome = outcomeOf(dressed(drawing, {}));
    const part = partOf(outcome, 1);
    const { capacity } = surroundings(drawing, 10);
    expect(part.loopGain).toBe(0);
    expect(Math.abs((part.wholeLoopGain ?? Number.NaN) / (0.36 / capacity) - 1)).toBeLessThan(0.02);
  });

  it('of the whole loop counts a neighbour that follows', () => {
    // Derived: the neighbour's own loop amplifies what it returns: s₁·(R + R²·s₂/(1 − R·s₂)).
    const drawing = box([
      { power: 80, slope: 0.008 },
      { power: 50, slope: 0.008 },
    ]);
    const outcome = outcomeOf(dressed(drawing, {}));
    const total = partOf(outcome, 0).power + partOf(outcome, 1).power;
    const { fins } = surroundings(drawing, total);
    const [own, other] = [80 * 0.008, 50 * 0.008];
    const expected = own * (fins + (fins ** 2 * other) / (1 - fins * other));
    expect(partOf(outcome, 0).loopGain).toBeCloseTo(own * fins, 9);
    expect(Math.abs((partOf(outcome, 0).wholeLoopGain ?? Number.NaN) / expected - 1)).toBeLessThan(0.01);
  });

  it('amplifies a warmer room by 1/(1 − gain)', () => {
    // Derived; warmer air is thinner, which adds a little.
    const drawing = (room: number) =>
      box([{ power: 90, slope: 0.008, resistance: 0.2 }], [], { recirculation: 0.2, room });
    const [cool, warm] = [ROOM, ROOM + 1].map((room) => partOf(outcomeOf(dressed(drawing(room), {})), 0));
    const rise = (warm?.temperature ?? Number.NaN) - (cool?.temperature ?? Number.NaN);
    expect(Math.abs(rise * (1 - (cool?.wholeLoopGain ?? Number.NaN)) - 1)).toBeLessThan(0.03);
  });

  it('is told from 0.3 on, with the boundary', () => {
    // Common practice, no source: warning at 0.3, refusal at 1.
    const remarks = (resistance: number) =>
      outcomeOf(dressed(box([{ power: 100, slope: 0.005, resistance }]), {})).remarks;
    expect(remarks(0.1)).toEqual([]);
    expect(remarks(0.6).join()).toMatch(/part 0: .*loop gain 0\.\d\d.* runs away above 2 K\/W/);
  });
});

describe('a part that leaks', () => {
  const leakage = { power: 30, growth: 0.02 };

  it('settles with air and fins together', () => {
    // Derived: at the air and resistance of the outcome it is where the law alone puts it.
    const drawing = box([{ power: 80, resistance: 0.3 }]);
    const machine = dressed(drawing, { parts: [{ leakage }] });
    const { fins } = {
      fins: (riseOf(outcomeOf(machine), 0).get('air to fin base') ?? 0) / partOf(outcomeOf(machine), 0).power,
    };
    const law = { power: 80, slope: 0, powerAt: 50 + ZERO, leakage };
    const found = partOf(outcomeOf(machine), 0);
    expect(found.temperature).toBeCloseTo(settledPart(law, 1, ROOM, fins + 0.3), 6);
    expect(found.loopGain).toBeCloseTo(
      (fins + 0.3) * 30 * 0.02 * Math.exp(0.02 * (found.temperature - 50 - ZERO)),
      9,
    );
  });
});

describe('a part that runs away', () => {
  it.each([
    ['linear', { slope: 0.01 }],
    ['leaking', { leakage: { power: 60, growth: 0.03 } }],
  ])('%s is refused with a reason and numbers, though it has no limit', (_, law) => {
    // What the program promises: a reason, never a NaN.
    const outcome = outcomeOf(dressed(box([{ power: 100, resistance: 1.2 }]), { parts: [law] }));
    expect(outcome.adequate).toBe(false);
    expect(outcome.failures).toMatchObject([{ part: 'part 0' }]);
    expect(outcome.failures[0]?.reason).toMatch(
      /it runs away: 1\.\d K\/W to its air, the most is [\d.]+ K\/W/,
    );
    expect(outcome.tightest).toBeUndefined();
    expect(partOf(outcome, 0).temperature).toBe(HOPELESS);
    expect(partOf(outcome, 0).power).toBe(100);
    expect(partOf(outcome, 0).loopGain).toBeGreaterThan(1);
    expect(partOf(outcome, 0)).not.toHaveProperty('wholeLoopGain');
    expect(JSON.stringify(outcome)).not.toContain('null');
  });

  it('together with another gives no answer, and the reason says why', () => {
    // Derived: each alone has a gain below 1, both together 1.5.
    const pair = (slope: number) =>
      dressed(
        box([
          { power: 100, slope },
          { power: 100, slope },
        ]),
        { parts: [{ powerAt: ROOM }, { powerAt: ROOM }] },
      );
    const { fins } = surroundings(box([{ power: 100 }, { power: 100 }]), 200);
    const machine = pair(1.5 / (200 * fins));
    const outcome = dutyOutcome(machine, dutyOf(machine), Float64Array.of(1));
    expect(outcome).toMatch(/^the parts run away/);
    expect(outcomeOf(pair(0.5 / (200 * fins))).failures).toEqual([]);
  });
});
