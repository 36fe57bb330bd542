import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { finNusselt, finState, laminarNusselt, turbulentNusselt } from '../../src/elements/fin-heat.ts';
import { finHeat, fins } from '../../src/elements/fins.ts';
import { AIR_AT_25, off, problemsOf } from './loss-of.ts';
import { atlasNusselt, otherRoutes, teertstraNusselt } from './other-heat-routes.ts';
import { asWritten, flowInto, heatAt, low, tower } from './sample-stacks.ts';

const PRANDTL = (AIR_AT_25.viscosity * AIR_AT_25.specificHeat) / AIR_AT_25.conductivity;

describe('laminar heat transfer between plates', () => {
  it('has the values of its formula, near those of a finite-difference solution', () => {
    // From memory: Stephan (1959); 15.14 and 8.427 are finite-difference solutions.
    expect(off(laminarNusselt(0.00352113, 0.71), 14.2151)).toBeLessThan(1e-4);
    expect(off(laminarNusselt(0.0352113, 0.71), 8.39572)).toBeLessThan(1e-4);
    expect(off(laminarNusselt(0.00352113, 0.71), 15.14)).toBeLessThan(0.07);
    expect(off(laminarNusselt(0.0352113, 0.71), 8.427)).toBeLessThan(0.07);
  });

  it('is bracketed by the correlation of the heat atlas', () => {
    // Published: Modelica Standard Library, kc_evenGapLaminar; within 5 % of the finite-difference solution.
    expect(off(atlasNusselt(0.00352113, 0.71), 15.6882)).toBeLessThan(1e-4);
    expect(off(atlasNusselt(0.0352113, 0.71), 8.70016)).toBeLessThan(1e-4);
  });

  it('is checked with a composite that is itself right', () => {
    // Published: Teertstra, Yovanovich & Culham; common copies have 0.644 or an exponent -0.33.
    const expected = { 100: 6.90375, 10: 2.42103, 1: 0.352496 };
    const solved = { 100: 6.819, 10: 2.467, 1: 0.355 };
    for (const [channel, nusselt] of Object.entries(expected)) {
      expect(off(teertstraNusselt(Number(channel), 0.71), nusselt)).toBeLessThan(1e-4);
    }
    for (const [channel, nusselt] of Object.entries(solved)) {
      expect(off(teertstraNusselt(Number(channel), 0.71), nusselt)).toBeLessThan(0.04);
    }
  });
});

describe('heat transfer beyond laminar flow', () => {
  it('is that of Gnielinski in a long channel', () => {
    // Computed with the library ht, Gnielinski with Petukhov's friction, Re 5000, Pr 0.71.
    expect(off(turbulentNusselt(5000, 0.71), 16.722)).toBeLessThan(1e-3);
  });

  it('changes over in proportion to the Reynolds number', () => {
    // Derived: gap 10 mm, 100 mm, 2.3 m/s at 25 °C: Re 2964.24, 14.9648 at Re 2300, 18.1823 at Re 4000.
    const reynolds = (AIR_AT_25.density * 2.3 * 0.02) / AIR_AT_25.viscosity;
    expect(off(reynolds, 2964.24)).toBeLessThan(1e-5);
    expect(off(finNusselt(2300, PRANDTL, 5), 14.9648)).toBeLessThan(1e-3);
    expect(off(finNusselt(4000, PRANDTL, 5), 18.1823)).toBeLessThan(1e-3);
    expect(off(finNusselt(reynolds, PRANDTL, 5), 16.222)).toBeLessThan(1e-3);
  });

  it('never falls as the flow rises, however short the channel', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 6, noNaN: true }),
        fc.double({ min: -1, max: 3, noNaN: true }),
        (exponent, length) => {
          const reynolds = 10 ** exponent;
          const depth = 10 ** length;
          const before = finNusselt(reynolds, 0.7, depth);
          expect(finNusselt(1.01 * reynolds, 0.7, depth)).toBeGreaterThanOrEqual(before);
        },
      ),
      { seed: 3, numRuns: 500 },
    );
  });
});

