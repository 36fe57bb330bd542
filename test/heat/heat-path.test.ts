import { describe, expect, it } from 'vitest';
import { type HeatPath, pathResistance, pathSteps, probeResistance } from '../../src/heat/heat-path.ts';
import { dryOutTemperature, type HeatPipes, pipesCapacity } from '../../src/heat/heat-pipes.ts';
import { type PowerLaw, partPower } from '../../src/heat/part-power.ts';
import { pasteResistance } from '../../src/heat/paste.ts';

const ZERO = 273.15;
const ROOM = 25 + ZERO;

/** Four pipes, a plate of 60 mm under 20 mm, paste, and the inside of the part. Invented. */
const path: HeatPath = {
  resistance: 0.1,
  pipes: { count: 4, capacity: 40, resistance: 0.05 },
  base: {
    footprint: { width: 0.02, height: 0.016 },
    plate: { width: 0.06, height: 0.06 },
    thickness: 0.005,
    conductivity: 390,
  },
  paste: { thickness: 30e-6, conductivity: 8, area: 3e-4 },
};

describe('paste', () => {
  it('resists by its thickness', () => {
    // Fourier's law: 30 µm, 8 W/(m·K), 300 mm²: 0.0125 K/W; 50 µm, 4 W/(m·K), 320 mm²: 0.0390625 K/W.
    expect(pasteResistance({ thickness: 30e-6, conductivity: 8, area: 3e-4 })).toBeCloseTo(0.0125, 15);
    expect(pasteResistance({ thickness: 50e-6, conductivity: 4, area: 3.2e-4 })).toBeCloseTo(0.0390625, 15);
  });
});

describe('the way of the heat', () => {
  it('is the sum of its steps', () => {
    // The base spreads against fins and pipes together: 0.03 + 0.05 K/W, for which the closed form gives 0.0852267.
    const steps = pathSteps(path, 0.03, 'the rest');
    expect(steps.map(({ label }) => label)).toEqual([
      'heat pipes',
      'spreading in the base',
      'through the base',
      'paste',
      'the rest',
    ]);
    expect(steps[1]?.resistance).toBeCloseTo(0.0852267, 6);
    expect(steps[2]?.resistance).toBeCloseTo(0.005 / (390 * 0.0036), 12);
    const sum = steps.reduce((total, { resistance }) => total + resistance, 0);
    expect(pathResistance(path, 0.03)).toBeCloseTo(sum, 14);
    expect(sum).toBeCloseTo(0.05 + 0.0852267 + 0.00356125 + 0.0125 + 0.1, 6);
  });

  it('is one number where nothing is named', () => {
    expect(pathResistance({ resistance: 0.16 }, 0.5)).toBe(0.16);
    expect(pathSteps({ resistance: 0.16 }, 0.5, 'fin base to part')).toEqual([
      { label: 'fin base to part', resistance: 0.16 },
    ]);
  });

  it('is never shorter against worse fins', () => {
    // Physics: see spreading.
    let before = pathResistance(path, 0);
    for (const fins of [1e-3, 0.01, 0.1, 1, 10, 1e6]) {
      const here = pathResistance(path, fins);
      expect(here).toBeGreaterThan(before * (1 - 1e-12));
      before = here;
    }
  });
});

describe('a probe in the base', () => {
  it('sees the pipes and its share of the base', () => {
    // Derived: share 0 at the pipes, 1 right under the part.
    const base = 0.0852267 + 0.00356125;
    expect(probeResistance(path, 0.03, 0)).toBe(0.05);
    expect(probeResistance(path, 0.03, 1)).toBeCloseTo(0.05 + base, 6);
    expect(probeResistance(path, 0.03, 0.5)).toBeCloseTo(0.05 + base / 2, 6);
    expect(probeResistance({ resistance: 0.1 }, 0.03, 1)).toBe(0);
  });
});

describe('heat pipes', () => {
  const pipes: HeatPipes = { count: 4, capacity: 40, resistance: 0.05 };

  it('carry together what each carries', () => {
    expect(pipesCapacity(pipes)).toBe(160);
  });

  it('dry out at any temperature or at none if the power does not grow', () => {
    const steady = (power: number): PowerLaw => ({ power, slope: 0, powerAt: 323.15 });
    expect(dryOutTemperature(pipes, steady(160), 1, ROOM)).toBe(Number.POSITIVE_INFINITY);
    expect(dryOutTemperature(pipes, steady(161), 1, ROOM)).toBe(Number.NEGATIVE_INFINITY);
    expect(dryOutTemperature(pipes, steady(161), 0.9, ROOM)).toBe(Number.POSITIVE_INFINITY);
    expect(dryOutTemperature(pipes, steady(161), 0, ROOM)).toBe(Number.POSITIVE_INFINITY);
  });

  it.each<[string, PowerLaw]>([
    ['linear', { power: 150, slope: 0.004, powerAt: 323.15 }],
    ['leaking', { power: 150, slope: 0, powerAt: 323.15, leakage: { power: 30, growth: 0.015 } }],
  ])('dry out where the power reaches what they carry: %s', (_, law) => {
    // Derived: the inverse of the power.
    for (const factor of [0.98, 1, 1.05]) {
      const dry = dryOutTemperature(pipes, law, factor, ROOM);
      expect(partPower(law, factor, dry)).toBeCloseTo(160, 9);
    }
    expect(dryOutTemperature(pipes, law, 1.3, ROOM)).toBe(Number.NEGATIVE_INFINITY);
  });

  it('under a power that falls with temperature are judged by the cold part', () => {
    // Decided: that is where it draws most.
    const law: PowerLaw = { power: 150, slope: -0.004, powerAt: 323.15 };
    expect(partPower(law, 1, ROOM)).toBeCloseTo(165, 9);
    expect(dryOutTemperature(pipes, law, 1, ROOM)).toBe(Number.NEGATIVE_INFINITY);
    expect(dryOutTemperature(pipes, law, 0.96, ROOM)).toBe(Number.POSITIVE_INFINITY);
  });
});
