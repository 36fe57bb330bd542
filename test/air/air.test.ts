import fc from 'fast-check';
import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import {
  airAt,
  conductivityAt,
  DRY_AIR_GAS_CONSTANT,
  densityAt,
  humidityRatio,
  pressureAtAltitude,
  saturationPressure,
  specificHeat,
  viscosityAt,
} from '../../src/air/air.ts';

psychrolib.SetUnitSystem(psychrolib.SI);

// psychrolib takes 287.042 J/(kg K) for dry air, the 1976 standard atmosphere 287.053: its densities are 3.8e-5
// higher. The factor puts ours on its footing.
const PSYCHROLIB_GAS_CONSTANT = 287.042;
const ON_PSYCHROLIB_FOOTING = DRY_AIR_GAS_CONSTANT / PSYCHROLIB_GAS_CONSTANT;

function relativeError(actual: number, expected: number): number {
  return Math.abs(actual / expected - 1);
}

function moistDensity(celsius: number, relativeHumidity: number, pressure: number): number {
  const temperature = celsius + 273.15;
  return densityAt(
    { pressure, humidityRatio: humidityRatio(relativeHumidity, temperature, pressure) },
    temperature,
  );
}

describe('the standard atmosphere', () => {
  // Computed with fluids 1.0.22, ATMOSPHERE_1976.
  it.each([
    [0, 101_325],
    [500, 95_461.3],
    [1000, 89_876.3],
    [1500, 84_559.7],
    [2000, 79_501.4],
    [3000, 70_121.2],
  ])('gives the pressure at %d m', (altitude, expected) => {
    expect(relativeError(pressureAtAltitude(altitude), expected)).toBeLessThan(1e-5);
  });

  // Computed with fluids 1.0.22, ATMOSPHERE_1976.
  it.each([
    [0, 288.15, 1.225],
    [1000, 281.651, 1.11166],
    [3000, 268.659, 0.909254],
  ])('gives the density at %d m', (altitude, temperature, expected) => {
    const site = { pressure: pressureAtAltitude(altitude), humidityRatio: 0 };
    expect(relativeError(densityAt(site, temperature), expected)).toBeLessThan(1e-5);
  });

  it('gives the density of a room 15 K warmer than standard at 1500 m', () => {
    // Computed with fluids 1.0.22, ATMOSPHERE_1976(1500, dT=15): 293.402 K.
    const site = { pressure: pressureAtAltitude(1500), humidityRatio: 0 };
    expect(relativeError(densityAt(site, 293.402), 1.00401)).toBeLessThan(1e-5);
  });

  it('ends with its lowest layer', () => {
    // 11 019.07 m above the ground is 11 000 m geopotential (derived).
    expect(pressureAtAltitude(11_019)).toBeGreaterThan(22_600);
    expect(() => pressureAtAltitude(11_020)).toThrow(RangeError);
    expect(() => pressureAtAltitude(-5001)).toThrow(RangeError);
    expect(() => pressureAtAltitude(Number.NaN)).toThrow(RangeError);
  });
});

describe('dry air', () => {
  // Computed with the formulas of the US Standard Atmosphere 1976 as read in fluids 1.0.22.
  it.each([
    [273.15, 1.71608e-5, 0.024138],
    [293.15, 1.81341e-5, 0.025718],
    [313.15, 1.90757e-5, 0.0272672],
    [353.15, 2.08737e-5, 0.0302762],
  ])('has viscosity and conductivity at %d K', (temperature, viscosity, conductivity) => {
    expect(relativeError(viscosityAt(temperature), viscosity)).toBeLessThan(1e-5);
    expect(relativeError(conductivityAt(temperature), conductivity)).toBeLessThan(1e-5);
  });

  it('has the specific heat of 1006 J/(kg K)', () => {
    // Published: ASHRAE Handbook Fundamentals 2017, chapter 1, equation 30.
    expect(specificHeat(0)).toBe(1006);
  });
});

describe('moist air', () => {
  // Computed with psychrolib 1.1.1 (R = 287.042).
  it.each([
    [20, 0.5, 101_325, 0.00726174, 1.1989],
    [25, 0.5, 101_325, 0.00988104, 1.17696],
    [35, 0.6, 101_325, 0.0214411, 1.1311],
    [40, 0.9, 101_325, 0.0436513, 1.0993],
    [25, 0.5, 84_556, 0.0118781, 0.981016],
  ])(
    'has humidity ratio and density at %d °C, %d of saturation, %d Pa',
    (celsius, share, pressure, ratio, density) => {
      expect(relativeError(humidityRatio(share, celsius + 273.15, pressure), ratio)).toBeLessThan(1e-5);
      expect(relativeError(moistDensity(celsius, share, pressure), density)).toBeLessThan(1e-4);
      expect(
        relativeError(moistDensity(celsius, share, pressure) * ON_PSYCHROLIB_FOOTING, density),
      ).toBeLessThan(1e-5);
    },
  );

  it('agrees with psychrolib in 1000 random states', () => {
    // Computed with psychrolib 1.1.1, which never gives less than 1e-7 of humidity.
    const state = fc.tuple(
      fc.double({ min: -40, max: 90, noNaN: true }),
      fc.double({ min: 0.01, max: 1, noNaN: true }),
      fc.double({ min: 72_000, max: 108_000, noNaN: true }),
    );
    fc.assert(
      fc.property(state, ([celsius, share, pressure]) => {
        const reference = psychrolib.GetHumRatioFromRelHum(celsius, share, pressure);
        const ratio = humidityRatio(share, celsius + 273.15, pressure);
        expect(Math.abs(ratio - reference)).toBeLessThan(1e-7 + 1e-10 * reference);
        const density = psychrolib.GetMoistAirDensity(celsius, reference, pressure);
        const own = moistDensity(celsius, share, pressure) * ON_PSYCHROLIB_FOOTING;
        expect(relativeError(own, density)).toBeLessThan(1e-6);
        expect(
          relativeError(saturationPressure(celsius + 273.15), psychrolib.GetSatVapPres(celsius)),
        ).toBeLessThan(1e-12);
      }),
      { seed: 1976, numRuns: 1000 },
    );
  });

  it('takes heat as the enthalpy of psychrolib says, per kilogram of moist air', () => {
    // Computed with psychrolib 1.1.1, whose enthalpy is per kilogram of dry air.
    for (const ratio of [0.001, 0.01, 0.04]) {
      const perDry = psychrolib.GetMoistAirEnthalpy(31, ratio) - psychrolib.GetMoistAirEnthalpy(30, ratio);
      expect(relativeError(specificHeat(ratio), perDry / (1 + ratio))).toBeLessThan(1e-9);
    }
  });

  it('gathers all properties of one state', () => {
    const site = { pressure: 95_000, humidityRatio: 0.01 };
    expect(airAt(site, 310)).toEqual({
      temperature: 310,
      density: densityAt(site, 310),
      viscosity: viscosityAt(310),
      conductivity: conductivityAt(310),
      specificHeat: specificHeat(0.01),
      pressure: 95_000,
    });
  });

  it('refuses states that cannot be', () => {
    expect(() => humidityRatio(1.01, 293.15, 101_325)).toThrow(RangeError);
    expect(() => humidityRatio(-0.01, 293.15, 101_325)).toThrow(RangeError);
    expect(() => humidityRatio(1, 383.15, 101_325)).toThrow(RangeError);
    expect(() => saturationPressure(173)).toThrow(RangeError);
    expect(() => saturationPressure(474)).toThrow(RangeError);
  });
});
