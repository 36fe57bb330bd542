import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type KindName, kinds, type Unit } from '../../src/quantities/unit-table.ts';
import { findUnit, inUnit, readQuantity, showQuantity } from '../../src/quantities/units.ts';

const NIST = 'NIST SP 811 (2008), appendix B.8 (from memory), seven digits';
const EXACT = 'exact: definition of the unit or of the prefix';
const SCIPY = 'computed with SciPy 1.17.1, scipy.constants';

/** Kind, text, value in SI, relative tolerance, source. */
const published: readonly (readonly [KindName, string, number, number, string])[] = [
  ['length', '1 mm', 0.001, 0, EXACT],
  ['length', '1 cm', 0.01, 0, EXACT],
  ['length', '1 m', 1, 0, EXACT],
  ['length', '2 km', 2000, 0, EXACT],
  ['length', '200 µm', 0.0002, 1e-15, EXACT],
  ['length', '1 in', 0.0254, 1e-15, `exact: international inch, 1959; ${SCIPY}`],
  ['length', '1 ft', 0.3048, 1e-15, `exact: twelve inches; ${SCIPY}`],
  ['area', '1 mm²', 1e-6, 1e-15, EXACT],
  ['area', '1 cm²', 1e-4, 1e-15, EXACT],
  ['area', '1 dm²', 1e-2, 1e-15, EXACT],
  ['area', '1 m²', 1, 0, EXACT],
  ['area', '1 in²', 6.4516e-4, 1e-15, NIST],
  ['flow', '3600 m³/h', 1, 0, EXACT],
  ['flow', '1 m³/s', 1, 0, EXACT],
  ['flow', '60 m³/min', 1, 0, EXACT],
  ['flow', '1 l/s', 1e-3, 1e-15, EXACT],
  ['flow', '1 l/min', 1.666667e-5, 2e-7, NIST],
  ['flow', '1 CFM', 4.719474e-4, 1e-7, NIST],
  ['flow', '1 CFM', 4.719474432e-4, 1e-14, `${SCIPY}, foot**3/60`],
  ['pressure', '1 Pa', 1, 0, EXACT],
  ['pressure', '1 hPa', 100, 0, EXACT],
  ['pressure', '1 kPa', 1000, 0, EXACT],
  ['pressure', '1 mbar', 100, 0, EXACT],
  ['pressure', '1 bar', 100_000, 0, SCIPY],
  ['pressure', '1 mmH2O', 9.80665, 1e-15, NIST],
  ['pressure', '1 inH2O', 249.0889, 1e-15, NIST],
  ['pressure', '1 psi', 6894.757, 1e-7, SCIPY],
  ['pressure', '1 mmHg', 133.3224, 5e-7, SCIPY],
  ['power', '1 W', 1, 0, EXACT],
  ['power', '1 mW', 0.001, 0, EXACT],
  ['power', '1 kW', 1000, 0, EXACT],
  ['temperature', '0 °C', 273.15, 0, `${SCIPY}, zero_Celsius`],
  ['temperature', '-40 °F', 233.15, 1e-15, `${SCIPY}, convert_temperature`],
  ['temperature', '32 °F', 273.15, 1e-15, `${SCIPY}, convert_temperature`],
  ['temperature', '212 °F', 373.15, 1e-15, `${SCIPY}, convert_temperature`],
  ['temperature', '300 K', 300, 0, EXACT],
  ['temperatureDifference', '30 °C', 30, 0, EXACT],
  ['temperatureDifference', '9 °F', 5, 0, EXACT],
  ['temperatureDifference', '2 K', 2, 0, EXACT],
  ['speed', '1800 rpm', 30, 0, EXACT],
  ['speed', '30 1/s', 30, 0, EXACT],
  ['level', '25 dB(A)', 25, 0, 'exact: decibels are not converted'],
  ['level', '4.1 B', 41, 1e-15, 'exact: 1 B = 10 dB, ISO 80000-8 (from memory)'],
  ['decibel', '2 dB', 2, 0, EXACT],
  ['percent', '30 %', 0.3, 1e-15, EXACT],
  ['thermalResistance', '0.16 K/W', 0.16, 0, EXACT],
  ['perKelvin', '0.4 %/K', 0.004, 1e-15, EXACT],
  ['perKelvin', '0.004 1/K', 0.004, 0, EXACT],
  ['conductivity', '200 W/(m K)', 200, 0, EXACT],
  ['conductance', '0.5 W/K', 0.5, 0, EXACT],
  ['linearLoss', '200 Pa/(m³/s)', 200, 0, EXACT],
  ['quadraticLoss', '90000 Pa/(m³/s)²', 90_000, 0, EXACT],
  ['velocity', '1.5 m/s', 1.5, 0, EXACT],
  ['velocity', '1 km/h', 0.2777777777777778, 1e-15, `${SCIPY}, kmh`],
  ['velocity', '1 ft/min', 0.00508, 1e-15, NIST],
  ['angle', '1 °', 0.017453292519943295, 1e-15, `${SCIPY}, degree`],
  ['angle', '1 rad', 1, 0, EXACT],
  ['porosity', '1 ppi', 39.37007874015748, 1e-15, 'derived: 1/0.0254'],
  ['current', '120 mA', 0.12, 0, EXACT],
  ['current', '1 A', 1, 0, EXACT],
  ['voltage', '500 mV', 0.5, 0, EXACT],
  ['voltage', '12 V', 12, 0, EXACT],
];

