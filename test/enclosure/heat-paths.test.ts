import { describe, expect, it } from 'vitest';
import type { Part } from '../../src/enclosure/enclosure.ts';
import { spreading } from '../../src/heat/spreading.ts';
import { elementFrom } from '../airway/element-pool.ts';
import { type Dress, dressed, outcomeOf, partOf, riseOf, sumOf } from './dressed.ts';
import { type Drawing, elementPlace, fans, fanWith, ZERO } from './hand-made.ts';
import { STACK } from './plain-box.ts';

const ROOM = 25 + ZERO;

/** A fan before a stack that carries parts. */
function onStack(parts: NonNullable<Drawing['parts']>): Drawing {
  const stack = elementPlace(elementFrom('fins', STACK), 'stack');
  return {
    inner: 1,
    legs: [
      { from: 0, to: 1, through: [fans(fanWith()), stack] },
      { from: 1, to: 0, through: [] },
    ],
    parts: parts.map((part) => ({ ...part, on: stack })),
  };
}

const base: NonNullable<Part['base']> = {
  footprint: { width: 0.02, height: 0.016 },
  plate: { width: 0.06, height: 0.06 },
  thickness: 0.005,
  conductivity: 390,
};
const pipes = { count: 4, capacity: 40, resistance: 0.05 };
const paste = { thickness: 30e-6, conductivity: 8, area: 3e-4 };

describe('a part on pipes, a base and paste', () => {
  const drawing = onStack([{ power: 90, resistance: 0.1 }]);
  const outcome = outcomeOf(dressed(drawing, { parts: [{ pipes, base, paste }] }));
  const rise = riseOf(outcome, 0);

  it('has a line for each of them, and the lines sum to its temperature', () => {
    // Derived: power times each resistance; the base spreads against what the fins and the pipes resist at this flow.
    const fins = (rise.get('air to fin base') ?? Number.NaN) / 90;
    const { max, through } = spreading(base, fins + 0.05);
    expect(fins).toBeGreaterThan(0.05);
    expect(rise.get('heat pipes')).toBeCloseTo(4.5, 9);
    expect(rise.get('spreading in the base')).toBeCloseTo(90 * max, 9);
    expect(rise.get('through the base')).toBeCloseTo(90 * through, 9);
    expect(rise.get('paste')).toBeCloseTo(90 * 0.0125, 9);
    expect(rise.get('the rest of the way to the part')).toBeCloseTo(9, 9);
    expect(sumOf(partOf(outcome, 0).rise)).toBeCloseTo(partOf(outcome, 0).temperature - ROOM, 9);
  });

  it('has a probe right under it that is cooler by what lies between', () => {
    expect(partOf(outcome, 0).temperature - (partOf(outcome, 0).probe ?? Number.NaN)).toBeCloseTo(
      90 * 0.1125,
      9,
    );
  });

  it('spreads less at more flow, because the fins resist less', () => {
    const slow = riseOf(outcomeOf(dressed(drawing, { parts: [{ pipes, base, paste }] }), 0.3), 0);
    const spread = (of: ReadonlyMap<string, number>) => of.get('spreading in the base') ?? Number.NaN;
    expect(spread(slow)).toBeGreaterThan(spread(rise) * 1.005);
  });

  it('is as warm as with the same resistances in one number', () => {
    const one = outcomeOf(dressed(onStack([{ power: 90, resistance: 0.1 + 0.05 + 0.0125 }]), {}));
    const named = outcomeOf(dressed(drawing, { parts: [{ pipes, paste }] }));
    expect(partOf(named, 0).temperature).toBeCloseTo(partOf(one, 0).temperature, 9);
    expect(partOf(named, 0).loopGain).toBe(0);
  });
});

