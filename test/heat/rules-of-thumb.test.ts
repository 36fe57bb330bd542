import { describe, expect, it } from 'vitest';
import { airAt, densityAt, pressureAtAltitude } from '../../src/air/air.ts';
import { lifeFactor } from '../../src/heat/lifetime.ts';
import { timeConstant } from '../../src/heat/time-constant.ts';
import { rises } from './mixed-air.ts';

/** Exact: cubic feet per minute [m³/s]. */
const CFM = 4.719474e-4;
/** Specific heat the trade's rules go by [J/(kg·K)]. */
const TRADE_CP = 1005;
/** That of the tests' mixer. */
const MIXER_CP = 1006;

/** Volume flow [CFM] that warms by a rise [K] when it takes up a power [W], found by the mixer. */
function flowFor(power: number, rise: number, density: number): number {
  const atOne = rises({
    chambers: 2,
    legs: [
      [0, 1, density * CFM],
      [1, 0, density * CFM],
    ],
    heat: [0, power],
  })[1];
  // The rise goes with one over the flow; the trade's specific heat is a little smaller.
  return (((atOne ?? Number.NaN) / rise) * MIXER_CP) / TRADE_CP;
}

describe('the flow a rise of the air takes', () => {
  it('has the constants of the trade', () => {
    // Computed: 1.75695 CFM·K/W and 3.16251 CFM·°F/W at 1.2 kg/m³; published: 3160 kW/ΔT[°F] (two makers' notes).
    expect(flowFor(1, 1, 1.2) / 1.75695).toBeCloseTo(1, 4);
    expect(flowFor(1, 5 / 9, 1.2) / 3.16251).toBeCloseTo(1, 4);
    expect(Math.abs(flowFor(1000, 5 / 9, 1.2) / 3160 - 1)).toBeLessThan(2e-3);
  });

  it('is that of a published example at two altitudes', () => {
    // Published: 340 W, 15 K: "39.5" to "40" CFM at 1.19 kg/m³ and "86" CFM at 0.549 kg/m³; exact: 40.1588 and 87.0474.
    expect(flowFor(340, 15, 1.19) / 40.1588).toBeCloseTo(1, 4);
    expect(flowFor(340, 15, 0.549) / 87.0474).toBeCloseTo(1, 4);
    expect(Math.abs(flowFor(340, 15, 1.19) / 39.75 - 1)).toBeLessThan(0.02);
    expect(Math.abs(flowFor(340, 15, 0.549) / 86 - 1)).toBeLessThan(0.02);
  });

  it('is not what pages say that mix up their units', () => {
    // Circulating mistake: W/(1.08·ΔT[K]), where 1.08 belongs to BTU/h and °F; it asks for 53 % of the true flow.
    const wrong = 220 / (1.08 * 15);
    expect(wrong / flowFor(220, 15, 1.2)).toBeCloseTo(0.527, 3);
    // Right use of the same constant: BTU/h and °F.
    const right = (220 * 3.412142) / (1.08 * 15 * 1.8);
    expect(Math.abs(right / flowFor(220, 15, 1.2) - 1)).toBeLessThan(0.01);
  });
});

describe('rules on time', () => {
  it('a capacitor 9 K cooler lives 1.87 times as long', () => {
    // Published rule of ten kelvins, computed: 2^0.9 = 1.86607.
    expect(lifeFactor(9)).toBeCloseTo(1.86607, 5);
    expect(lifeFactor(10)).toBe(2);
    expect(lifeFactor(-10)).toBe(0.5);
    expect(lifeFactor(0)).toBe(1);
  });

  it('is that of an activation energy of 0.66 eV about 60 °C', () => {
    // Published law of Arrhenius, k = 8.617333e-5 eV/K: 0.662796 eV double the rate from 55 to 65 °C.
    const rate = (low: number, high: number) =>
      Math.exp((0.662796 / 8.617333e-5) * (1 / (low + 273.15) - 1 / (high + 273.15)));
    expect(rate(55, 65)).toBeCloseTo(lifeFactor(10), 4);
    expect(Math.abs(rate(50, 59) / lifeFactor(9) - 1)).toBeLessThan(0.03);
  });

  it('a sink of 0.6 kg aluminium settles in minutes', () => {
    // Derived: 0.12 K/W · 0.6 kg · 897 J/(kg·K) = 64.584 s.
    expect(timeConstant(0.12, 0.6, 897)).toBeCloseTo(64.584, 9);
  });
});

describe('dry air', () => {
  it('at 25 °C and sea level has the properties of the standard atmosphere', () => {
    // Published: US Standard Atmosphere 1976 (R, viscosity and conductivity), as in the opened library fluids; with a
    // specific heat of 1006 J/(kg·K) a Prandtl number of 0.707924.
    const { density, viscosity, conductivity, specificHeat } = airAt(
      { pressure: 101_325, humidityRatio: 0 },
      298.15,
    );
    expect(Math.abs(density / 1.18391 - 1)).toBeLessThan(5e-4);
    expect(Math.abs(viscosity / 1.83723e-5 - 1)).toBeLessThan(5e-4);
    expect(Math.abs(conductivity / 0.0261081 - 1)).toBeLessThan(5e-4);
    expect(Math.abs((viscosity * specificHeat) / conductivity / 0.707924 - 1)).toBeLessThan(5e-4);
  });
});

describe('thin air', () => {
  it('at 2000 m and 35 °C has 76 % of the density at sea level and 25 °C', () => {
    // Computed: 0.898704 kg/m³, ratio 0.759096; pressure by the closed form of the ISA (from memory), 79 495.2 Pa.
    const pressure = pressureAtAltitude(2000);
    expect(Math.abs(pressure / 79_495.2 - 1)).toBeLessThan(2e-4);
    const thin = densityAt({ pressure, humidityRatio: 0 }, 308.15);
    expect(Math.abs(thin / 0.898704 - 1)).toBeLessThan(5e-4);
    const dense = densityAt({ pressure: 101_325, humidityRatio: 0 }, 298.15);
    expect(Math.abs(thin / dense / 0.759096 - 1)).toBeLessThan(5e-4);
  });
});