function siOf(kind: KindName, text: string): number {
  const outcome = readQuantity(kind, text);
  return outcome.ok ? outcome.value : Number.NaN;
}

function misfitOf(kind: KindName, text: string) {
  const outcome = readQuantity(kind, text);
  return outcome.ok ? undefined : outcome.misfit;
}

describe('every unit against its published factor', () => {
  it.each(published)('%s: %s', (kind, text, expected, tolerance) => {
    expect(Math.abs(siOf(kind, text) / expected - 1)).toBeLessThanOrEqual(tolerance);
  });

  it('leaves no unit of the table untested', () => {
    const tested = new Set(
      published.map(([kind, text]) => `${kind} ${findUnit(kind, text.replace(/^\S+ /, ''))?.name}`),
    );
    const all = Object.entries(kinds).flatMap(([kind, { units }]) =>
      units.map(({ name }) => `${kind} ${name}`),
    );
    expect(all.filter((unit) => !tested.has(unit))).toEqual([]);
  });
});

describe('spellings', () => {
  it.each([
    ['flow', '12 cfm', '12 CFM'],
    ['flow', '12Cfm', '12 CFM'],
    ['flow', '68 m3/h', '68 m³/h'],
    ['flow', '68 m^3/h', '68 m³/h'],
    ['flow', '3 L/s', '3 l/s'],
    ['temperature', '30 degC', '30 °C'],
    ['temperature', '30°C', '30 °C'],
    ['temperature', '30 ℃', '30 °C'],
    ['level', '23 dBA', '23 dB(A)'],
    ['level', '23 dB (A)', '23 dB(A)'],
    ['level', '4.1 bel', '4.1 B'],
    ['speed', '1800 1/min', '1800 rpm'],
    ['speed', '1800 RPM', '1800 rpm'],
    ['pressure', '0.05 in wg', '0.05 inH2O'],
    ['pressure', '1.2 mmh2o', '1.2 mmH2O'],
    ['conductivity', '200 W/mK', '200 W/(m K)'],
    ['conductivity', '200 W/(m·K)', '200 W/(m K)'],
    ['conductivity', '200 W/m/K', '200 W/(m K)'],
    ['linearLoss', '5 Pa s/m³', '5 Pa/(m³/s)'],
    ['quadraticLoss', '5 Pa s²/m⁶', '5 Pa/(m³/s)²'],
    ['quadraticLoss', '5 Pa s2/m6', '5 Pa/(m³/s)²'],
    ['thermalResistance', '0.2 °C/W', '0.2 K/W'],
    ['length', '  120   mm ', '120 mm'],
    ['length', '1.2e2 mm', '120 mm'],
    ['length', '+120 mm', '120 mm'],
    ['length', '120. mm', '120 mm'],
    ['temperature', '−5 °C', '-5 °C'],
  ] as const)('%s: "%s" is "%s"', (kind, one, other) => {
    expect(siOf(kind, one)).toBe(siOf(kind, other));
    expect(siOf(kind, one)).not.toBeNaN();
  });

  it('does not take the case of a prefix lightly', () => {
    expect(siOf('power', '5 mW')).toBe(0.005);
    expect(misfitOf('power', '5 MW')).toMatchObject({ suggestion: '5 mW' });
  });
});

describe('round trip', () => {
  const everyUnit = Object.entries(kinds).flatMap(([kind, { units }]) =>
    units.map((unit): readonly [KindName, Unit] => [kind as KindName, unit]),
  );

  it('text to SI to text keeps the number', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...everyUnit),
        fc.integer({ min: -999_999, max: 999_999 }),
        fc.integer({ min: 0, max: 3 }),
        ([kind, unit], digits, places) => {
          const text = `${digits / 10 ** places} ${unit.name}`;
          expect(showQuantity(kind, siOf(kind, text), unit)).toBe(text);
        },
      ),
      { seed: 20_260_301, numRuns: 500 },
    );
  });

  it('SI to text to SI keeps the value', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...everyUnit),
        fc.double({ min: 1e-3, max: 1e4, noNaN: true }),
        ([kind, unit], value) => {
          const back = siOf(kind, `${inUnit(unit, value)} ${unit.name}`);
          expect(Math.abs(back / value - 1)).toBeLessThan(1e-9);
        },
      ),
      { seed: 20_260_302, numRuns: 500 },
    );
  });
});
