import { describe, expect, it } from 'vitest';
import type { Skin } from '../../src/enclosure/enclosure.ts';
import { dressed, outcomeOf, partOf, sumOf } from './dressed.ts';
import { bankPlace, type Drawing, elementPlace, fans, fanWith, lossOfForm, ZERO } from './hand-made.ts';

const CP = 1006;
const ROOM = 25 + ZERO;

/** 60 W in a chamber with a fan at its intake, or with none. */
function box(driven = true): Drawing {
  return {
    inner: 1,
    legs: [
      { from: 0, to: 1, through: [driven ? fans(fanWith({ power: 1 })) : bankPlace([null])] },
      { from: 1, to: 0, through: [elementPlace(lossOfForm(100, 2e5))] },
    ],
    parts: [{ power: 60, in: 1, resistance: 0.4 }],
  };
}

const skin: Skin = { chamber: 1, conductance: 1.5, share: 0.5 };

/** Rise of the air in the chamber [K]. */
function riseIn(outcome: ReturnType<typeof outcomeOf>): number {
  return (outcome.chambers[1]?.temperature ?? Number.NaN) - ROOM;
}

describe('the wall of a chamber', () => {
  it('carries off its share of the heat', () => {
    // Derived: ΔT = Q/(ṁ·cp + G).
    const outcome = outcomeOf(dressed(box(), { skins: [skin] }));
    const capacity = outcome.throughFlow * CP;
    const given = partOf(outcome, 0).power + outcome.fanPower;
    expect(riseIn(outcome)).toBeCloseTo(given / (capacity + 1.5), 6);
    expect(outcome.panels).toMatchObject([{ chamber: 'chamber 1', limits: [] }]);
    expect(outcome.panels[0]?.heat).toBeCloseTo(1.5 * riseIn(outcome), 9);
    expect(outcome.panels[0]?.temperature).toBeCloseTo(ROOM + 0.5 * riseIn(outcome), 9);
  });

  it('appears in the budget of heat, which still sums to what the air carries', () => {
    // Conservation of energy.
    const outcome = outcomeOf(dressed(box(), { skins: [skin] }));
    expect(outcome.heat.map(({ label }) => label)).toEqual([
      'part 0',
      'fans bank',
      'through the wall of chamber 1',
    ]);
    expect(Math.abs(sumOf(outcome.heat) / outcome.heatCarried - 1)).toBeLessThan(1e-6);
    expect(outcome.heatCarried).toBeLessThan(60);
  });

  it('is all there is where no air moves', () => {
    // Derived: ΔT = Q/G but for the trickle of 1e-7 kg/s that stands for still air.
    const outcome = outcomeOf(dressed(box(false), { skins: [skin] }));
    expect(Math.abs(riseIn(outcome) / 40 - 1)).toBeLessThan(1e-3);
    expect(partOf(outcome, 0).temperature).toBeCloseTo(ROOM + riseIn(outcome) + 24, 6);
  });

  it('changes nothing if it lets no heat through, or if there is none', () => {
    const [none, tight] = [{}, { skins: [{ ...skin, conductance: 0 }] }].map((dress) =>
      outcomeOf(dressed(box(), dress)),
    );
    expect(none?.panels).toEqual([]);
    expect(tight?.chambers).toEqual(none?.chambers);
  });

  it('counts twice if there are two', () => {
    const twice = outcomeOf(dressed(box(), { skins: [skin, skin] }));
    const double = outcomeOf(dressed(box(), { skins: [{ ...skin, conductance: 3 }] }));
    expect(riseIn(twice)).toBeCloseTo(riseIn(double), 9);
    expect(Math.abs(sumOf(twice.heat) / twice.heatCarried - 1)).toBeLessThan(1e-6);
  });
});

describe('the touch temperature of a panel', () => {
  const touched = (limit?: number) =>
    outcomeOf(
      dressed(box(false), {
        skins: [{ ...skin, material: 'metal', ...(limit === undefined ? {} : { limit }) }],
      }),
    );

  it('is judged by its limit like any other', () => {
    // Derived: 40 K of air, half of it outside the panel: 45 °C.
    const outcome = touched(60 + ZERO);
    expect((outcome.panels[0]?.temperature ?? Number.NaN) - ZERO).toBeCloseTo(45, 1);
    expect(outcome.tightest).toMatchObject({ part: 'chamber 1', of: 'panel', limit: 60 + ZERO });
    expect(outcome.adequate).toBe(true);
    expect(touched(44 + ZERO).adequate).toBe(false);
  });

  it('is mentioned where the panel is too warm to hold, as orientation', () => {
    // IEC 62368-1, table 38 (from memory): 48 °C if held for a minute.
    expect(touched().remarks).toEqual([]);
    const warm = outcomeOf(
      dressed(box(false), { skins: [{ ...skin, share: 0.7, material: 'metal' }] }),
    ).remarks.join();
    expect(warm).toMatch(
      /panel of chamber 1: 53 °C, too warm to be held \(metal, 48 °C\); .*no certification/,
    );
  });
});

describe('a supply outside the box', () => {
  it('warms itself, not the box', () => {
    // Derived: its loss goes to the room.
    const drawing = box();
    const without = outcomeOf(dressed(drawing, {}));
    const machine = dressed(
      { ...drawing, parts: [...(drawing.parts ?? []), { power: 22, in: 0, resistance: 0.8 }] },
      { parts: [{}, { supply: { output: 198, rating: 200 } }] },
    );
    const outcome = outcomeOf(machine);
    expect(outcome.chambers).toEqual(without.chambers);
    expect(outcome.heat).toEqual(without.heat);
    expect(partOf(outcome, 1).temperature).toBeCloseTo(ROOM + 22 * 0.8, 9);
  });

  it('that gives more than 80 % of its rating for long is mentioned', () => {
    // 80 % rule, common practice: 198 W need 247.5 W.
    const remarks = (rating: number) =>
      outcomeOf(dressed(box(), { parts: [{ supply: { output: 198, rating } }] })).remarks;
    expect(remarks(200)).toEqual([
      'part 0: it gives 198 W for long, for which it should be rated 248 W or more',
    ]);
    expect(remarks(250)).toEqual([]);
    expect(remarks(190)).toEqual(['part 0: it gives 198 W for long, more than its rating of 190 W']);
  });
});
