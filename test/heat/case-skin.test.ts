import { describe, expect, it } from 'vitest';
import { airAt } from '../../src/air/air.ts';
import { type CaseBox, skinHeat } from '../../src/heat/case-skin.ts';
import { panelTemperature, touchLimits } from '../../src/heat/panel.ts';
import { AIR_AT_25 } from '../elements/loss-of.ts';

const ROOM = 298.15;
const SKIN = 313.15;

/** 6.5 litre, painted. Invented. */
const box: CaseBox = { width: 0.26, depth: 0.25, height: 0.1, emissivity: 0.85, onFeet: true };

/** Dry air at the mean of skin and room, as the published formulas have it (US Standard Atmosphere 1976). */
const film = {
  ...AIR_AT_25,
  ...airAt({ pressure: 101_325, humidityRatio: 0 }, (ROOM + SKIN) / 2),
  specificHeat: 1006,
};

function total(of: CaseBox, skin = SKIN): number {
  const { sides, top, underside, radiation } = skinHeat(of, skin, ROOM, film);
  return sides + top + underside + radiation;
}

describe('the skin of a closed box 15 K above the room', () => {
  it('gives off by each way what the correlations say', () => {
    // Computed with Python by an independent script from Churchill & Chu and McAdams as in the opened library ht, and
    // Stefan-Boltzmann; dry air of 32.5 °C.
    const { sides, top, underside, radiation } = skinHeat(box, SKIN, ROOM, film);
    expect(sides / 7.23502).toBeCloseTo(1, 3);
    expect(top / 5.30247).toBeCloseTo(1, 3);
    expect(underside / 2.65124).toBeCloseTo(1, 3);
    expect(radiation / 19.1692).toBeCloseTo(1, 4);
    expect(total(box) / 34.3579).toBeCloseTo(1, 3);
  });

  it('gives off half as much if it is bare, less without feet, more if it is larger', () => {
    // Computed as above.
    expect(total({ ...box, emissivity: 0.09 }) / 17.2184).toBeCloseTo(1, 3);
    expect(total({ ...box, onFeet: false }) / 26.336).toBeCloseTo(1, 3);
    expect(total({ ...box, onFeet: false, emissivity: 0.09 }) / 13.9985).toBeCloseTo(1, 3);
    expect(total({ ...box, width: 0.32 }) / 40.2818).toBeCloseTo(1, 3);
  });

  it('gives off nothing if it is as warm as the room', () => {
    expect(total(box, ROOM)).toBe(0);
  });
});

describe('a panel', () => {
  it('lies between the air inside and the room', () => {
    // Resistances in series.
    expect(panelTemperature(330, 300, 0.5)).toBe(315);
    expect(panelTemperature(330, 300, 0)).toBe(300);
    expect(panelTemperature(330, 300, 1)).toBe(330);
  });

  it('is too warm to hold from 48 °C, to touch from a temperature that depends on its material', () => {
    // IEC 62368-1, table 38, class TS1 (from memory).
    const celsius = Object.entries(touchLimits).map(([material, { held, touched }]) => [
      material,
      Math.round(held - 273.15),
      Math.round(touched - 273.15),
    ]);
    expect(celsius).toEqual([
      ['metal', 48, 60],
      ['glass', 48, 71],
      ['plastic', 48, 77],
    ]);
  });
});
