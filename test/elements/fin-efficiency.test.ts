import { describe, expect, it } from 'vitest';
import { plateAboutPipe, straightFin } from '../../src/elements/fin-efficiency.ts';
import { finHeat } from '../../src/elements/fins.ts';
import { off } from './loss-of.ts';
import { tower } from './sample-stacks.ts';

const metal = { thickness: 0.0004, conductivity: 200 };

describe('a straight fin', () => {
  it('has the efficiency of the textbook', () => {
    // Published: tanh(m·l)/(m·l), m = √(2h/(k·t)); h 64, l 10 mm. A common copy divides by k and multiplies by t.
    const efficiency = straightFin(metal, 0.01)(64);
    expect(off(efficiency, 0.949872)).toBeLessThan(1e-4);
    const miscopied = Math.sqrt(((2 * 64) / 200) * 0.0004) * 0.01;
    expect(off(efficiency, Math.tanh(miscopied) / miscopied)).toBeGreaterThan(0.04);
  });

  it('agrees with a finite-volume solution', () => {
    // Computed here: θ'' = m²θ, θ(0) = 1, θ'(l) = 0.
    for (const h of [10, 64, 400, 3000]) {
      const square = (2 * h) / (200 * 0.0004);
      expect(
        off(
          straightFin(metal, 0.01)(h),
          solvedEfficiency(square, () => 1, 0, 0.01),
        ),
      ).toBeLessThan(1e-4);
    }
  });

  it('is perfect without heat transfer', () => {
    expect(straightFin(metal, 0.01)(0)).toBe(1);
  });
});

describe('a plate fin about a pipe', () => {
  const cell = { radius: 0.003, halfShort: 0.00625, halfLong: 0.01 };

  it('has the efficiency of Schmidt', () => {
    // From memory: Schmidt (1949); the exact round fin of the same radius by the library ht has 0.962086.
    const efficiency = plateAboutPipe(metal, cell)(63.93);
    expect(off(efficiency, 0.958396)).toBeLessThan(1e-4);
    expect(off(efficiency, 0.962086)).toBeLessThan(0.01);
  });

  it('is near a finite-volume solution of the round fin of equivalent radius', () => {
    // Computed here: (r·θ')' = m²·r·θ between r and 3.15524·r (radius ratio 1.28·ψ·√(β - 0.2)).
    for (const h of [20, 63.93, 150]) {
      const square = (2 * h) / (200 * 0.0004);
      const solved = solvedEfficiency(square, (r) => r, 0.003, 3.15524 * 0.003);
      expect(off(plateAboutPipe(metal, cell)(h), solved)).toBeLessThan(0.012);
    }
  });

  it('serves a tower that states its pipes', () => {
    const { pipes: _, ...rest } = tower(0.025);
    const piped = finHeat({ ...rest, pipe: 0.006, cell: { width: 0.02, height: 0.0125 } });
    expect(off(piped.efficiency(63.93), 0.958396)).toBeLessThan(1e-4);
  });
});

/** Efficiency of a fin of width w(r) between two radii by finite volumes: mean temperature over root temperature. */
function solvedEfficiency(square: number, width: (r: number) => number, from: number, to: number): number {
  const size = 2000;
  const step = (to - from) / size;
  const face = (index: number) => width(from + index * step) / step;
  const volume = (index: number) => width(from + (index + 0.5) * step) * step;
  // Backward elimination: temperature[i] = ratio[i] · temperature[i - 1], the root standing at index -1.
  const ratios: number[] = [];
  let behind = 0;
  for (let index = size - 1; index >= 0; index--) {
    const before = index === 0 ? 2 * face(0) : face(index);
    const ratio = before / (before + behind + square * volume(index));
    ratios[index] = ratio;
    behind = index === 0 ? 0 : face(index) * (1 - ratio);
  }
  let temperature = 1;
  let gained = 0;
  let area = 0;
  ratios.forEach((ratio, index) => {
    temperature *= ratio;
    gained += temperature * volume(index);
    area += volume(index);
  });
  return gained / area;
}
