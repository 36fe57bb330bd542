import { describe, expect, it } from 'vitest';
import { ASSUMPTIONS } from '../../src/enclosure/assumptions.ts';
import { coolPlantOf, coolTrials } from '../../src/search/cooling-bound.ts';
import { dressed, outcomeOf, partOf } from './dressed.ts';
import {
  type Drawing,
  type DrawnPart,
  elementPlace,
  enclosureOf,
  fans,
  fanWith,
  lossOfForm,
} from './hand-made.ts';

const CELSIUS = 273.15;

/** A box with one part whose path to the air of the chamber is so long that it gets hot. */
function box(resistance: number, limits: DrawnPart['limits'] = [], hottestPart?: number): Drawing {
  return {
    inner: 1,
    legs: [
      { from: 0, to: 1, through: [fans(fanWith())] },
      { from: 1, to: 0, through: [elementPlace(lossOfForm(100, 5e4))] },
    ],
    parts: [{ power: 30, in: 1, resistance, limits }],
    ...(hottestPart === undefined
      ? {}
      : { assumptions: { ...ASSUMPTIONS, heat: { ...ASSUMPTIONS.heat, hottestPart } } }),
  };
}

const outcomeOfBox = (...given: Parameters<typeof box>) => outcomeOf(dressed(box(...given), {}));

describe('a part without a limit of its own', () => {
  // Common practice: joints of SnAgCu solder melt from 217 °C, 490 K, on.
  it.each([5, 6, 6.1])('may be as hot as solder bears, with %d K/W to its air', (resistance) => {
    const outcome = outcomeOfBox(resistance);
    expect(partOf(outcome, 0).temperature).toBeLessThan(217 + CELSIUS);
    expect(outcome).toMatchObject({ adequate: true, failures: [] });
  });

  it.each([6.4, 8, 1000])('is spoilt where solder melts, with %d K/W to its air', (resistance) => {
    const outcome = outcomeOfBox(resistance);
    expect(partOf(outcome, 0).temperature).toBeGreaterThan(217 + CELSIUS);
    expect(outcome.adequate).toBe(false);
    expect(outcome.failures).toEqual([
      {
        part: 'part 0',
        reason:
          'it has no limit of its own, and gets hotter than the 217 °C that such a part is taken to bear',
      },
    ]);
  });

  it('is one whose air alone has a limit', () => {
    const limits = [{ of: 'air', temperature: 60 + CELSIUS }] as const;
    expect(outcomeOfBox(8, limits).failures).toHaveLength(1);
  });

  it('is judged otherwise if the scenario assumes that it bears more, or less', () => {
    expect(outcomeOfBox(8, [], 600)).toMatchObject({ adequate: true, failures: [] });
    expect(outcomeOfBox(5, [], 400).failures).toHaveLength(1);
  });

  it('is not one that has a limit, however high', () => {
    const limits = [{ of: 'part', temperature: 700 }] as const;
    expect(outcomeOfBox(8, limits)).toMatchObject({ adequate: true, failures: [] });
  });

  it('says nothing of other speeds: faster fans may be what warms it', () => {
    // Derived: a bound on temperatures may rest on limits alone where only limited parts are known to get cooler.
    const enclosure = enclosureOf(box(8));
    const point = coolTrials(
      coolPlantOf(enclosure),
      enclosure.places.map(() => 0),
    ).coolestWithin(0, 1e9);
    expect(point?.worst).toBe(Number.NEGATIVE_INFINITY);
  });
});
