import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { elementLoss } from '../../src/airway/series.ts';
import type { Element } from '../../src/elements/element.ts';
import { ASSUMPTIONS } from '../../src/enclosure/assumptions.ts';
import { closenessIn } from '../../src/enclosure/closeness.ts';
import { dutyOutcome } from '../../src/enclosure/duty-outcome.ts';
import type { Enclosure, Leg, Place } from '../../src/enclosure/enclosure.ts';
import { bankInstallation } from '../../src/enclosure/installation.ts';
import type { Machine } from '../../src/enclosure/machine.ts';
import type { DutyOutcome } from '../../src/enclosure/outcome.ts';
import { FAN_ASSUMPTIONS } from '../../src/fan/fan-assumptions.ts';
import { elementFrom } from '../airway/element-pool.ts';
import {
  bankPlace,
  type Drawing,
  dutyOf,
  elementPlace,
  enclosureOf,
  fans,
  fanWith,
  flowOf,
  lossOfForm,
  machineOf,
  passOf,
} from './hand-made.ts';

const SEED = 71;

/** Blade circle of the invented fan of 92 mm, and its disc, ring and frame. */
const DIAMETER = 0.96 * 0.092;
const DISC = (Math.PI / 4) * DIAMETER ** 2;
const RING = DISC * (1 - 0.35 ** 2);

const stack = elementFrom('fins', {
  fins: 'tower',
  face: '92 x 92 mm',
  depth: '25 mm',
  pitch: '2 mm',
  fin: '0.4 mm',
});
const STACK_SHARE = RING / 0.092 ** 2;
const mesh = elementFrom('screen', { screen: '92 x 92 mm', open: '55 %', wire: '0.2 mm' });
const grille = elementFrom('perforated', {
  perforated: '92 x 92 mm',
  hole: '4 mm',
  web: '1.5 mm',
  sheet: '1 mm',
});
const foam = elementFrom('filter', {
  filter: 'foam',
  face: '92 x 92 mm',
  thickness: '5 mm',
  pores: '30 ppi',
});
const slot = elementFrom('slot', { slot: '90 x 20 mm' });

/** One leg through a box of one chamber and an open way out. */
function boxWith(through: readonly Place[], assumptions = ASSUMPTIONS): Drawing {
  return {
    inner: 1,
    legs: [
      { from: 0, to: 1, through },
      { from: 1, to: 0, through: [] },
    ],
    assumptions,
  };
}

function outcomeOf(machine: Machine, speed = 1): DutyOutcome {
  const outcome = dutyOutcome(machine, dutyOf(machine), new Float64Array(machine.banks.length).fill(speed));
  if (typeof outcome === 'string') throw new Error(outcome);
  return outcome;
}

/** Shares of the faces used in the first leg, 1 where the whole is. */
function sharesIn(enclosure: Enclosure): readonly number[] {
  const [leg] = enclosure.legs as readonly [Leg, ...Leg[]];
  const build = enclosure.places.map(() => 0);
  return closenessIn(enclosure, build, leg).map((close) => close?.used ?? 1);
}

