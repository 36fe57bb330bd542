import { describe, expect, it } from 'vitest';
import { densityAt } from '../../src/air/air.ts';
import { curveFromBox } from '../../src/fan/box-figures.ts';
import { type FanCurve, pressureRise, REFERENCE_DENSITY } from '../../src/fan/curve.ts';
import { bracketedRoot } from '../../src/numerics/roots.ts';

/** Parabola p0·(1 − (Q/Q0)²): the working points below then have closed forms. */
function parabola(shutOff: number, freeDelivery: number): FanCurve {
  return curveFromBox(freeDelivery, shutOff, 0);
}

function relativeError(actual: number, expected: number): number {
  return Math.abs(actual / expected - 1);
}

function root(f: (x: number) => number, low: number, high: number): number {
  const found = bracketedRoot(f, low, high, { tolerance: 1e-14 });
  if (!found.ok) throw new Error(found.reason);
  return found.root;
}

const fan = parabola(40, 0.03);
const QUADRATIC = 40 / 0.03 ** 2;
const LOSS = 5e4;

describe('a working point', () => {
  it('of one fan on a quadratic loss', () => {
    // Derived: Q = √(p0/(R + p0/Q0²)) = 0.0205798, 21.1765 Pa.
    const flow = root((q) => pressureRise(fan, q, 1, 1) - LOSS * q ** 2, 0, 0.03);
    expect(relativeError(flow, Math.sqrt(40 / (LOSS + QUADRATIC)))).toBeLessThan(1e-6);
    expect(relativeError(flow, 0.0205798)).toBeLessThan(3e-6);
    expect(relativeError(pressureRise(fan, flow, 1, 1), 360 / 17)).toBeLessThan(1e-6);
  });

  it('of two fans in series', () => {
    // Derived.
    const flow = root((q) => 2 * pressureRise(fan, q, 1, 1) - LOSS * q ** 2, 0, 0.03);
    expect(relativeError(flow, 0.024)).toBeLessThan(1e-6);
    expect(relativeError(LOSS * flow ** 2, 28.8)).toBeLessThan(1e-6);
  });

  it('of two fans side by side', () => {
    // Derived: 0.0255841 m³/s, 32.7273 Pa.
    const flow = root((q) => pressureRise(fan, q / 2, 1, 1) - LOSS * q ** 2, 0, 0.06);
    expect(relativeError(flow, Math.sqrt(40 / (LOSS + QUADRATIC / 4)))).toBeLessThan(1e-6);
    expect(relativeError(LOSS * flow ** 2, 360 / 11)).toBeLessThan(1e-6);
  });

  it('with a laminar part', () => {
    // Derived: 0.0190528 m³/s, 23.8663 Pa.
    const flow = root((q) => pressureRise(fan, q, 1, 1) - 300 * q - LOSS * q ** 2, 0, 0.03);
    expect(relativeError(flow, 0.0190528)).toBeLessThan(1e-5);
    expect(relativeError(pressureRise(fan, flow, 1, 1), 23.8663)).toBeLessThan(1e-5);
  });

  it('is the same in series and side by side at a resistance of 1.5', () => {
    // Derived: x = √(4/7) = 0.755929.
    const loss = 1.5 * QUADRATIC;
    const series = root((q) => 2 * pressureRise(fan, q, 1, 1) - loss * q ** 2, 0, 0.03);
    const parallel = root((q) => pressureRise(fan, q / 2, 1, 1) - loss * q ** 2, 0, 0.06);
    expect(relativeError(series / 0.03, Math.sqrt(4 / 7))).toBeLessThan(1e-6);
    expect(relativeError(parallel / 0.03, Math.sqrt(4 / 7))).toBeLessThan(1e-6);
  });

  it('of a weak fan driven by a strong one in series', () => {
    // Derived: 45 Pa over the sum of the three squares; computed with epanet-js: Q 0.01982936922. The weak fan
    // loses 14.6602 Pa.
    const weak = parabola(5, 0.01);
    const flow = root(
      (q) => pressureRise(fan, q, 1, 1) + pressureRise(weak, q, 1, 1) - 2e4 * q ** 2,
      0,
      0.03,
    );
    expect(relativeError(flow, 0.01982936922)).toBeLessThan(1e-6);
    expect(
      relativeError(pressureRise(weak, flow, 1, 1), 5 - 5e4 * (45 / (2e4 + QUADRATIC + 5e4))),
    ).toBeLessThan(1e-6);
  });

  it('of a strong fan alone, and with a stopped one in its path', () => {
    // Derived: 0.0249136 and 0.0186953 m³/s.
    const weak = parabola(5, 0.01);
    const alone = root((q) => pressureRise(fan, q, 1, 1) - 2e4 * q ** 2, 0, 0.03);
    const stopped = root(
      (q) => pressureRise(fan, q, 1, 1) + pressureRise(weak, q, 0, 1) - 2e4 * q ** 2,
      0,
      0.03,
    );
    expect(relativeError(alone, Math.sqrt(40 / (2e4 + QUADRATIC)))).toBeLessThan(1e-6);
    expect(relativeError(stopped, Math.sqrt(40 / (7e4 + QUADRATIC)))).toBeLessThan(1e-6);
  });
});

