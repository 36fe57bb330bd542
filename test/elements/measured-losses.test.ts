import { describe, expect, it } from 'vitest';
import { filter, foamLoss } from '../../src/elements/filter.ts';
import { fitLoss } from '../../src/elements/fitted-loss.ts';
import { points } from '../../src/elements/points.ts';
import { powerLaw } from '../../src/elements/power-law.ts';
import { flowAt, lossOf, off, problemsOf } from './loss-of.ts';

const flows = [0.005, 0.01, 0.015, 0.02];

describe('a fit to measured points', () => {
  it('returns the coefficients that made the points', () => {
    // Derived: 100·Q + 24000·Q².
    const { linear, quadratic, misfit } = fitLoss(flows, [1.1, 3.4, 6.9, 11.6]);
    expect(off(linear, 100)).toBeLessThan(1e-9);
    expect(off(quadratic, 24_000)).toBeLessThan(1e-9);
    expect(misfit).toBeLessThan(1e-9);
  });

  it('weighs relative distances', () => {
    // Computed with numpy.linalg.lstsq, rows divided by Δp; unweighted it would be 109.419 and 23354.8.
    const { linear, quadratic } = fitLoss(flows, [1.2, 3.3, 7, 11.5]);
    expect(off(linear, 124.104)).toBeLessThan(1e-5);
    expect(off(quadratic, 22_206.1)).toBeLessThan(1e-5);
  });

  it('has no negative terms', () => {
    // Computed with scipy.optimize.nnls 1.17, rows divided by Δp.
    const steep = fitLoss(flows, [1, 6, 17, 36]);
    expect(steep.linear).toBe(0);
    expect(off(steep.quadratic, 54946.4421)).toBeLessThan(1e-6);
    const flat = fitLoss(flows, [5, 8, 10, 11.5]);
    expect(off(flat.linear, 700.40553)).toBeLessThan(1e-6);
    expect(flat.quadratic).toBe(0);
  });
});

describe('an element of measured points', () => {
  const table = { points: 'table', flow: '5 10 15 20 L/s', pressure: '1.2 3.3 7.0 11.5 Pa' };

  it('passes near its points', () => {
    const element = points.make(table);
    [1.2, 3.3, 7, 11.5].forEach((pressure, index) => {
      expect(off(lossOf(element, flows[index] ?? 0), pressure)).toBeLessThan(0.05);
    });
    expect(element.remarks).toEqual([]);
  });

  it('stays strictly increasing where only the quadratic term is left, and says how far it misses', () => {
    const element = points.make({ ...table, pressure: '1 6 17 36 Pa' });
    expect(element.viscous).toBe(0);
    expect(element.faint).toBeGreaterThan(0);
    expect(element.remarks[0]).toMatch(/by \d+ %/);
  });

  it('needs as many pressures as flows, and two of them', () => {
    expect(problemsOf(points, { ...table, pressure: '1 2 Pa' }).join()).toMatch(
      /^pressure: found 4 flows and 2/,
    );
    expect(problemsOf(points, { ...table, flow: '5 L/s', pressure: '1 Pa' }).join()).toMatch(
      /^flow: found fewer/,
    );
    expect(problemsOf(points, { ...table, flow: '0 10 15 20 L/s' }).join()).toMatch(/^flow: .*more than 0/);
  });
});

describe('a power law', () => {
  const law = (pressure: number) =>
    powerLaw.make({ power: 'law', exponent: 1.8, pressure: `${pressure} Pa`, flow: '1 m³/s' });

  it('passes through its point with its exponent', () => {
    const element = powerLaw.make({ power: 'law', exponent: 1.8, pressure: '12 Pa', flow: '20 m³/h' });
    expect(off(lossOf(element, 20 / 3600), 12)).toBeLessThan(1e-12);
    expect(off(lossOf(element, 40 / 3600), 12 * 2 ** 1.8)).toBeLessThan(1e-12);
  });

  it('side by side with another has R^(-1/n) = Σ R^(-1/n)', () => {
    // Derived: n 1.8, 2e4 beside 5e4 is 8572.22.
    const flow = [2e4, 5e4].reduce((sum, R) => sum + flowAt((q) => lossOf(law(R), q), 5000), 0);
    expect(off(5000 / flow ** 1.8, 8572.22)).toBeLessThan(1e-6);
  });

  it('becomes viscous as n nears 1 and inertial as it nears 2', () => {
    // Derived: dimensional analysis, Δp ~ ρ^(n-1)·µ^(2-n).
    const thick = { density: 1.2, viscosity: 3.62e-5 };
    const dense = { density: 2.4, viscosity: 1.81e-5 };
    expect(off(lossOf(law(10), 1, thick), 10 * 2 ** 0.2)).toBeLessThan(1e-12);
    expect(off(lossOf(law(10), 1, dense), 10 * 2 ** 0.8)).toBeLessThan(1e-12);
  });

  it('refuses exponents that no loss has', () => {
    const fields = { power: 'law', pressure: '12 Pa', flow: '20 m³/h' };
    expect(problemsOf(powerLaw, { ...fields, exponent: 2 }).join()).toMatch(/^exponent: /);
    expect(problemsOf(powerLaw, { ...fields, exponent: 0.9 }).join()).toMatch(/^exponent: /);
    expect(problemsOf(powerLaw, { ...fields, exponent: 1 })).toEqual([]);
  });
});

