import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import { airNeed } from '../../src/questions/air-need.ts';
import { hushwright } from '../commands/program.ts';

function need(...args: readonly string[]) {
  const run = hushwright(['air', '--json', ...args]);
  expect(run.err).toBe('');
  expect(run.code).toBe(0);
  return JSON.parse(run.out).result;
}

describe('before anything is drawn', () => {
  it('95 W and 10 K need 28.8 m³/h, 17.0 CFM, and the table holds them', () => {
    // Computed by hand: 95 W / (1.18 kg/m³ · 1006 J/(kg K) · 10 K) = 28.8 m³/h; one CFM is 1.699 m³/h.
    const { need: found, table, next } = need('--power', '95 W', '--rise', '10 K');
    const hourly = 3600 * found.flow_m3_s;
    expect(Math.abs(hourly / 28.8 - 1)).toBeLessThan(0.005);
    expect(Math.abs(hourly / 1.699 / 17 - 1)).toBeLessThan(0.005);
    expect(table).toContainEqual(found);
    expect(next).toContain('hushwright');
    expect(hushwright(['air', '--power', '95 W']).out).toMatch(/^95\.0 W .* need 28\.7 m³\/h \(16\.9 CFM\)/);
  });

  it('takes the air of the room it is told', () => {
    // Another way to the same: enthalpy and volume of moist air by psychrolib, an independent implementation of the ASHRAE
    // formulas.
    psychrolib.SetUnitSystem(psychrolib.SI);
    for (const [celsius, altitude] of [
      [30, 0],
      [30, 1500],
      [10, 500],
    ] as const) {
      const pressure = psychrolib.GetStandardAtmPressure(altitude);
      const ratio = psychrolib.GetHumRatioFromRelHum(celsius, 0.5, pressure);
      const volume = psychrolib.GetMoistAirVolume(celsius, ratio, pressure);
      const gained =
        psychrolib.GetMoistAirEnthalpy(celsius + 10, ratio) - psychrolib.GetMoistAirEnthalpy(celsius, ratio);
      const around = { room: celsius + 273.15, altitude, relativeHumidity: 0.5 };
      expect(Math.abs(airNeed(95, 10, around).flow / ((95 * volume) / gained) - 1)).toBeLessThan(1e-3);
    }
  });

  it('says so where no flow is enough, and what is wrong with a figure', () => {
    const warm = hushwright(['air', '--power', '95 W', '--limit', '30 °C', '--room', '30 °C']);
    expect([warm.code, warm.out]).toEqual([1, '']);
    const bare = hushwright(['air', '--power', '95']);
    expect(bare.code).toBe(2);
    expect(bare.err).toContain('did you mean "95 W"?');
  });
});
