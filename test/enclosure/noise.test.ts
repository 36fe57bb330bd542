import { describe, expect, it } from 'vitest';
import type { Disturbance, Element } from '../../src/elements/element.ts';
import { ASSUMPTIONS } from '../../src/enclosure/assumptions.ts';
import type { BankPlace, Place } from '../../src/enclosure/enclosure.ts';
import type { Machine } from '../../src/enclosure/machine.ts';
import { flowShare, levelOfEnergy, newNoiseState, soundEnergy } from '../../src/enclosure/noise.ts';
import { curveFromBox } from '../../src/fan/box-figures.ts';
import { curveFromPoints } from '../../src/fan/curve.ts';
import type { FanModel } from '../../src/fan/fan-model.ts';
import {
  bankPlace,
  type Drawing,
  elementPlace,
  fans,
  fanWith,
  lossOfForm,
  machineOf,
  passOf,
} from './hand-made.ts';

/** Without the panel term, which the sums below leave out. */
const HUNG_FREELY = { ...ASSUMPTIONS, sound: { ...ASSUMPTIONS.sound, panelMounting: 0 } };

interface Heard {
  readonly level: number;
  readonly banks: readonly number[];
  readonly vents: readonly number[];
}

/** Levels at the listener and of each source at 1 m [dB]. */
function hear(machine: Machine, speeds: readonly number[] = []): Heard {
  const { state, ratios, failure } = passOf(machine, speeds);
  expect(failure).toBeNull();
  const noise = newNoiseState(machine);
  const sum = soundEnergy(machine, ratios, state, noise);
  return {
    level: levelOfEnergy(sum),
    banks: Array.from(noise.banks, levelOfEnergy),
    vents: Array.from(noise.vents, levelOfEnergy),
  };
}

function obstacle(disturbance: Disturbance): Place {
  return elementPlace({ ...lossOfForm(0, 10), disturbance }, disturbance);
}

/** A path from the room into a box and out of an opening without loss. */
function through(places: readonly Place[], changes: Partial<Drawing> = {}): Drawing {
  return {
    inner: 1,
    legs: [
      { from: 0, to: 1, through: places },
      { from: 1, to: 0, through: [] },
    ],
    assumptions: HUNG_FREELY,
    ...changes,
  };
}

describe('two fans, a stack before them and a vent behind', () => {
  // Computed with Python from the laws of the sound model (model assumptions; opening: Long, Architectural Acoustics,
  // 2nd ed.): 31.5 dB at 2000/min, two at 1300/min, flow share 0.42, fins 10 mm before 92 mm, vent of 80 mm with ζ 2.5
  // at 2.5 m/s, heard at 0.7 m: speed 21.2102, working point 1.6, installation 1.4535, with the floor 24.4235.
  const face = (Math.PI / 4) * 0.08 ** 2;
  const ratio = 1300 / 2000;
  const freeDelivery = (2.5 * face) / 2 / (0.42 * ratio);
  // The fans overcome the vent alone: p0·r²·(1 − 0.42²) = ζ·ρ·v²/2 at 1.2 kg/m³.
  const shutOff = (2.5 * 1.2 * 2.5 ** 2) / 2 / (ratio ** 2 * (1 - 0.42 ** 2));
  const vent: Element = { ...lossOfForm(0, 0), inertial: 2.5 / (2 * face ** 2), ventFace: face };
  const stack = elementPlace({ ...lossOfForm(0, 0), disturbance: 'fins' });
  const fan = fanWith({ curve: curveFromBox(freeDelivery, shutOff, 0) });
  const drawing = through([stack, fans(fan, 2, { inletGap: 0.01 }), elementPlace(vent)]);

  it('are as loud as the sum of their parts', () => {
    const machine = machineOf(drawing);
    const { level, banks, vents } = hear(machine, [ratio]);
    expect(banks[0]).toBeCloseTo(27.4338, 3);
    expect(vents[0]).toBeCloseTo(11.3698, 2);
    expect(level).toBeCloseTo(27.54, 2);
  });

  it('work at the flow share the sum is made for', () => {
    const machine = machineOf(drawing);
    const { state } = passOf(machine, [ratio]);
    const [bank] = machine.banks;
    expect(bank && flowShare(machine, bank, ratio, state)).toBeCloseTo(0.42, 9);
    expect(bank && flowShare(machine, bank, 0, state)).toBe(0);
  });

  it('are louder nearby', () => {
    // Computed as above: 30.6380 dB at 0.7 m.
    expect(hear(machineOf({ ...drawing, distance: 0.7 }), [ratio]).level).toBeCloseTo(30.638, 2);
  });

  it('lose 6.02 dB with each doubling of the distance', () => {
    // Derived: 20 lg 2, free field.
    const near = hear(machineOf(drawing), [ratio]).level;
    const far = hear(machineOf({ ...drawing, distance: 2 }), [ratio]).level;
    expect(near - far).toBeCloseTo(6.0206, 4);
  });

  it('are quieter without the vent by what the vent adds', () => {
    // Derived: energies add; 10 lg(1 + 10^(−1.6064)).
    const { ventFace: _, ...quiet } = vent;
    const places = [stack, fans(fan, 2, { inletGap: 0.01 }), elementPlace(quiet)];
    const without = hear(machineOf(through(places)), [ratio]);
    const all = hear(machineOf(drawing), [ratio]);
    expect(without.vents).toEqual([]);
    expect(without.level).toBeCloseTo(27.4338, 3);
    const gap = (without.level - (all.vents[0] ?? Number.NaN)) / 10;
    expect(all.level - without.level).toBeCloseTo(10 * Math.log10(1 + 10 ** -gap), 9);
  });

  it('count the panel they are mounted in', () => {
    // Model assumption, no source: 2 dB, before the floor of 10 dB.
    const inPanel = machineOf({ ...drawing, assumptions: ASSUMPTIONS });
    const expected = 10 * Math.log10(2 * (10 ** 2.62637 + 10));
    expect(hear(inPanel, [ratio]).banks[0]).toBeCloseTo(expected, 3);
  });
});