describe('a wall close to a fan', () => {
  const loss = (): Place => elementPlace(lossOfForm(0, 5e4), 'loss');

  /** Volume flow of a fan with walls and a loss, all square laws [m³/s]. */
  function flowWith(fields: Parameters<typeof fans>[2], count = 1): number {
    const machine = machineOf(boxWith([fans(fanWith(), count, fields), loss()]));
    const passed = passOf(machine);
    return flowOf(passed, 0) / (machine.legs[0]?.densities[0] ?? Number.NaN);
  }

  /** Derived: Q = √(p0/(R + p0/(n·Q0)² + b)), in air of any density. */
  function expected(heads: number, count = 1): number {
    const wall = (1.2 * heads) / (2 * (count * DISC) ** 2);
    return Math.sqrt(40 / (5e4 + 40 / (count * 0.03) ** 2 + wall));
  }

  it('takes flow as one head at a quarter of a diameter before the inlet, half a head behind the outlet', () => {
    expect(flowWith({}) / expected(0)).toBeCloseTo(1, 6);
    expect(flowWith({ inletWall: DIAMETER / 4 }) / expected(1)).toBeCloseTo(1, 6);
    expect(flowWith({ outletWall: DIAMETER / 4 }) / expected(0.5)).toBeCloseTo(1, 6);
    expect(flowWith({ inletWall: DIAMETER / 8, outletWall: DIAMETER / 4 }) / expected(4.5)).toBeCloseTo(1, 6);
  });

  it('works on all fans of a bank', () => {
    expect(flowWith({ inletWall: DIAMETER / 4 }, 2) / expected(1, 2)).toBeCloseTo(1, 6);
  });

  it('farther than half a diameter takes nothing', () => {
    // ASHRAE study of 2005 on axial fans near plenum walls (abstract).
    expect(flowWith({ inletWall: 0.51 * DIAMETER, outletWall: 0.51 * DIAMETER })).toBe(flowWith({}));
  });

  it('has a line of its own in the pressures, which still sum', () => {
    const walled = fans(fanWith(), 1, { id: 'blower', inletWall: 0.01 });
    const [leg] = outcomeOf(machineOf(boxWith([walled, loss()]))).legs;
    expect(leg?.pressures.map(({ label }) => label)).toEqual(['blower', 'blower: wall close by', 'loss']);
    // Derived: K·ρ/2·(Q/A)² with K = (D/4h)².
    const density = 101_325 / (287.053 * 298.15);
    const wall = ((DIAMETER / 0.04) ** 2 * density * ((leg?.flow ?? 0) / DISC) ** 2) / 2;
    expect(leg?.pressures[1]?.amount).toBeCloseTo(wall, 6);
    const sum = leg?.pressures.reduce((total, { amount }) => total + amount, 0) ?? Number.NaN;
    expect(sum).toBeCloseTo(leg?.pressureDifference ?? Number.NaN, 9);
  });

  it('is also heard', () => {
    // Assumptions of the sound model: a touching wall adds 4 dB at the inlet, less by exp(−g/0.15 D) at a distance.
    const enclosure = enclosureOf(boxWith([fans(fanWith(), 1, { inletWall: 0.0138 })]));
    const [place] = enclosure.places;
    if (place?.kind !== 'bank' || !place.options[0]) throw new Error('a bank stands there');
    const rise = bankInstallation(enclosure, [0], place, 0, 0, place.options[0]);
    expect(rise - ASSUMPTIONS.sound.panelMounting).toBeCloseTo(4 * Math.exp(-1), 3);
  });
});

