import { describe, expect, it } from 'vitest';
import { bend, roundedBendLoss, SHARP_BEND_LOSS } from '../../src/elements/bend.ts';
import { givenLoss } from '../../src/elements/given-loss.ts';
import { guard, guardLoss } from '../../src/elements/guard.ts';
import { louvre } from '../../src/elements/louvre.ts';
import { orifice } from '../../src/elements/orifice.ts';
import { passage } from '../../src/elements/passage.ts';
import { slot } from '../../src/elements/slot.ts';
import { contractionLoss, expansionLoss, step } from '../../src/elements/step.ts';
import { AIR_AT_25, flowAt, lossOf, off, problemsOf } from './loss-of.ts';

describe('a given loss', () => {
  it('in velocity heads has b = ρK/(2A²)', () => {
    // Derived: 1.2·2.85/(2·0.006²) = 47500 Pa·s²/m⁶.
    const element = givenLoss.make({ given: 'loss', K: 2.85, area: '60 cm²' });
    expect(off(element.inertial * 1.2, 47_500)).toBeLessThan(1e-9);
    expect(element.ventFace).toBeUndefined();
    expect(givenLoss.make({ given: 'loss', K: 2.85, area: '60 cm²', vent: '70 cm²' }).ventFace).toBeCloseTo(
      0.007,
      12,
    );
  });

  it('in velocity heads has a thousandth of them more, linear, at 1 m/s', () => {
    // Model assumption: a = 1e-3·b·Q_ref with Q_ref at 1 m/s, here on 60 cm².
    const element = givenLoss.make({ given: 'loss', K: 2.85, area: '60 cm²' });
    expect(off(element.faint * 1.2, 1e-3 * 47_500 * 0.006)).toBeLessThan(1e-9);
    expect(off(lossOf(element, 0.006), 1.001 * 47_500 * 0.006 ** 2)).toBeLessThan(1e-9);
  });

  it('as a·Q + b·Q² holds at 1.2 kg/m³, the linear part going with viscosity', () => {
    // Derived: roots of 200·Q + 1e5·Q² = 10 and 50·Q + 3e5·Q² = 10; side by side they add.
    const first = givenLoss.make({ given: 'loss', a: '200 Pa s/m³', b: '1e5 Pa s²/m⁶' });
    const second = givenLoss.make({ given: 'loss', a: '50 Pa s/m³', b: '3e5 Pa s²/m⁶' });
    expect(
      off(
        flowAt((flow) => lossOf(first, flow), 10),
        0.00904988,
      ),
    ).toBeLessThan(1e-6);
    expect(
      off(
        flowAt((flow) => lossOf(second, flow), 10),
        0.00569077,
      ),
    ).toBeLessThan(1e-6);
    const thin = lossOf(first, 0.01, { density: 0.6, viscosity: 3.62e-5 });
    expect(off(thin, 2 * 200 * 0.01 + 0.5 * 1e5 * 1e-4)).toBeLessThan(1e-9);
  });

  it('side by side with another quadratic one has b^-1/2 = Σ b^-1/2', () => {
    // Derived: 1e5 beside 4e5 is 44444.4; at so high a pressure the small linear part does not count.
    const pressure = 1e13;
    const heads = (b: number) => givenLoss.make({ given: 'loss', K: (2 * b) / 1.2, area: '1 m²' });
    const through = (b: number) => 1e5 * flowAt((share) => lossOf(heads(b), 1e5 * share), pressure);
    expect(off(pressure / (through(1e5) + through(4e5)) ** 2, 44_444.4)).toBeLessThan(2e-6);
  });

  it('is given one way only', () => {
    const wrong = [
      { K: 1 },
      { area: '60 cm²' },
      { a: '200 Pa s/m³' },
      { b: '1e5 Pa s²/m⁶' },
      { K: 1, a: '200 Pa s/m³' },
      { K: 1, area: '60 cm²', b: '1e5 Pa s²/m⁶' },
      {},
    ];
    for (const fields of wrong)
      expect(problemsOf(givenLoss, { given: 'loss', ...fields }).join()).toContain('either K');
    expect(problemsOf(givenLoss, { given: 'loss', K: 0, area: '60 cm²' }).join()).toMatch(/^K: /);
  });
});

describe('an opening with a known discharge coefficient', () => {
  it('passes Cd·A·√(2Δp/ρ)', () => {
    // Derived: 30 mm, Cd 0.65, 10 Pa, 1.2 kg/m³; the small linear part takes 1e-4 of it.
    const hole = orifice.make({ orifice: '30 mm', discharge: 0.65 });
    expect(
      off(
        flowAt((flow) => lossOf(hole, flow), 10),
        0.00187573,
      ),
    ).toBeLessThan(3e-4);
  });

  it('leaks round a fan without a gasket', () => {
    // Derived: 1 mm round 480 mm, 20 Pa, Cd 0.6 (from memory), air of 25 °C: 1.67403e-3 m³/s.
    const leak = slot.make({ slot: '480 x 1 mm', discharge: 0.6 });
    expect(
      off(
        flowAt((flow) => lossOf(leak, flow, AIR_AT_25), 20),
        1.67403e-3,
      ),
    ).toBeLessThan(1e-3);
    expect(
      off(
        flowAt((flow) => lossOf(leak, flow, AIR_AT_25), 5),
        1.67403e-3 / 2,
      ),
    ).toBeLessThan(1e-3);
  });

  it('refuses a coefficient that cannot be', () => {
    expect(problemsOf(orifice, { orifice: '30 mm', discharge: 1.1 }).join()).toMatch(/^discharge: /);
    expect(problemsOf(orifice, { orifice: '30 mm', discharge: 0.6, sheet: '1 mm' }).join()).toContain(
      'either sheet',
    );
    expect(problemsOf(orifice, { orifice: '30 mm' }).join()).toContain('either sheet');
  });
});

