import { describe, expect, it } from 'vitest';
import { dutyOutcome } from '../../src/enclosure/duty-outcome.ts';
import { assemble, plantOf } from '../../src/enclosure/machine.ts';
import type { LegOutcome } from '../../src/enclosure/outcome.ts';
import { readCatalog } from '../../src/reading/catalog-file.ts';
import { readScenario } from '../../src/reading/scenario-file.ts';
import { FAMILY } from '../reading/samples.ts';

/** A box of square laws only, so that volume flows do not depend on the density. Invented. */
const scenario = (site: string): string => `site: ${site}
listener: { distance: 1 m }
heat:
  - { part: board, power: 1 W, in: core }
airway:
  chambers: [core]
  legs:
    - { leg: intake, from: outside, to: core, through: [fan] }
    - { leg: exhaust, from: core, to: outside, through: [rear] }
elements:
  fan: { bank: fans, face: 80 mm, depth: 26 mm }
  rear: { given: loss, K: 2.85, area: 40 cm² }
choices:
  fan: { fans: [f80-25-b] }
`;

/** The intake of the box at a site, as read from a file. */
function intakeAt(site: string): LegOutcome {
  const catalog = readCatalog('slim.yaml', FAMILY);
  const read = readScenario('box.yaml', scenario(site), catalog.ok ? catalog.fans : []);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const machine = assemble(plantOf(read.enclosure), [0, 0]);
  const [duty] = read.enclosure.duties;
  const outcome = duty && dutyOutcome(machine, duty, Float64Array.of(1));
  if (!outcome || typeof outcome === 'string') throw new Error(outcome);
  const [intake] = outcome.legs;
  if (!intake) throw new RangeError('the box has an intake');
  return intake;
}

describe('a box on a mountain', () => {
  // Published figures of the standard atmosphere's pressure (US Standard Atmosphere 1976): p0/p at equal room temperature.
  it.each([
    [500, 1.061],
    [1000, 1.127],
    [1500, 1.198],
    [2000, 1.275],
    [3000, 1.445],
  ])('at %d m moves as much volume and less mass by %d, room as warm', (altitude, factor) => {
    const low = intakeAt('{ room: 25 °C, altitude: 0 m, humidity: 0 % }');
    const high = intakeAt(`{ room: 25 °C, altitude: ${altitude} m, humidity: 0 % }`);
    expect(high.flow / low.flow).toBeCloseTo(1, 3);
    expect(Math.abs(low.massFlow / high.massFlow / factor - 1)).toBeLessThan(1e-3);
  });

  it('does not get the colder air of the standard atmosphere', () => {
    // The density of the standard atmosphere at 1500 m, which is 15 K colder up there, would give 1.158.
    const low = intakeAt('{ room: 25 °C, altitude: 0 m, humidity: 0 % }');
    const high = intakeAt('{ room: 25 °C, altitude: 1500 m, humidity: 0 % }');
    expect(low.massFlow / high.massFlow).toBeGreaterThan(1.19);
  });

  it('may as well be told the pressure of its air', () => {
    // US Standard Atmosphere 1976 at 1500 m: 84 559.7 Pa (computed with the library fluids 1.0.22).
    const told = intakeAt('{ room: 25 °C, pressure: 84559.7 Pa, humidity: 0 % }');
    const high = intakeAt('{ room: 25 °C, altitude: 1500 m, humidity: 0 % }');
    expect(told.massFlow / high.massFlow).toBeCloseTo(1, 6);
  });
});

describe('the air a box takes in', () => {
  // Densities computed with psychrolib 1.1.1 (ASHRAE Handbook Fundamentals 2017), whose gas constant of dry air is
  // 287.042 J/(kg·K); that of the US Standard Atmosphere 1976 is 287.053.
  it.each([
    ['{ room: 25 °C, humidity: 50 % }', 1.17696],
    ['{ room: 40 °C, humidity: 90 % }', 1.0993],
    ['{ room: 35 °C, humidity: 60 % }', 1.1311],
    ['{ room: 25 °C, humidity: 50 %, pressure: 84556 Pa }', 0.981016],
  ])('at %s weighs %d kg/m³', (site, density) => {
    const { massFlow, flow } = intakeAt(site);
    expect(Math.abs(massFlow / flow / (density * (287.042 / 287.053)) - 1)).toBeLessThan(1e-5);
  });
});