describe('several parts on one stack', () => {
  it('share the rise of the fins and have each their own base', () => {
    // Decided: base = air + ΣP·R; each part adds its own power times its own path.
    const drawing = onStack([
      { power: 60, resistance: 0.1 },
      { power: 25, resistance: 0.3 },
    ]);
    const outcome = outcomeOf(dressed(drawing, { parts: [{ base }, { paste }] }));
    const [first, second] = [riseOf(outcome, 0), riseOf(outcome, 1)];
    const shared = first.get('air to fin base') ?? Number.NaN;
    expect(second.get('air to fin base')).toBeCloseTo(shared, 9);
    expect(first.get('spreading in the base')).toBeCloseTo(60 * spreading(base, shared / 85).max, 9);
    expect(second.get('paste')).toBeCloseTo(25 * 0.0125, 9);
    for (const part of outcome.parts) expect(sumOf(part.rise)).toBeCloseTo(part.temperature - ROOM, 9);
  });
});

describe('a probe in the base', () => {
  const drawing = onStack([{ power: 90, resistance: 0.1 }]);
  const probed = (probe: number, limit: number) =>
    outcomeOf(
      dressed(drawing, { parts: [{ base, pipes, probe, limits: [{ of: 'probe', temperature: limit }] }] }),
    );

  it('sees as much of the base as is said, and may have a limit of its own', () => {
    const [none, half, all] = [0, 0.5, 1].map((probe) => probed(probe, 350));
    const at = (outcome: ReturnType<typeof probed> | undefined) =>
      outcome ? (partOf(outcome, 0).probe ?? Number.NaN) : Number.NaN;
    const rise = riseOf(probed(1, 350), 0);
    const whole = (rise.get('spreading in the base') ?? 0) + (rise.get('through the base') ?? 0);
    expect(at(all) - at(none)).toBeCloseTo(whole, 9);
    expect(at(half) - at(none)).toBeCloseTo(whole / 2, 9);
    expect(all?.tightest).toMatchObject({ of: 'probe', found: at(all), margin: 350 - at(all) });
    expect(all?.adequate).toBe(true);
    expect(probed(1, at(all) - 0.01).adequate).toBe(false);
    expect(probed(0, at(all) - 0.01).adequate).toBe(true);
  });

  it('in the chain of a known example reads 47.7 °C under a junction of 67.9 °C', () => {
    // Computed with Python: R 0.0643153 of the fins at 45.77 CFM, 0.05, 0.0125 and 0.1 K/W, 180 W, 2.07556 K of preheat.
    const outcome = outcomeOf(
      dressed(onStack([{ power: 180, resistance: 0.1 }]), {
        parts: [{ pipes: { ...pipes, capacity: 60 }, paste }],
      }),
    );
    const { temperature, probe = Number.NaN } = partOf(outcome, 0);
    expect(temperature - probe).toBeCloseTo(67.9023 - 47.6523, 3);
  });
});

describe('heat pipes', () => {
  const loaded = (power: number, dress: Dress['parts'] = [{ pipes }]) =>
    outcomeOf(dressed(onStack([{ power }]), { parts: dress }));

  it('are mentioned from 70 % of what dries them out on', () => {
    // Common practice: warn at 70 %, fail at 100 %.
    expect(loaded(110).remarks).toEqual([]);
    expect(loaded(113).remarks.join()).toContain('part 0: its heat pipes carry 70.6 %');
    expect(loaded(113).adequate).toBe(true);
  });

  it('refuse a part that draws more than they carry, in words', () => {
    const dry = loaded(161);
    expect(dry.adequate).toBe(false);
    expect(dry.failures).toMatchObject([{ part: 'part 0' }]);
    expect(dry.failures[0]?.reason).toMatch(/161 W is more than its heat pipes carry, 160 W/);
    expect(loaded(160).adequate).toBe(true);
  });

  it('set a limit where the power rises with temperature', () => {
    // Derived: 150 W at 50 °C and 0.4 %/K reach 160 W at 66.667 °C.
    const rising = { pipes, slope: 0.004 };
    const cool = loaded(150, [rising]);
    expect(cool.parts[0]?.limits).toMatchObject([{ of: 'pipes' }]);
    expect((cool.tightest?.limit ?? Number.NaN) - ZERO).toBeCloseTo(66.6667, 4);
    expect(cool.adequate).toBe(partOf(cool, 0).power <= 160);
    const warm = loaded(150, [{ ...rising, resistance: 0.3 }]);
    expect(partOf(warm, 0).power).toBeGreaterThan(160);
    expect(warm.adequate).toBe(false);
    expect(warm.failures).toEqual([]);
  });
});