describe('fins, filters and sheets close to a fan', () => {
  it('lose what the whole would at so much more flow, on a line of its own', () => {
    // Derived: the flow through the ring alone is 1/share of the flow over the whole face.
    const machine = machineOf(
      boxWith([fans(fanWith(), 1, { id: 'push', outletGap: 0 }), elementPlace(stack, 'stack')]),
    );
    const { legs } = outcomeOf(machine);
    const [leg] = legs;
    const density = 101_325 / (287.053 * 298.15);
    const flow = (leg?.massFlow ?? 0) / density;
    const viscosity = machine.legs[0]?.viscosities[1] ?? Number.NaN;
    const whole = elementLoss(stack, flow, density, viscosity);
    const concentrated = elementLoss(stack, flow / STACK_SHARE, density, viscosity);
    const amounts = new Map(leg?.pressures.map(({ label, amount }) => [label, amount]));
    expect(amounts.get('stack')).toBeCloseTo(whole, 4);
    expect(amounts.get('stack: only the part that push reaches')).toBeCloseTo(concentrated - whole, 4);
    const sum = [...amounts.values()].reduce((total, amount) => total + amount, 0);
    expect(sum).toBeCloseTo(leg?.pressureDifference ?? Number.NaN, 9);
    expect(leg?.pressureDifference).toBeCloseTo(0, 9);
  });

  it('are used alike before and behind the fan', () => {
    // Model assumption, no source: the same rule on both sides.
    const near = { inletGap: 0, outletGap: 0 };
    const behind = enclosureOf(boxWith([fans(fanWith(), 1, near), elementPlace(foam)]));
    const before = enclosureOf(boxWith([elementPlace(foam), fans(fanWith(), 1, near)]));
    expect(sharesIn(behind)).toEqual([1, STACK_SHARE]);
    expect(sharesIn(before)).toEqual([STACK_SHARE, 1]);
  });

  it('behind a thin sheet are as close as the sheet; behind anything deep they are not', () => {
    // Model assumption, no source.
    const near = fans(fanWith(), 1, { outletGap: 0 });
    const thin = enclosureOf(boxWith([near, elementPlace(grille), elementPlace(mesh), elementPlace(stack)]));
    expect(sharesIn(thin)).toEqual([1, STACK_SHARE, STACK_SHARE, STACK_SHARE]);
    const deep = enclosureOf(boxWith([near, elementPlace(stack), elementPlace(mesh)]));
    expect(sharesIn(deep)).toEqual([1, STACK_SHARE, 1]);
    const gap = enclosureOf(boxWith([near, elementPlace(slot), elementPlace(mesh)]));
    expect(sharesIn(gap)).toEqual([1, 1, 1]);
  });

  it('let a sheet open up sooner than fins', () => {
    // Model assumption, no source: at a quarter of a diameter the sheet is used as a whole, fins only as the ring.
    const quarter = { outletGap: 0.25 * DIAMETER };
    expect(sharesIn(enclosureOf(boxWith([fans(fanWith(), 1, quarter), elementPlace(grille)])))).toEqual([
      1, 1,
    ]);
    expect(sharesIn(enclosureOf(boxWith([fans(fanWith(), 1, quarter), elementPlace(stack)])))).toEqual([
      1,
      STACK_SHARE,
    ]);
  });

  it('are farther by the depth of an empty place between', () => {
    // Geometry: 25 mm of the empty place are 0.283 diameters of 88.32 mm, so 0.132 of the way to the whole face.
    const places = [fans(fanWith(), 1, { outletGap: 0 }), bankPlace([null]), elementPlace(stack)];
    const way = (0.025 / DIAMETER - 0.25) / 0.25;
    expect(sharesIn(enclosureOf(boxWith(places)))[2]).toBeCloseTo(STACK_SHARE + way * (1 - STACK_SHARE), 9);
  });

  it('between two banks are used as the closer one leaves them', () => {
    // Model assumption, no source: the smaller share counts, once.
    const drawn = (pull: number) =>
      enclosureOf(
        boxWith([
          fans(fanWith(), 1, { outletGap: 0.4 * DIAMETER }),
          elementPlace(stack),
          fans(fanWith(), 1, { inletGap: pull }),
        ]),
      );
    const far = sharesIn(drawn(1))[1] ?? 1;
    expect(far).toBeGreaterThan(STACK_SHARE);
    expect(far).toBeLessThan(1);
    expect(sharesIn(drawn(0))).toEqual([1, STACK_SHARE, 1]);
  });

  it('do not look beyond another bank', () => {
    // The other bank's own distance counts.
    const places = [
      fans(fanWith(), 1, { outletGap: 0 }),
      fans(fanWith(), 1, { inletGap: 0 }),
      elementPlace(stack),
    ];
    expect(sharesIn(enclosureOf(boxWith(places)))).toEqual([1, 1, 1]);
  });

  it('can be left out of account by assumptions', () => {
    // Contract: no reach switches it off.
    const off = { ringUpTo: 0, fullFrom: 0 };
    const assumptions = {
      ...ASSUMPTIONS,
      fan: { ...FAN_ASSUMPTIONS, plenum: { deep: off, sheet: off } },
    };
    const places = [fans(fanWith(), 1, { outletGap: 0 }), elementPlace(grille), elementPlace(stack)];
    expect(sharesIn(enclosureOf(boxWith(places, assumptions)))).toEqual([1, 1, 1]);
  });
});

describe('closeness of anything', () => {
  const anyElement = fc.constantFrom<Element>(stack, mesh, grille, foam, slot);
  const gap = fc.double({ min: 0, max: 0.08, noNaN: true });

  it('never adds to the flow, the less the farther, and vanishes with distance', () => {
    // Derived: an extra loss that falls with the distance.
    fc.assert(
      fc.property(fc.array(anyElement, { minLength: 1, maxLength: 3 }), gap, gap, (elements, a, b) => {
        const flow = (fields: Parameters<typeof fans>[2]): number => {
          const places = [...elements.map((each) => elementPlace(each)), fans(fanWith(), 1, fields)];
          return flowOf(passOf(machineOf(boxWith(places))), 0);
        };
        const [near, far] = [Math.min(a, b), Math.max(a, b)];
        const plain = flow({});
        expect(flow({ inletGap: far })).toBeGreaterThanOrEqual(flow({ inletGap: near }) - 1e-9);
        expect(flow({ inletGap: far })).toBeLessThanOrEqual(plain + 1e-9);
        expect(flow({ inletGap: 0.5 * DIAMETER })).toBe(plain);
      }),
      { seed: SEED, numRuns: 60 },
    );
  });
});