describe('two unlike fans side by side', () => {
  const strong = parabola(60, 0.03);

  /** Pressure, the weak fan's flow and the flow of the system. */
  function solve(weak: FanCurve, loss: number) {
    const flowAt = (of: FanCurve, pressure: number) =>
      root((q) => pressureRise(of, q, 1, 1) - pressure, -0.1, 0.1);
    const pressure = root((p) => flowAt(strong, p) + flowAt(weak, p) - Math.sqrt(p / loss), 1, 59);
    return { pressure, weakFlow: flowAt(weak, pressure), flow: Math.sqrt(pressure / loss) };
  }

  // Computed with SciPy 1.17.1 brentq, reverse branch p0 + c·Q² without a linear part.
  const cases = [
    [2e4, 14.968815, 0.0013678823, 0.027357645],
    [5e4, 16.011874, -0.0077918182, 0.01789518],
    [2e5, 18.825394, -0.015150038, 0.0097019055],
  ] as const;

  it.each(cases)('the weak one may run backwards, resistance %d', (loss, pressure, weakFlow, flow) => {
    const solved = solve({ ...parabola(15, 0.03), reverseSlope: 0 }, loss);
    expect(relativeError(solved.pressure, pressure)).toBeLessThan(1e-5);
    expect(relativeError(solved.weakFlow, weakFlow)).toBeLessThan(1e-5);
    expect(relativeError(solved.flow, flow)).toBeLessThan(1e-5);
  });

  it.each(cases)('the least slope changes little, resistance %d', (loss, pressure, weakFlow, flow) => {
    // Derived: the least slope adds 2.5e-4 · p0 · Q/Q0, so 6.5e-5 of p0 at most here; flow and pressure change by
    // no more than the same share, the small backward flow by a few times as much.
    const solved = solve(parabola(15, 0.03), loss);
    expect(relativeError(solved.pressure, pressure)).toBeLessThan(1e-4);
    expect(relativeError(solved.flow, flow)).toBeLessThan(1e-4);
    expect(relativeError(solved.weakFlow, weakFlow)).toBeLessThan(5e-4);
  });
});

describe('a fan in cold or in hot air', () => {
  it('moves 5 % more mass at the cold intake than at the hot exhaust', () => {
    // Derived: loss on the cold side, 20 °C in and 40 °C out, 101 325 Pa.
    const site = { pressure: 101_325, humidityRatio: 0 };
    const cold = densityAt(site, 293.15);
    const hot = densityAt(site, 313.15);
    const moved = (density: number) =>
      root(
        (mass) =>
          pressureRise(fan, mass / density, 1, density / REFERENCE_DENSITY) -
          (cold / REFERENCE_DENSITY) * LOSS * (mass / cold) ** 2,
        0,
        0.04,
      );
    expect(relativeError(moved(cold), 0.0247803)).toBeLessThan(1e-5);
    expect(relativeError(moved(hot), 0.0236001)).toBeLessThan(1e-5);
    expect(relativeError(moved(cold) / moved(hot), 1.05001)).toBeLessThan(1e-5);
  });
});
