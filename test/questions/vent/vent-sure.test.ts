import { describe, expect, it } from 'vitest';
import type { Band } from '../../../src/bands/band.ts';
import type { Element } from '../../../src/elements/element.ts';
import { perforatedElement } from '../../../src/elements/perforated.ts';
import { UNCERTAINTIES, type Uncertainties } from '../../../src/enclosure/uncertainties.ts';
import { responder, surenessOf } from '../../../src/questions/compare/sureness.ts';
import { operatingBench } from '../../../src/questions/operating-state.ts';
import { ventAnswer } from '../../../src/questions/vent/vent.ts';
import { machineWith, ventState } from '../../../src/questions/vent/vent-state.ts';
import { curveSureness, sureAsItIs, ventSure } from '../../../src/questions/vent/vent-sure.ts';
import type { VentTask } from '../../../src/questions/vent/vent-task.ts';
import { newDraw, statedAt, type Truth, truthOf } from '../../bands/truth.ts';
import { seeded } from '../../search/random.ts';
import { ventTaskWith } from './vent-box.ts';

const ROUND = { perforated: '60 x 40 mm', hole: '5 mm', web: '2 mm', sheet: '1 mm' };
/** Such that the limit holds about as often as not. */
const POWER = 105;
const task = ventTaskWith(ROUND, {}, POWER);
const element = perforatedElement(task.sheet);

/** The box with nothing off but what is named. */
function offBy(changes: Partial<Uncertainties>, of: VentTask = task): VentTask {
  const none = { usual: 0, of: {} };
  const uncertainties: Uncertainties = {
    ...UNCERTAINTIES,
    room: 0,
    heat: none,
    fixed: none,
    loss: none,
    skin: none,
    recirculation: none,
    curve: { measured: 0, datasheet: 0, box: 0, of: {} },
    slowFan: 0,
    fanPower: 0,
    ...changes,
  };
  return { ...of, enclosure: { ...of.enclosure, uncertainties } };
}

function width(band: Band | undefined): number {
  return band ? band.high - band.low : Number.NaN;
}

describe('bands of an opening', () => {
  it('have no width where nothing is off', () => {
    const sure = ventSure(offBy({}), element);
    const state = ventState(task, element);
    expect(width(sure?.flow)).toBeCloseTo(0, 9);
    expect(width(sure?.margin)).toBeCloseTo(0, 4);
    expect(sure?.flow.expected).toBeCloseTo(state?.flow ?? Number.NaN, 9);
    expect(sure?.margin?.expected).toBeCloseTo(state?.margin ?? Number.NaN, 4);
    expect(sure?.level.expected).toBeCloseTo(state?.level ?? Number.NaN, 6);
  });

  it('end where a loss ends that alone may be off', () => {
    // Derived: one thing that is off is met at its ends, here the loss itself times and over 1.4.
    const sure = ventSure(offBy({ loss: { usual: 0, of: { vent: 0.4 } } }), element);
    const times = (factor: number): Element => ({
      ...element,
      viscous: element.viscous * factor,
      inertial: element.inertial * factor,
      faint: element.faint * factor,
    });
    const [more, less] = [1.4, 1 / 1.4].map((factor) => ventState(task, times(factor)));
    expect(element.law).toBeUndefined();
    expect(width(sure?.flow)).toBeGreaterThan(1e-4);
    expect((sure?.flow.low ?? 0) / (more?.flow ?? 1)).toBeCloseTo(1, 6);
    expect((sure?.flow.high ?? 0) / (less?.flow ?? 1)).toBeCloseTo(1, 6);
    expect(sure?.margin?.low).toBeCloseTo(more?.margin ?? Number.NaN, 3);
    expect(sure?.margin?.high).toBeCloseTo(less?.margin ?? Number.NaN, 3);
  });

  it('hold nine truths of ten, and limits hold as often as told', () => {
    // Source: propagation of distributions, JCGM 101; computed with the ordinary solver on changed data.
    const DRAWS = 300;
    const stated = statedAt(task.enclosure, task.build, task.duty, Float64Array.of(1));
    const sure = sureAsItIs(task);
    if (!stated || !sure?.margin || sure.holding === undefined) throw new Error('no solution as stated');
    const random = seeded(11);
    const truths = Array.from({ length: DRAWS }, () => truthOf(stated, newDraw(random))).filter(
      (truth) => truth !== null,
    );
    const share = (holds: (truth: Truth) => boolean): number => truths.filter(holds).length / truths.length;
    const inside = (value: number, { low, high }: Band): boolean => value >= low && value <= high;
    const { margin, level, holding } = sure;
    // Three and a half standard deviations of a share of so many draws.
    const off = (probability: number): number => 3.5 * Math.sqrt((probability * (1 - probability)) / DRAWS);
    expect(Math.abs(share(({ margins }) => inside(margins[0] ?? 0, margin)) - 0.9)).toBeLessThan(off(0.9));
    expect(Math.abs(share(({ energy }) => inside(10 * Math.log10(energy), level)) - 0.9)).toBeLessThan(
      off(0.9),
    );
    expect(holding).toBeGreaterThan(0.2);
    expect(holding).toBeLessThan(0.8);
    expect(Math.abs(share(({ margins }) => (margins[0] ?? 0) >= 0) - holding)).toBeLessThan(off(holding));
  });

  it('are those that a comparison tells of the same box at the same speeds, less the asked margin', () => {
    const asked = { ...task, enclosure: { ...task.enclosure, margin: 3 } };
    const { enclosure, build, duty } = asked;
    const state = operatingBench(machineWith(asked, element), duty)([1]);
    const variant = { name: 'one', enclosure, build, stack: [], needs: '' };
    const [compared] = surenessOf([responder(variant, duty)(state)], undefined);
    const sure = ventSure(asked, element);
    expect(sure?.level).toEqual(compared?.level);
    expect(sure?.holding).toBe(compared?.holding);
    expect(sure).toEqual(sureAsItIs(asked));
    expect((sure?.margin?.high ?? 0) + 3).toBeCloseTo(ventSure(task, element)?.margin?.high ?? 0, 9);
  });

  it('come with an answer and each point of its curve, without limits where there are none', () => {
    const answer = ventAnswer({ ...task, process: 'drill', hole: 0.005 });
    if (typeof answer === 'string') throw new Error(answer);
    const [best] = answer.candidates;
    expect(answer.sure.best?.flow.expected).toBeCloseTo(best?.flow ?? Number.NaN, 9);
    expect(answer.sure.asItIs?.flow.expected).toBeCloseTo(answer.now?.flow ?? Number.NaN, 9);
    const points = answer.curve.points.slice(10, 13);
    const told = curveSureness(answer.task, answer.family, points);
    expect(told.map((each) => each?.flow.expected.toPrecision(6))).toEqual(
      points.map(({ flow }) => flow.toPrecision(6)),
    );
    const bare = ventSure(ventTaskWith(ROUND), element);
    expect([bare?.margin, bare?.holding]).toEqual([undefined, undefined]);
    expect(width(bare?.flow)).toBeGreaterThan(0);
  });
});
