import type { Enclosure } from '../../src/enclosure/enclosure.ts';
import { assemble, plantOf } from '../../src/enclosure/machine.ts';
import type { BuildOutcome, DutyOutcome } from '../../src/enclosure/outcome.ts';
import { readCatalogs } from '../../src/reading/catalog-file.ts';
import { readScenario } from '../../src/reading/scenario-file.ts';
import { isFailed, outcomeAt } from '../../src/search/build-outcome.ts';

/**
 * A fan of 92 mm rated 31.5 dB(A) at 1 m and 2000 rpm. Its curve passes through the point at which two of them at
 * 1300 rpm blow 2.5 m/s through the vent of `TWO_FANS`: 34.799 m³/h each is 42 % of free delivery, and 22.198 Pa at
 * full speed are what the vent loses, over 0.65². All figures are invented.
 */
export const FANS = `family: two fans
provenance: invented
fans:
  - fan: e92
    size: 92 mm
    depth: 25 mm
    speed: 2000 rpm
    hold: 20 %
    curve: { flow: 0 34.799177 82.855183 m³/h, pressure: 30 22.198225 0 Pa }
    noise: [{ level: 31.5 dB(A), speed: 2000 rpm, distance: 1 m }]
    power: 0.001 W
    blades: 7
`;

/** Two fans side by side behind a stack, an 80 mm vent behind them; next to no heat. All figures are invented. */
export const TWO_FANS = `title: Two fans, a stack before them and a vent behind
site: { room: 25 °C }
listener: { distance: 0.7 m }
heat:
  - { part: lamp, power: 0.001 W, on: stack, limit: 60 °C }
airway:
  chambers: [box]
  legs:
    - { leg: in, from: outside, to: box, through: [stack, pair] }
    - { leg: out, from: box, to: outside, through: [vent] }
elements:
  stack:
    { sink: curve, face: 92 x 92 mm, R: 0.03 K/W, c: 0.05 K/W, m: 0.9, at: 1 m/s, a: 0.000001 Pa/(m³/s), b: 0 Pa/(m³/s)² }
  pair: { bank: fans, face: 92 mm, depth: 25 mm, inlet-gap: 10 mm }
  vent: { given: loss, K: 2.5, area: 50.2654825 cm², vent: 50.2654825 cm² }
choices:
  pair: { fans: [e92], count: 2 }
builds: { as-drawn: {} }
assume: { sound: { panel-mounting: 0 } }
`;

/** A text with some of its pieces written differently; each must be there. */
export function changed(text: string, changes: Readonly<Record<string, string>>): string {
  return Object.entries(changes).reduce((result, [from, to]) => {
    if (!result.includes(from)) throw new Error(`there is no "${from}" to change`);
    return result.replace(from, to);
  }, text);
}

/** A scenario read with a catalog, both of which must be right. */
export function readBoth(scenario: string, catalog: string): Enclosure {
  const fans = readCatalogs([{ file: 'fans.yaml', text: catalog }]);
  if (!fans.ok) throw new Error(JSON.stringify(fans.problems));
  const read = readScenario('box.yaml', scenario, fans.fans);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.enclosure;
}

/** The first build of an enclosure with every bank at a share of full speed. */
export function atSpeed(enclosure: Enclosure, ...speeds: readonly number[]): BuildOutcome {
  const plant = plantOf(enclosure);
  const machine = assemble(
    plant,
    enclosure.places.map(() => 0),
  );
  const ratios = Float64Array.from(machine.banks, (_, bank) => speeds[bank] ?? speeds[0] ?? 1);
  const outcome = outcomeAt(
    machine,
    enclosure.duties.map(() => ratios),
    0,
  );
  if (isFailed(outcome)) throw new Error(outcome.reason);
  return outcome;
}

/** The only duty of a box with every bank at a share of full speed. */
export function dutyAt(enclosure: Enclosure, ...speeds: readonly number[]): DutyOutcome {
  const [duty] = atSpeed(enclosure, ...speeds).duties;
  if (!duty) throw new Error('there is no duty');
  return duty;
}
