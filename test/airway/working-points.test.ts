import { describe, expect, it } from 'vitest';
import { curveFromBox } from '../../src/fan/box-figures.ts';
import { curveFromPoints } from '../../src/fan/curve.ts';
import { inSeries, parabolicFan, resistance } from './leg-laws.ts';
import { bank, distance, intoOneChamber, legOf, passive, solve } from './solved-network.ts';

describe('a digitised fan on a laminar and quadratic loss', () => {
  // Invented points. Computed with SciPy 1.17.1: PchipInterpolator and brentq.
  const curve = curveFromPoints({
    flows: [0, 0.005, 0.01, 0.015, 0.02, 0.025],
    pressures: [40, 34, 27, 22, 12, 0],
  });
  const loss = () => legOf([passive(900, 1e5)]);

  it('one fan', () => {
    const { pressures, flows } = intoOneChamber([legOf([bank(curve)])], [loss()]);
    expect(distance(flows, [0.01196163104, 0.01196163104])).toBeLessThan(1e-9);
    expect(distance(pressures.slice(1), [25.07352965])).toBeLessThan(1e-9);
  });

  it('two in series, in one leg or in two', () => {
    const joined = intoOneChamber([legOf([bank(curve), bank(curve)])], [loss()]);
    expect(distance(joined.flows, [0.0161195575, 0.0161195575])).toBeLessThan(1e-9);
    const topology = { chambers: 3, from: [0, 1, 2], to: [1, 2, 0] };
    const apart = solve(topology, [legOf([bank(curve)]), legOf([bank(curve)]), loss()]);
    expect(distance(apart.flows, [0.0161195575, 0.0161195575, 0.0161195575])).toBeLessThan(1e-9);
    expect(distance(apart.pressures.slice(1), [40.49161516 / 2, 40.49161516])).toBeLessThan(1e-9);
  });

  it('two side by side, in one bank or in two legs', () => {
    const joined = intoOneChamber([legOf([bank(curve, 2)])], [loss()]);
    expect(distance(joined.flows, [0.01376595016, 0.01376595016])).toBeLessThan(1e-9);
    const apart = intoOneChamber([legOf([bank(curve)]), legOf([bank(curve)])], [loss()]);
    const half = 0.01376595016 / 2;
    expect(distance(apart.flows, [half, half, 0.01376595016])).toBeLessThan(1e-9);
    expect(distance(apart.pressures.slice(1), [31.33949352])).toBeLessThan(1e-9);
  });

  it('at 60 % of its speed, where the flow falls by more than the speed', () => {
    const { flows } = intoOneChamber([legOf([bank(curve)], 0.6)], [loss()]);
    expect(distance(flows, [0.00625772982, 0.00625772982])).toBeLessThan(1e-9);
    // Computed as above; the laminar part makes the ratio less than 0.6.
    expect((flows[0] ?? 0) / 0.01196163104).toBeCloseTo(0.52315, 6);
  });
});

describe('parabolic fans on a quadratic loss', () => {
  const fan = () => parabolicFan(40, 0.03);
  const system = () => resistance(0, 5e4);
  const stiffness = 40 / 0.03 ** 2;

  it('one fan', () => {
    // Derived: Q = √(p0/(R + p0/Q0²)) = 0.0205798 m³/s, 21.1765 Pa.
    const { flows, pressures } = intoOneChamber([fan()], [system()]);
    const expected = Math.sqrt(40 / (5e4 + stiffness));
    expect(distance(flows, [expected, expected])).toBeLessThan(1e-9);
    expect(distance(pressures.slice(1), [360 / 17])).toBeLessThan(1e-9);
    expect(expected).toBeCloseTo(0.0205798, 7);
  });

  it('two in series', () => {
    // Derived: 0.024 m³/s, 28.8 Pa.
    const { flows, pressures } = intoOneChamber([inSeries(fan(), fan())], [system()]);
    expect(distance(flows, [0.024, 0.024])).toBeLessThan(1e-9);
    expect(distance(pressures.slice(1), [28.8])).toBeLessThan(1e-9);
  });

  it('two side by side', () => {
    // Derived: 0.0255841 m³/s, 32.7273 Pa.
    const { flows, pressures } = intoOneChamber([fan(), fan()], [system()]);
    const expected = Math.sqrt(40 / (5e4 + stiffness / 4));
    expect(distance(flows, [expected / 2, expected / 2, expected])).toBeLessThan(1e-9);
    expect(distance(pressures.slice(1), [360 / 11])).toBeLessThan(1e-9);
  });

  it('with a laminar part', () => {
    // Derived: root of the quadratic, 0.0190528 m³/s, 23.8663 Pa.
    const { flows, pressures } = intoOneChamber([fan()], [resistance(300, 5e4)]);
    const sum = 5e4 + stiffness;
    const expected = (-300 + Math.sqrt(300 ** 2 + 4 * 40 * sum)) / (2 * sum);
    expect(distance(flows, [expected, expected])).toBeLessThan(1e-9);
    expect(pressures[1]).toBeCloseTo(23.8663, 4);
  });

  it('in series or side by side alike at a resistance of 1.5', () => {
    // Derived: flow share √(4/7) = 0.755929 both ways.
    const outs = () => [resistance(0, 1.5 * stiffness)];
    const series = intoOneChamber([inSeries(fan(), fan())], outs());
    const beside = intoOneChamber([fan(), fan()], outs());
    expect((series.flows[0] ?? 0) / 0.03).toBeCloseTo(Math.sqrt(4 / 7), 9);
    expect((beside.flows[2] ?? 0) / 0.03).toBeCloseTo(Math.sqrt(4 / 7), 9);
  });

  it('a weak fan overdriven by a strong one in series', () => {
    // Derived: 45 Pa over the sum of the three squares, 0.01982936922 m³/s; the weak fan loses 14.6602 Pa.
    const topology = { chambers: 3, from: [0, 1, 2], to: [1, 2, 0] };
    const laws = [fan(), parabolicFan(5, 0.01), resistance(0, 2e4)];
    const { flows, pressures } = solve(topology, laws);
    const expected = Math.sqrt(45 / (2e4 + stiffness + 5e4));
    expect(distance(flows, [expected, expected, expected])).toBeLessThan(1e-9);
    expect((pressures[1] ?? 0) - (pressures[2] ?? 0)).toBeCloseTo(14.6602, 4);
  });

  it('a weak fan blown backwards by a strong one beside it', () => {
    // Computed with mpmath 1.3 (findroot): 16.01187386 Pa, −0.00779181823 m³/s through the weak fan.
    const { flows, pressures } = intoOneChamber([parabolicFan(60, 0.03), parabolicFan(15, 0.03)], [system()]);
    expect(distance(pressures.slice(1), [16.01187385516])).toBeLessThan(1e-9);
    expect(distance(flows, [0.0256869985, -0.00779181823, 0.01789518028])).toBeLessThan(1e-9);
  });

  it('the same with fan curves, whose reverse branch is a hair steeper', () => {
    // As above; the least slope of a curve, 2.5e-4 p0/Q0 (Modelica Buildings library, published), moves it by 1e-4.
    const legs = [60, 15].map((shutOff) => legOf([bank(curveFromBox(0.03, shutOff, 0))]));
    const { flows } = intoOneChamber(legs, [system()]);
    expect(flows[1]).toBeLessThan(0);
    expect(distance(flows, [0.0256869985, -0.00779181823, 0.01789518028])).toBeLessThan(2e-4);
  });
});
