import { describe, expect, it } from 'vitest';
import { airAt } from '../../../src/air/air.ts';
import { perforatedElement } from '../../../src/elements/perforated.ts';
import { holdsLimits } from '../../../src/questions/vent/holds-limits.ts';
import { type VentAnswer, ventAnswer } from '../../../src/questions/vent/vent.ts';
import { kneeOf } from '../../../src/questions/vent/vent-curve.ts';
import { openState, ventState } from '../../../src/questions/vent/vent-state.ts';
import type { VentTask } from '../../../src/questions/vent/vent-task.ts';
import { ventTask } from '../../../src/questions/vent/vent-wishes.ts';
import { ZERO } from '../../enclosure/hand-made.ts';
import { FAN, ventTaskWith } from './vent-box.ts';

const ROUND = { perforated: '120 x 60 mm', hole: '5 mm', web: '2 mm', sheet: '1 mm' };
const { density, viscosity } = airAt({ pressure: 101_325, humidityRatio: 0 }, 25 + ZERO);

function found(task: VentTask): VentAnswer {
  const answer = ventAnswer(task);
  if (typeof answer === 'string') throw new Error(answer);
  return answer;
}

/**
 * Flow of the box by hand [m³/s]: the fan's parabola, p0·(1 - (Q/Q0)²) at 1.2 kg/m³, meets a·Q + b·Q² of round holes.
 *
 * Derived; the loss of holes that come from a face of open share f: 0.5·(1-f)^0.75 + τ·(1-f)^0.375 + 1 heads of the
 * velocity in the hole, τ = (2.4-l)·10^-(0.25 + 0.535·l⁸/(0.05+l⁷)) (Idelchik, Handbook of Hydraulic Resistance, diagrams
 * 4-11 and 4-12, from memory), and (12π + 64·l)/Re heads of creeping (Sampson, Poiseuille).
 */
function flowByHand(free: number, face: number, hole: number, thickness: number): number {
  const f = free / face;
  const l = thickness / hole;
  const tau = (2.4 - l) * 10 ** -(0.25 + (0.535 * l ** 8) / (0.05 + l ** 7));
  const heads = 0.5 * (1 - f) ** 0.75 + tau * (1 - f) ** 0.375 + 1;
  const shutOff = (FAN.shutOff * density) / 1.2;
  const a = ((12 * Math.PI + 64 * l) * viscosity) / (2 * hole * free);
  const b = (density * heads) / (2 * free * free) + shutOff / FAN.freeDelivery ** 2;
  return (-a + Math.sqrt(a * a + 4 * b * shutOff)) / (2 * b);
}

describe('flow against free area', () => {
  const task = ventTaskWith(ROUND);
  const answer = found({ ...task, hole: 0.005, process: 'drill' });

  it('is that of the fan meeting the loss of the holes', () => {
    const face = 0.12 * 0.06;
    expect(answer.open.flow / FAN.freeDelivery).toBeCloseTo(1, 3);
    const within = answer.curve.points.filter(({ area }) => area <= answer.family.fieldFull);
    expect(within.length).toBeGreaterThan(5);
    for (const { area, flow } of within)
      expect(flow / flowByHand(area, face, 0.005, 0.001)).toBeCloseTo(1, 6);
  });

  it('keeps what is asked at the area that is told, and no less', () => {
    const { keepsFlow = 0 } = answer.curve;
    const face = Math.max(0.12 * 0.06, keepsFlow / answer.family.mostOpen);
    expect(flowByHand(keepsFlow, face, 0.005, 0.001) / answer.open.flow).toBeCloseTo(0.9, 6);
  });

  it('has a knee where theory has it', () => {
    // Derived: of x/√(1+x²) up to x = 7 the slope is that of the line to its end where (1+x²)^1.5 = 7/f(7).
    const flow = (x: number): number => x / Math.sqrt(1 + x * x);
    const expected = Math.sqrt((7 / flow(7)) ** (2 / 3) - 1);
    expect(kneeOf(flow, 7)).toBeCloseTo(expected, 2);
  });
});

describe('the least area for limits', () => {
  it('is that at which the air just stays cool enough at full speed', () => {
    // Derived: P = ρ·cp·Q·ΔT with the air as it enters; cp of dry air 1006 J/(kg K) as in the air sheet of ASHRAE.
    const power = 300;
    const answer = found(ventTaskWith(ROUND, { hole: 0.005, process: 'drill' }, power));
    const { holdsLimits: area = 0 } = answer.curve;
    const { specificHeat } = airAt({ pressure: 101_325, humidityRatio: 0 }, 25 + ZERO);
    const needed = power / (density * specificHeat * 20);
    const face = Math.max(0.12 * 0.06, area / answer.family.mostOpen);
    // The fan moves warm air, so the flow that enters is that of the fan less some 6 % of mass.
    expect(needed / flowByHand(area, face, 0.005, 0.001)).toBeGreaterThan(0.9);
    expect(needed / flowByHand(area, face, 0.005, 0.001)).toBeLessThan(1);
    const state = ventState(ventTaskWith(ROUND), perforatedElement(ventTaskWith(ROUND).sheet));
    expect(state?.subject).toBeUndefined();
  });

  it('is none where no opening would do', () => {
    expect(found(ventTaskWith(ROUND, {}, 5000)).curve.holdsLimits).toBeUndefined();
  });
});