describe('the resistance of fin stacks', () => {
  it('of a tower 25 mm deep has every step right', () => {
    // Computed with Python from the same published formulas, twice independently.
    const state = heatAt(tower(0.025), 1);
    expect(off(state.velocity, 1.25)).toBeLessThan(1e-9);
    expect(off(state.reynolds, 257.76)).toBeLessThan(1e-4);
    expect(off(state.heatTransfer, 67.2699)).toBeLessThan(1e-4);
    expect(off(state.efficiency, 0.947472)).toBeLessThan(1e-4);
    expect(off(state.transferUnits, 1.33786)).toBeLessThan(1e-4);
    expect(off(state.resistance, 0.0790502)).toBeLessThan(1e-4);
  });

  it('of towers and a low stack falls with flow as computed', () => {
    // Computed with Python from the same published formulas, at 0.5, 1, 2 and 4 m/s.
    const cases = [
      { stack: tower(0.025), resistances: [0.126318, 0.0790502, 0.0567422, 0.0435459] },
      { stack: tower(0.015), resistances: [0.146723, 0.102217, 0.0776001, 0.0601873] },
      { stack: tower(0.04), resistances: [0.118703, 0.0666783, 0.0438819, 0.0324394] },
      { stack: low, resistances: [1.05789, 0.572922, 0.361515, 0.260694] },
    ];
    for (const { stack, resistances } of cases) {
      [0.5, 1, 2, 4].forEach((velocity, index) => {
        expect(off(heatAt(stack, velocity).resistance, resistances[index] ?? 0)).toBeLessThan(1e-3);
      });
    }
    expect(off(heatAt(tower(0.025, 0.0018), 2).resistance, 0.0496343)).toBeLessThan(5e-3);
    expect(off(heatAt(tower(0.025, 0.0022), 2).resistance, 0.063856)).toBeLessThan(1e-2);
  });

  it('is near a finite-difference solution of the flow in the tower', () => {
    // Computed by finite differences, simultaneously developing, isothermal plates: 25 mm at 0.5, 1, 2, 3, 4 m/s.
    const solved = [0.126344, 0.0789714, 0.0563575, 0.0477077, 0.0425481];
    [0.5, 1, 2, 3, 4].forEach((velocity, index) => {
      expect(off(heatAt(tower(0.025), velocity).resistance, solved[index] ?? 0)).toBeLessThan(0.025);
    });
  });

  it('is the same by three published routes', () => {
    for (const stack of [tower(0.025), low, tower(0.015)]) {
      for (const velocity of [0.5, 1, 2, 3, 4]) {
        const { teertstra, atlas } = otherRoutes(stack, velocity);
        const all = [teertstra, atlas, heatAt(stack, velocity).resistance];
        expect(Math.max(...all) / Math.min(...all) - 1).toBeLessThan(stack.depth === 0.015 ? 0.08 : 0.06);
      }
    }
  });

  it('does not count the warming of the air twice', () => {
    // The coefficient on the entering air put into 1 - exp(-NTU) gives 0.113849 instead of 0.0790502.
    const { countedTwice } = otherRoutes(tower(0.025), 1);
    expect(off(countedTwice, 0.113849)).toBeLessThan(1e-4);
    expect(off(heatAt(tower(0.025), 1).resistance, countedTwice)).toBeGreaterThan(0.05);
  });

  it('never beats the heat balance of the air, as the direct use of a coefficient on entering air does', () => {
    const direct = otherRoutes(low, 0.5);
    expect(off(direct.teertstraDirect, 1.04357)).toBeLessThan(1e-4);
    expect(off(direct.floor, 1.04952)).toBeLessThan(1e-4);
    for (const stack of [tower(0.025), tower(0.2), low]) {
      for (let flow = 1e-5; flow < 0.1; flow *= 1.3) {
        const { resistance } = finState(finHeat(stack), flow, AIR_AT_25);
        expect(resistance).toBeGreaterThanOrEqual(1 / (AIR_AT_25.density * flow * AIR_AT_25.specificHeat));
      }
    }
  });

  it('falls without end as flow rises, ignores its sign and is infinite without flow', () => {
    const element = fins.make(asWritten(low));
    const resistance = (flow: number) => element.finResistance?.(flow, AIR_AT_25) ?? Number.NaN;
    for (let flow = 1e-7; flow < 10; flow *= 1.05) {
      expect(resistance(1.05 * flow)).toBeLessThan(resistance(flow));
    }
    expect(resistance(-0.002)).toBe(resistance(0.002));
    expect(resistance(0)).toBe(Number.POSITIVE_INFINITY);
  });

  it('is halved by two stacks that each take half of the flow', () => {
    const whole = finState(finHeat(tower(0.025)), flowInto(tower(0.025), 1), AIR_AT_25).resistance;
    const half = { ...tower(0.025), face: { width: 0.12, height: 0.06 } };
    expect(off(finState(finHeat(half), flowInto(half, 1), AIR_AT_25).resistance, 2 * whole)).toBeLessThan(
      1e-12,
    );
  });
});

describe('fins as written', () => {
  const written = { fins: 'tower', face: '92 x 92 mm', depth: '25 mm', pitch: '2 mm', fin: '0.4 mm' };

  it('do not round the number of channels', () => {
    // Derived: 93/2 = 46.5 channels of 1.6 x 92 mm.
    const element = fins.make({ ...written, face: '92 x 93 mm' });
    expect(off(element.freeArea ?? 0, 46.5 * 0.0016 * 0.092)).toBeLessThan(1e-12);
    expect(element.disturbance).toBe('fins');
  });

  it('assume aluminium alloy and pipe rows 20 mm apart', () => {
    const plain = fins.make(written).finResistance?.(0.01, AIR_AT_25);
    const spelled = fins.make({ ...written, conductivity: '200 W/(m K)', pipes: '10 mm' });
    expect(spelled.finResistance?.(0.01, AIR_AT_25)).toBe(plain);
    const copper = fins.make({ ...written, conductivity: '390 W/(m K)' });
    expect(copper.finResistance?.(0.01, AIR_AT_25)).toBeLessThan(plain ?? 0);
  });

  it('say when a low stack is so open that its side walls count', () => {
    expect(fins.make(asWritten(low)).remarks).toHaveLength(1);
    expect(fins.make(written).remarks).toEqual([]);
  });

  it('refuse geometry that cannot be', () => {
    expect(problemsOf(fins, { ...written, pitch: '0.3 mm' }).join()).toMatch(/^pitch: /);
    expect(problemsOf(fins, { ...written, pipe: '6 mm' }).join()).toMatch(/^pipes: /);
    const both = { ...written, pipe: '6 mm', cell: '20 x 25 mm', pipes: '10 mm' };
    expect(problemsOf(fins, both).join()).toMatch(/^pipes: /);
    expect(problemsOf(fins, { ...written, pipe: '6 mm', cell: '5 x 25 mm' }).join()).toMatch(/^cell: /);
    expect(problemsOf(fins, { ...asWritten(low), count: 1 }).join()).toMatch(/^count: /);
    expect(problemsOf(fins, { ...asWritten(low), fin: '3 mm' }).join()).toMatch(/^fin: /);
    expect(problemsOf(fins, { ...written, fins: 'wing' })).not.toEqual([]);
  });
});
