import { describe, expect, it } from 'vitest';
import { curveFromBox } from '../../src/fan/box-figures.ts';
import { inSeries, lawOf, parabolicFan, powerResistance, resistance } from './leg-laws.ts';
import { randomStart } from './random-airway.ts';
import { seededRandom } from './seeded-random.ts';
import { bank, distance, intoOneChamber, legOf, passive, solve } from './solved-network.ts';

const SEED = 4712;

describe('passive legs', () => {
  const source = (pressure: number) =>
    lawOf(
      () => -pressure,
      () => 0,
    );

  it('two quadratic ones side by side', () => {
    // Derived: b^-1/2 adds, 44444.4 Pa·s²/m⁶.
    const { pressures, flows } = intoOneChamber(
      [parabolicFan(40, 0.03)],
      [resistance(0, 1e5), resistance(0, 4e5)],
    );
    expect((pressures[1] ?? 0) / (flows[0] ?? 0) ** 2 / (4e5 / 9)).toBeCloseTo(1, 9);
  });

  it('quadratic ones in series', () => {
    // Derived: b adds, 525 000 Pa·s²/m⁶.
    const topology = { chambers: 4, from: [0, 1, 2, 3], to: [1, 2, 3, 0] };
    const laws = [
      inSeries(parabolicFan(40, 0.03), resistance(0, 1e5)),
      resistance(0, 4e5),
      resistance(0, 2.5e4),
      lawOf(
        () => 0,
        () => 0,
      ),
    ];
    const { flows } = solve(topology, laws);
    expect(flows[0]).toBeCloseTo(Math.sqrt(40 / (525_000 + 40 / 0.03 ** 2)), 11);
    expect(distance(flows.slice(1), flows.slice(0, 3))).toBeLessThan(1e-9);
  });

  it('two power laws side by side', () => {
    // Derived: R^-1/n adds, 8572.22 for 2e4 and 5e4 at n = 1.8.
    const { pressures, flows } = intoOneChamber(
      [parabolicFan(40, 0.03)],
      [powerResistance(2e4, 1.8), powerResistance(5e4, 1.8)],
    );
    const joint = (2e4 ** (-1 / 1.8) + 5e4 ** (-1 / 1.8)) ** -1.8;
    expect(joint).toBeCloseTo(8572.22, 2);
    expect((pressures[1] ?? 0) / (flows[0] ?? 0) ** 1.8 / joint).toBeCloseTo(1, 9);
  });

  it('two laminar and quadratic ones at a given pressure', () => {
    // Derived: 2Δp/(a + √(a² + 4bΔp)) = 0.00904988 and 0.00569077 m³/s at 10 Pa.
    const { pressures, flows } = intoOneChamber([source(10)], [resistance(200, 1e5), resistance(50, 3e5)]);
    const first = 20 / (200 + Math.sqrt(200 ** 2 + 4e6));
    const second = 20 / (50 + Math.sqrt(50 ** 2 + 12e6));
    expect(first).toBeCloseTo(0.00904988, 8);
    expect(second).toBeCloseTo(0.00569077, 8);
    expect(pressures[1]).toBeCloseTo(10, 9);
    expect(distance(flows, [first + second, first, second])).toBeLessThan(1e-9);
  });

  it('pass nothing if nothing drives', () => {
    // Theory: the only solution without a source; the laminar part keeps the slope finite at zero.
    const laws = [resistance(500, 1e5), resistance(20, 3e5), resistance(500, 1e5)];
    const topology = { chambers: 3, from: [0, 1, 2], to: [1, 2, 0] };
    const random = seededRandom(SEED);
    for (let trial = 0; trial < 20; trial++) {
      const { report, flows, pressures } = solve(topology, laws, randomStart(random, topology));
      expect(report.status).toBe('balanced');
      expect(Math.max(...flows.map(Math.abs))).toBeLessThan(1e-12);
      expect(Math.max(...pressures.map(Math.abs))).toBeLessThan(1e-9);
    }
  });

  it('pass nothing through fans that all stand still, though their law is flat at rest', () => {
    // Theory: as above; a stopped fan is a pure square law.
    const still = () => legOf([bank(curveFromBox(0.03, 40))], 0);
    const { report, flows, pressures } = intoOneChamber([still(), still()], [still()]);
    expect(report.status).toBe('balanced');
    expect(Math.max(...flows.map(Math.abs))).toBeLessThan(1e-7);
    expect(pressures[1]).toBeCloseTo(0, 9);
  });

  it('of no loss at all join two chambers into one', () => {
    // Theory: without loss there is no pressure difference, whatever flows. Same flow as the fan with its loss alone.
    const topology = { chambers: 4, from: [0, 1, 2, 3], to: [1, 2, 3, 0] };
    const laws = [
      legOf([bank(curveFromBox(0.03, 40, 0))]),
      legOf([]),
      legOf([{ kind: 'empty' }, { kind: 'empty' }]),
      legOf([passive(0, 5e4)]),
    ];
    const { report, flows, pressures } = solve(topology, laws);
    const expected = Math.sqrt(40 / (5e4 + 40 / 0.03 ** 2));
    expect(report.status).toBe('balanced');
    expect(distance(flows, [expected, expected, expected, expected])).toBeLessThan(1e-9);
    expect(distance(pressures.slice(1), [360 / 17, 360 / 17, 360 / 17])).toBeLessThan(1e-9);
  });
});