describe('several banks', () => {
  const fan = fanWith();
  const legs = (count: number) =>
    Array.from({ length: count }, () => ({ from: 0, to: 1, through: [fans(fan)] }));
  const boxWith = (count: number) =>
    machineOf({
      inner: 1,
      legs: [...legs(count), { from: 1, to: 0, through: [] }],
      assumptions: HUNG_FREELY,
    });

  it.each([
    [2, 3.0103],
    [4, 6.0206],
  ])('%d equal ones are %d dB louder than one', (count, rise) => {
    // Derived: 10 lg n; all work against nothing.
    const one = hear(boxWith(1));
    const all = hear(boxWith(count));
    expect(all.level - one.level).toBeCloseTo(rise, 4);
    expect(new Set(all.banks.map((level) => level.toFixed(9))).size).toBe(1);
  });

  it('a bank of two is as loud as two banks of one', () => {
    // Derived: the same fans at the same working point.
    const pair = machineOf({
      inner: 1,
      legs: [
        { from: 0, to: 1, through: [fans(fan, 2)] },
        { from: 1, to: 0, through: [] },
      ],
      assumptions: HUNG_FREELY,
    });
    expect(hear(pair).level).toBeCloseTo(hear(boxWith(2)).level, 9);
  });

  it('a stopped one adds nothing, not even its floor', () => {
    // Common sense: a fan at rest is no source. It is also a leak, which moves the other's working point to no effect.
    const { banks, level } = hear(boxWith(2), [1, 0]);
    expect(banks[1]).toBe(Number.NEGATIVE_INFINITY);
    expect(level).toBeCloseTo(banks[0] ?? Number.NaN, 9);
  });

  it('none is silence', () => {
    expect(hear(boxWith(1), [0]).level).toBe(Number.NEGATIVE_INFINITY);
    expect(levelOfEnergy(0)).toBe(Number.NEGATIVE_INFINITY);
    expect(levelOfEnergy(100)).toBeCloseTo(20, 12);
  });
});

describe('the working point', () => {
  const level = (fan: FanModel, loss: number) =>
    hear(machineOf(through([fans(fan), elementPlace(lossOfForm(1, loss))]))).level;

  it('a throttled fan is up to 6 dB louder', () => {
    // Model assumption, no source: 6 dB from a flow share of 0.15 down. The floor of 10 dB takes a little off.
    const free = level(fanWith(), 0);
    const throttled = level(fanWith(), 1e9);
    const floored = (pressure: number) => 10 * Math.log10(10 ** (pressure / 10) + 10);
    expect(free).toBeCloseTo(floored(31.5), 3);
    expect(throttled).toBeCloseTo(floored(37.5), 3);
  });

  it('a stalled fan is 3 dB louder even at a large flow share', () => {
    // Model assumption, no source: 3 dB left of the pressure peak. Invented curve whose dip ends at 0.8 of free delivery.
    const curve = curveFromPoints({ flows: [0, 0.01, 0.02, 0.024, 0.03], pressures: [40, 30, 20, 24, 0] });
    const stalling = fanWith({ curve });
    const share = (loss: number) => {
      const machine = machineOf(through([fans(stalling), elementPlace(lossOfForm(1, loss))]));
      const { state } = passOf(machine);
      const [bank] = machine.banks;
      return bank ? flowShare(machine, bank, 1, state) : Number.NaN;
    };
    expect(share(5.5e4)).toBeGreaterThan(0.5);
    expect(share(5.5e4)).toBeLessThan(0.75);
    const floored = (pressure: number) => 10 * Math.log10(10 ** (pressure / 10) + 10);
    expect(level(stalling, 5.5e4)).toBeCloseTo(floored(34.5), 3);
    expect(share(1e3)).toBeGreaterThan(0.8);
    expect(level(stalling, 1e3)).toBeCloseTo(floored(31.5), 3);
  });
});