describe('a filter', () => {
  const foam = { filter: 'foam', face: '100 x 100 mm', thickness: '12.7 mm', pores: '20 ppi' };

  it('of foam loses what the report measured', () => {
    // Published: report of 1964 on reticulated polyurethane foam, half an inch at 350 ft/min: 0.045 inH₂O with 20 and
    // 1.0 inH₂O with 100 pores per inch.
    expect(off(lossOf(filter.make(foam), 1.778 * 0.01), 11.2)).toBeLessThan(0.02);
    expect(off(lossOf(filter.make({ ...foam, pores: '100 ppi' }), 1.778 * 0.01), 249.089)).toBeLessThan(1e-5);
  });

  it('of foam between the two follows a power of the pore count', () => {
    // Derived: logarithmic interpolation, exponent 1.92682: 24.5 Pa with 30, 53.5 Pa with 45 pores per inch.
    expect(off(foamLoss(30 / 0.0254, 0.0127), 24.5)).toBeLessThan(2e-3);
    expect(off(foamLoss(45 / 0.0254, 0.0127), 53.5)).toBeLessThan(2e-3);
    expect(off(foamLoss(45 / 0.0254, 0.00254), 53.5 / 5)).toBeLessThan(2e-3);
  });

  it('of foam says when its pores were not tested', () => {
    expect(filter.make(foam).remarks).toEqual([]);
    expect(filter.make({ ...foam, pores: '100 ppi' }).remarks).toEqual([]);
    expect(filter.make({ ...foam, pores: '10 ppi' }).remarks).toHaveLength(1);
  });

  it('of fibre passes through its rating with V ~ Δp^0.85', () => {
    // Published: Modelica Buildings library, AirFilters.Data.Generic, mean of measured filters.
    const element = filter.make({ filter: 'fibre', face: '100 x 100 mm', pressure: '20 Pa', at: '1 m/s' });
    expect(off(lossOf(element, 0.01), 20)).toBeLessThan(1e-12);
    expect(off(flowAt((flow) => lossOf(element, flow), 10) / 0.01, 0.5 ** 0.85)).toBeLessThan(1e-9);
  });

  it('loses twice as much when it is due for change', () => {
    // Model assumption, as in the loading example of the Modelica Buildings library.
    const clean = lossOf(filter.make(foam), 0.01);
    expect(off(lossOf(filter.make({ ...foam, loading: '100 %' }), 0.01), 2 * clean)).toBeLessThan(1e-12);
    expect(off(lossOf(filter.make({ ...foam, loading: '30 %' }), 0.01), 1.3 * clean)).toBeLessThan(1e-12);
    expect(problemsOf(filter, { ...foam, loading: '110 %' }).join()).toMatch(/^loading: /);
  });
});

describe('a curve through measured points', () => {
  const table = { points: 'table', flow: '5 10 15 20 L/s', pressure: '0.8 3.3 6 11.5 Pa', by: 'curve' };

  it('passes through all of them, in any order', () => {
    for (const element of [
      points.make(table),
      points.make({ ...table, flow: '20 5 15 10 L/s', pressure: '11.5 0.8 6 3.3 Pa' }),
    ]) {
      [0.8, 3.3, 6, 11.5].forEach((pressure, index) => {
        expect(off(lossOf(element, flows[index] ?? 0), pressure)).toBeLessThan(1e-12);
      });
    }
  });

  it('is the monotone cubic between them', () => {
    // Derived: slopes at 5 and 10 L/s are the harmonic means of the secants 160, 500, 540 Pa·s/m³: 242.424 and 519.231;
    // in the middle of a piece 2.05 + 0.005·(242.424 − 519.231)/8.
    const left = 2 / (1 / 160 + 1 / 500);
    const right = 2 / (1 / 500 + 1 / 540);
    const expected = (0.8 + 3.3) / 2 + (0.005 * (left - right)) / 8;
    expect(off(lossOf(points.make(table), 0.0075), expected)).toBeLessThan(1e-12);
  });

  it('goes on beyond them with its last slope and a square', () => {
    // Derived: three-point end slope 1.5·1100 − 0.5·540 Pa·s/m³; 11.5 Pa more at twice the last flow from the square.
    const slope = 1.5 * 1100 - 0.5 * 540;
    expect(off(lossOf(points.make(table), 0.04), 11.5 + slope * 0.02 + 11.5)).toBeLessThan(1e-12);
  });

  it('needs pressures that rise with the flow', () => {
    expect(problemsOf(points, { ...table, pressure: '0.8 3.3 3.3 11.5 Pa' })).toEqual([
      'pressure: found a pressure that does not rise with the flow, expected a rising one or a fit',
    ]);
    expect(problemsOf(points, { ...table, flow: '5 5 15 20 L/s' })).toHaveLength(1);
  });
});
