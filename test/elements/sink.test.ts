import { describe, expect, it } from 'vitest';
import { sink } from '../../src/elements/sink.ts';
import { AIR_AT_25, lossOf, off, problemsOf } from './loss-of.ts';
import { heatAt, tower } from './sample-stacks.ts';

/** The tower as a measured curve, fitted at the density of air at 25 °C, which moves its reference velocity. */
const fitted = {
  sink: 'curve',
  face: '120 x 120 mm',
  R: '0.0320599 K/W',
  c: '0.0475634 K/W',
  m: 0.978818,
  at: `${AIR_AT_25.density / 1.2} m/s`,
  a: '200 Pa s/m³',
  b: '3500 Pa s²/m⁶',
};

describe('a sink with a measured curve', () => {
  const element = sink.make(fitted);
  const resistance = (flow: number, air = AIR_AT_25) => element.finResistance?.(flow, air) ?? Number.NaN;

  it('stands in for a fin stack over the range of its fit', () => {
    // Derived: least squares of the computed resistances of the tower 25 mm deep, 0.5 to 4 m/s.
    for (const velocity of [0.5, 1, 2, 3, 4]) {
      expect(off(resistance(velocity * 0.12 ** 2), heatAt(tower(0.025), velocity).resistance)).toBeLessThan(
        0.018,
      );
      const curve = 0.0320599 + 0.0475634 * velocity ** -0.978818;
      expect(off(resistance(velocity * 0.12 ** 2), curve)).toBeLessThan(1e-9);
    }
  });

  it('follows the mass flow', () => {
    const thin = { ...AIR_AT_25, density: AIR_AT_25.density / 2 };
    expect(off(resistance(0.04, thin), resistance(0.02))).toBeLessThan(1e-12);
  });

  it('never beats the heat balance of the air', () => {
    const keen = sink.make({ ...fitted, R: '0 K/W', m: 0.5 });
    for (let flow = 1e-6; flow < 0.1; flow *= 1.5) {
      const floor = 1 / (AIR_AT_25.density * flow * AIR_AT_25.specificHeat);
      expect(keen.finResistance?.(flow, AIR_AT_25)).toBeGreaterThanOrEqual(floor);
    }
    expect(keen.finResistance?.(1e-5, AIR_AT_25)).toBeCloseTo(1 / (AIR_AT_25.density * 1e-5 * 1006), 9);
    expect(resistance(-0.01)).toBe(resistance(0.01));
    expect(resistance(0)).toBe(Number.POSITIVE_INFINITY);
  });

  it('loses what was measured', () => {
    expect(off(lossOf(element, 0.01), 200 * 0.01 + 3500 * 1e-4)).toBeLessThan(1e-12);
  });

  it('refuses exponents that no sink has', () => {
    expect(problemsOf(sink, { ...fitted, m: 0 }).join()).toMatch(/^m: /);
    expect(problemsOf(sink, { ...fitted, R: '-1 K/W' }).join()).toMatch(/^R: /);
  });
});

describe('a sink of which one point is known', () => {
  const single = {
    sink: 'single',
    face: '100 x 100 mm',
    R: '0.5 K/W',
    at: `${AIR_AT_25.density / 1.2} m/s`,
    a: '200 Pa s/m³',
    b: '3500 Pa s²/m⁶',
  };
  const element = sink.make(single);
  const resistance = (velocity: number) => element.finResistance?.(0.01 * velocity, AIR_AT_25) ?? Number.NaN;
  const remarks = (velocity: number) => element.remarksAt?.(0.01 * velocity, AIR_AT_25) ?? [];

  it('has its point, and falls with the root of the velocity', () => {
    // Theory of developing laminar flow: exponent 0.5.
    expect(off(resistance(1), 0.5)).toBeLessThan(1e-12);
    expect(off(resistance(4), 0.25)).toBeLessThan(1e-12);
    expect(off(resistance(0.25), 1)).toBeLessThan(1e-12);
  });

  it('never beats the heat balance of the air', () => {
    expect(off(resistance(1e-3), 1 / (AIR_AT_25.density * 1e-5 * 1006))).toBeLessThan(1e-12);
  });

  it('says how far off it may be away from its point', () => {
    // Derived: 4^0.15 − 1 is 23 %, for an exponent of 0.35 to 0.65: 0.25/1.2311 and 0.25·1.2311 K/W.
    expect(remarks(1.4)).toEqual([]);
    expect(remarks(4).join()).toMatch(
      /4\.0 times away .* 0\.25 K\/W may be 23 % off either way, 0\.203 K\/W to 0\.308 K\/W/,
    );
    expect(remarks(0.25).join()).toMatch(/4\.0 times away .* 23 % off/);
  });

  it('needs a resistance above none', () => {
    expect(problemsOf(sink, { ...single, R: '0 K/W' }).join()).toMatch(/^R: /);
    expect(problemsOf(sink, { ...single, c: '0.1 K/W' }).join()).toMatch(/c/);
  });
});

describe('the range of a measured curve', () => {
  const ranged = { ...fitted, from: '0.5 m/s', to: '4 m/s' };
  const remarks = (fields: Record<string, unknown>, velocity: number) =>
    sink.make(fields).remarksAt?.((velocity * 0.0144 * 1.2) / AIR_AT_25.density, AIR_AT_25) ?? [];

  it('may be exceeded by half either way, beyond that a remark says so', () => {
    // Common practice, no source: no extrapolation by more than 1.5 times.
    for (const velocity of [0.34, 0.5, 2, 4, 5.9]) expect(remarks(ranged, velocity)).toEqual([]);
    expect(remarks(ranged, 0.25).join()).toContain('2.0 times beyond');
    expect(remarks(ranged, 8).join()).toContain('2.0 times beyond');
    expect(remarks(fitted, 8)).toEqual([]);
  });

  it('ends above its start', () => {
    expect(problemsOf(sink, { ...ranged, to: '0.4 m/s' }).join()).toMatch(/^to: /);
  });
});