describe('a slot', () => {
  it('is a sharp edge between two large spaces', () => {
    // Derived: hydraulic diameter 2·90·2/92 mm; depth equal to it: Cd 0.757324 (formula of Idelchik, diagram 4-12).
    const hydraulic = (2 * 90 * 2) / 92;
    const element = slot.make({ slot: '90 x 2 mm', depth: `${hydraulic} mm` });
    expect(off((element.inertial * 2 * (90e-3 * 2e-3) ** 2) ** -0.5, 0.757324)).toBeLessThan(1e-5);
    expect(off(element.ventFace ?? 0, 1.8e-4)).toBeLessThan(1e-12);
  });

  it('says when it is a duct', () => {
    expect(slot.make({ slot: '90 x 2 mm', depth: '50 mm' }).remarks[0]).toContain('duct');
    expect(slot.make({ slot: '90 x 2 mm' }).remarks).toEqual([]);
  });
});

describe('a guard of round bars', () => {
  it('loses what the published formula says', () => {
    // Published: library fluids 1.0.22, round bars: 0.147 heads at φ 0.85, 0.097 at 0.90; 2.205 Pa at 5 m/s.
    expect(guardLoss(0.85)).toBeCloseTo(0.147, 12);
    expect(guardLoss(0.9)).toBeCloseTo(0.097, 12);
    const element = guard.make({ guard: '80 x 80 mm', open: '85 %' });
    expect(off(element.inertial * 1.2 * (5 * 0.0064) ** 2, 2.205)).toBeLessThan(1e-9);
    expect(off(lossOf(element, 5 * 0.0064), 2.205)).toBeLessThan(3e-4);
    expect(element.disturbance).toBe('guard');
  });

  it('is no screen', () => {
    expect(guard.make({ guard: '80 mm', open: '60 %' }).remarks[0]).toContain('screen');
    expect(guard.make({ guard: '80 mm', open: '88 %' }).remarks).toEqual([]);
  });
});

describe('a louvre', () => {
  it('loses 3.3 heads of the velocity in its free area', () => {
    // Model assumption: discharge coefficient 0.55 ± 0.08, 1/0.55² = 3.306.
    const element = louvre.make({ louvre: '160 x 80 mm', open: '50 %' });
    expect(off(element.inertial * 2 * 0.0064 ** 2, 0.55 ** -2)).toBeLessThan(0.005);
    expect(element.freeArea).toBeCloseTo(0.0064, 12);
    expect(element.ventFace).toBeCloseTo(0.0128, 12);
  });
});

describe('a sudden change of area', () => {
  it('has the losses of the handbook', () => {
    // Published: Modelica Standard Library after Idelchik diagrams 4-1 and 4-9, at area ratio 0.3 and others.
    expect(off(expansionLoss(0.3), 0.49)).toBeLessThan(1e-5);
    expect(off(contractionLoss(0.3), 0.382643)).toBeLessThan(1e-5);
    expect(off(contractionLoss(0.1), 0.462011)).toBeLessThan(1e-5);
    expect(off(contractionLoss(0.9), 0.088914)).toBeLessThan(1e-5);
  });

  it('refers both to the velocity in the narrow part', () => {
    const wider = step.make({ step: '60 x 60 mm', to: '60 x 200 mm' });
    const narrower = step.make({ step: '60 x 200 mm', to: '60 x 60 mm' });
    expect(off(wider.inertial * 2 * 0.0036 ** 2, 0.49)).toBeLessThan(1e-9);
    expect(off(narrower.inertial * 2 * 0.0036 ** 2, 0.382643)).toBeLessThan(1e-5);
    expect(problemsOf(step, { step: '60 mm', to: '60 x 60 mm' }).join()).toMatch(/^to: /);
  });
});

describe('a bend', () => {
  it('that is sharp lies between the published values', () => {
    // Published: library fluids 1.0.22, 90° mitre at Re 1e5: Miller 1.17573, Rennels 1.20208.
    expect(off(SHARP_BEND_LOSS, 1.17573)).toBeLessThan(0.1);
    expect(off(SHARP_BEND_LOSS, 1.20208)).toBeLessThan(0.1);
  });

  it('that is rounded has the published values', () => {
    // Published: library fluids 1.0.22, bend_rounded after Rennels, f 0.02: 0.340404 at r/D 1, 0.242592 at 1.5; Ito and
    // Crane give 0.294 and 0.326 at r/D 1.
    expect(off(roundedBendLoss(1), 0.340404)).toBeLessThan(1e-5);
    expect(off(roundedBendLoss(1.5), 0.242592)).toBeLessThan(1e-5);
    expect(off(roundedBendLoss(1), 0.294235)).toBeLessThan(0.2);
  });

  it('never loses more rounded than sharp', () => {
    expect(roundedBendLoss(0.1)).toBe(SHARP_BEND_LOSS);
    const round = bend.make({ bend: 'rounded', face: '60 x 60 mm', radius: '60 mm' });
    expect(off(round.inertial * 2 * 0.0036 ** 2, 0.340404)).toBeLessThan(1e-5);
    expect(problemsOf(bend, { bend: 'rounded', face: '60 mm' }).join()).toMatch(/^radius: /);
    expect(problemsOf(bend, { bend: 'sharp', face: '60 mm', radius: '60 mm' }).join()).toContain('radius');
  });
});

describe('an open passage', () => {
  it('loses next to nothing', () => {
    const element = passage.make({ passage: '92 x 92 mm' });
    expect(lossOf(element, 0.02)).toBeLessThan(0.002);
    expect(lossOf(element, 0.02)).toBeGreaterThan(0);
  });
});