describe('patterns', () => {
  const task = ventTaskWith(ROUND, { keep: 0.6 });
  const { candidates, open } = found(task);

  it('come in every shape and arrangement, those that do what is asked first and with the least cutting', () => {
    const kinds = candidates.map(({ sheet }) => `${sheet.shape} ${sheet.pattern}`);
    expect(new Set(kinds).size).toBe(8);
    const doing = candidates.filter(({ reaches }) => reaches);
    expect(doing.length).toBeGreaterThan(3);
    expect(candidates.slice(0, doing.length)).toEqual(doing);
    for (const { share } of doing) expect(share).toBeGreaterThanOrEqual(task.keep);
    const work = doing.map((each) => each.work);
    expect(work).toEqual([...work].sort((one, other) => one - other));
  });

  it('have the widest web that does: a tenth of a millimetre more falls short', () => {
    for (const { sheet, reaches } of candidates.filter((each) => each.reaches)) {
      const share = (web: number): number =>
        (ventState(task, perforatedElement({ ...sheet, web }))?.flow ?? 0) / open.flow;
      expect([reaches, share(sheet.web) >= 0.6, share(sheet.web + 1e-4) >= 0.6]).toEqual([true, true, false]);
    }
  });

  it('are drilled round', () => {
    const shapes = found({ ...task, process: 'drill' }).candidates.map(({ sheet }) => sheet.shape);
    expect(new Set(shapes)).toEqual(new Set(['round']));
  });

  it('leave fingers out of reach of the blades unless a size is asked for', () => {
    // Rows of ISO 13857, table 4 (from memory): round holes up to 8 mm ask for 5 mm, up to 10 mm for 20 mm.
    const near = found({ ...task, process: 'drill', blades: 0.005 }).candidates;
    expect(Math.max(...near.map(({ sheet }) => sheet.hole))).toBeLessThanOrEqual(0.008);
    const wished = found({ ...task, process: 'drill', blades: 0.005, hole: 0.01 }).candidates;
    expect(wished[0]?.warnings).toContain('finger reach');
  });

  it('warn of holes and webs below the sheet, and of holes that may whistle', () => {
    const thick = { ...ROUND, sheet: '3 mm', hole: '2 mm', web: '2 mm' };
    const small = found(ventTaskWith(thick, { hole: 0.002, leastWeb: 0.002 }));
    expect(small.candidates[0]?.warnings).toEqual(
      expect.arrayContaining(['hole below sheet', 'web below sheet']),
    );
    expect(small.now?.warnings).toEqual(expect.arrayContaining(['hole below sheet', 'web below sheet']));
    const plain = found(ventTaskWith(ROUND));
    expect(plain.now?.warnings).not.toContain('hole below sheet');
    // 8 m/s in the holes by assumption; so many at most through so few.
    const tight = found(ventTaskWith({ ...ROUND, perforated: '30 x 20 mm' }));
    expect(
      tight.now && tight.now.holeVelocity > task.enclosure.assumptions.sound.opening.whistleVelocity,
    ).toBe(tight.now?.warnings.includes('whistling'));
  });

  it('for limits are those with which the limits hold, and a little less area breaks them', () => {
    const limited = ventTaskWith(ROUND, { aim: 'limits' }, 300);
    const [best] = found(limited).candidates;
    if (!best) throw new Error('there is a pattern');
    expect(best.reaches).toBe(true);
    expect(holdsLimits(limited, perforatedElement(best.sheet))).toBe(true);
    expect(holdsLimits(limited, perforatedElement({ ...best.sheet, web: best.sheet.web + 1e-4 }))).toBe(
      false,
    );
  });
});

describe('wishes', () => {
  const { enclosure, build } = ventTaskWith(ROUND, {}, 60);
  const none = { speed: undefined, keep: undefined, field: undefined, sheet: undefined, hole: undefined };
  const wishes = {
    ...none,
    web: undefined,
    blades: undefined,
    duty: undefined,
    aim: 'flow',
    process: 'laser',
  } as const;

  it('take from the drawing what is not said', () => {
    const task = ventTask(enclosure, build, { ...wishes, opening: undefined });
    if (typeof task === 'string') throw new Error(task);
    expect([task.place, task.sheet.perforated.width, task.leastWeb, task.keep]).toEqual([
      0, 0.12, 0.001, 0.95,
    ]);
    expect(task.stands).toBe(true);
  });

  it('need the name of one of several openings, and a field and a sheet where there is none yet', () => {
    const two = { ...enclosure, places: [...enclosure.places, ...enclosure.places.slice(0, 1)] };
    const legs = two.legs.map((leg, index) => (index === 1 ? { ...leg, through: [...leg.through, 2] } : leg));
    expect(ventTask({ ...two, legs }, [0, 0, 0], { ...wishes, opening: undefined })).toContain(
      'which opening?',
    );
    expect(ventTask(enclosure, build, { ...wishes, opening: 'vnet' })).toContain('did you mean "vent"?');
  });
});

it('says why there is no answer', () => {
  expect(ventAnswer(ventTaskWith(ROUND, { speeds: [Float64Array.of(0)] }))).toContain('no air passes');
  expect(ventAnswer(ventTaskWith({ ...ROUND, sheet: '30 mm' }))).toContain('no hole that may be made');
});

it('takes nothing in the way for what it is', () => {
  const open = openState(ventTaskWith(ROUND));
  expect((open?.flow ?? 0) / FAN.freeDelivery).toBeCloseTo(1, 3);
});
