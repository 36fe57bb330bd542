import { perforatedElement } from '../../../src/elements/perforated.ts';
import { type PerforatedSheet, readPerforatedSheet } from '../../../src/elements/perforated-sheet.ts';
import { leastWeb } from '../../../src/questions/vent/sheet-rules.ts';
import type { VentTask } from '../../../src/questions/vent/vent-task.ts';
import { elementPlace, enclosureOf, fans, fanWith, ZERO } from '../../enclosure/hand-made.ts';

/** The invented fan of the box: 40 Pa at no flow, 0.03 m³/s at no pressure, a parabola between. */
export const FAN = { shutOff: 40, freeDelivery: 0.03 };

/**
 * A sheet before a chamber and a fan behind it, in dry air of 25 °C that nothing warms, or one part does.
 *
 * @param fields of the sheet as written
 * @param changes of the task
 * @param power of a part in the chamber whose air may reach 45 °C; none if absent [W]
 */
export function ventTaskWith(
  fields: Readonly<Record<string, string>>,
  changes: Partial<VentTask> = {},
  power?: number,
): VentTask {
  const sheet: PerforatedSheet = readPerforatedSheet(fields);
  const vent = elementPlace(perforatedElement(sheet), 'vent');
  const enclosure = enclosureOf({
    inner: 1,
    legs: [
      { from: 0, to: 1, through: [vent] },
      { from: 1, to: 0, through: [fans(fanWith())] },
    ],
    parts: power === undefined ? [] : [{ power, in: 1, limits: [{ of: 'air', temperature: 45 + ZERO }] }],
  });
  const [duty] = enclosure.duties;
  if (!duty) throw new Error('there is one duty');
  return {
    enclosure,
    build: [0, 0],
    place: 0,
    speeds: [Float64Array.of(1)],
    duty,
    sheet,
    stands: true,
    process: 'laser',
    leastWeb: leastWeb('laser', sheet.sheet),
    blades: 0.02,
    keep: 0.9,
    aim: 'flow',
    ...changes,
  };
}