describe('what stands next to a fan', () => {
  // Model assumption, no source for the sizes: ΔL0·exp(−g/(0.15 D)) on each side; digits computed.
  const D = 0.092;
  const fade = (gap: number) => Math.exp(-gap / (0.15 * D));

  /** Installation term of each bank of a path [dB]. */
  function terms(places: readonly Place[], assumptions = HUNG_FREELY): readonly number[] {
    return machineOf(through(places, { assumptions })).banks.map(({ installation }) => installation);
  }

  const near = (inletGap: number, outletGap = 1): BankPlace => fans(fanWith(), 1, { inletGap, outletGap });
  const empty = (depth: number) => bankPlace([null], { depth });

  it('fins 10 mm before a fan of 92 mm add 1.4535 dB', () => {
    expect(terms([obstacle('fins'), near(0.01)])[0]).toBeCloseTo(1.4535, 4);
  });

  it('fins behind it add half as much', () => {
    expect(terms([near(1, 0.01), obstacle('fins')])[0]).toBeCloseTo(1.4535 / 2, 4);
  });

  it('the panel is added to every fan', () => {
    expect(terms([obstacle('fins'), near(0.01)], ASSUMPTIONS)[0]).toBeCloseTo(3.4535, 4);
    expect(terms([near(1)], ASSUMPTIONS)[0]).toBeCloseTo(2, 9);
  });

  it('an empty place between adds its depth to the gap', () => {
    // Derived: the air sees through it. 10 mm and 25 mm: 3·exp(−0.035/0.0138) = 0.2375 dB.
    expect(terms([obstacle('fins'), empty(0.025), near(0.01)])[0]).toBeCloseTo(0.237492, 6);
    expect(terms([near(1, 0.01), empty(0.015), empty(0.01), obstacle('panel')])[0]).toBeCloseTo(
      2 * fade(0.035),
      9,
    );
  });

  it('a touching fan in series adds 3 dB to the one behind and nothing to the one before', () => {
    expect(terms([near(1, 0), near(0, 1)])).toEqual([expect.closeTo(0, 9), expect.closeTo(3, 9)]);
  });

  it('a fan in series counts at its distance, across an element without disturbance', () => {
    expect(terms([near(1), elementPlace(lossOfForm(0, 10)), near(0.01)])[1]).toBeCloseTo(3 * fade(0.01), 9);
  });

  it('what stands beyond the next fan is not heard', () => {
    const alone = terms([near(1), near(0.02)])[1];
    expect(terms([obstacle('panel'), near(1), near(0.02)])[1]).toBeCloseTo(alone ?? Number.NaN, 12);
  });

  it('the stronger of two neighbours counts whole, the weaker half, a third not at all', () => {
    expect(terms([obstacle('guard'), obstacle('fins'), near(0.01)])[0]).toBeCloseTo(
      (3 + 0.5 * 1) * fade(0.01),
      9,
    );
    expect(terms([obstacle('panel'), obstacle('guard'), obstacle('fins'), near(0.01)])[0]).toBeCloseTo(
      (3 + 0.5 * 1) * fade(0.01),
      9,
    );
  });

  it('both sides add, up to 8 dB', () => {
    expect(terms([obstacle('panel'), near(0.01, 0.01), obstacle('panel')])[0]).toBeCloseTo(6 * fade(0.01), 9);
    const crowded = [obstacle('panel'), obstacle('wall'), near(0, 0), obstacle('panel'), obstacle('wall')];
    expect(terms(crowded)[0]).toBe(8);
  });

  it('the order of the places decides, not that of the drawing of flows', () => {
    // What stands before the fan in its leg stands on its inlet.
    const inlet = terms([obstacle('guard'), near(0, 0)])[0];
    const outlet = terms([near(0, 0), obstacle('guard')])[0];
    expect(inlet).toBeCloseTo(1, 9);
    expect(outlet).toBeCloseTo(0.5, 9);
  });

  it('another leg is out of hearing', () => {
    const machine = machineOf({
      inner: 1,
      legs: [
        { from: 0, to: 1, through: [near(0, 0)] },
        { from: 1, to: 0, through: [obstacle('panel')] },
      ],
      assumptions: HUNG_FREELY,
    });
    expect(machine.banks[0]?.installation).toBe(0);
  });
});
