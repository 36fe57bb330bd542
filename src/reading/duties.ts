import { z } from 'zod';
import type { Duty } from '../enclosure/enclosure.ts';
import type { Fraction, Kelvins } from '../quantities/dimensions.ts';
import { bounded, notNegative, written } from '../quantities/written.ts';
import { check, type Findings, itemsOf } from './findings.ts';
import { name } from './name.ts';
import { distinctNames, unknownName } from './name-findings.ts';
import { roomTemperature } from './site.ts';

/** How far the shares of all duties may be from 100 % in sum [-]: three thirds of 33 % and a bit. */
const SHARE_SLACK: Fraction = 0.005;

const share = z.union([
  bounded(written.percent, 'from 0 % to 100 %', (fraction) => fraction >= 0 && fraction <= 1),
  z.literal(0),
]);
const heat = notNegative(written.percent);

/** Form of one entry of `duties`. */
export const dutyForm = z.strictObject({
  duty: name,
  share,
  heat: z.union([heat, z.record(name, heat)]).default(1),
  room: roomTemperature.optional(),
});

/** What duties refer to. */
export interface DutyContext {
  readonly partNames: readonly string[];
  /** Room temperature where a duty names none [K]. */
  readonly room: Kelvins;
}

/**
 * Reads `duties`; without any, the one duty is full heat all the time.
 *
 * @param value as written
 * @param context names of parts, in order, and the usual room temperature
 * @param findings receives what is wrong
 * @returns duties whose shares sum to 1; undefined where one could not be read
 */
export function readDuties(
  value: unknown,
  context: DutyContext,
  findings: Findings,
): readonly (Duty | undefined)[] {
  const { partNames, room } = context;
  if (value === undefined) return [{ id: 'full', share: 1, heat: partNames.map(() => 1), room }];
  const items = itemsOf(value, ['duties'], findings);
  distinctNames('duty', 'duty', items, ['duties'], findings);
  const duties = items.map((item, index) => readDuty(item, index, context, findings));
  const complete = duties.filter((duty) => duty !== undefined);
  if (complete.length < duties.length) return duties;
  const sum = complete.reduce((total, duty) => total + duty.share, 0);
  if (Math.abs(sum - 1) > SHARE_SLACK) refuseShares(sum, findings);
  return complete.map((duty) => ({ ...duty, share: duty.share / sum }));
}

function readDuty(item: unknown, index: number, context: DutyContext, findings: Findings): Duty | undefined {
  const fields = check(dutyForm, item, ['duties', index], findings);
  if (!fields) return undefined;
  const { partNames, room } = context;
  const heats = fields.heat;
  if (typeof heats === 'number') {
    return {
      id: fields.duty,
      share: fields.share,
      heat: partNames.map(() => heats),
      room: fields.room ?? room,
    };
  }
  const given = new Map(Object.entries(heats));
  for (const part of given.keys()) {
    if (partNames.length === 0 || partNames.includes(part)) continue;
    findings.push(unknownName('part', part, partNames, ['duties', index, 'heat', part], 'key'));
  }
  // A part the duty does not mention is as hot as it can be.
  const heat = partNames.map((part) => given.get(part) ?? 1);
  return { id: fields.duty, share: fields.share, heat, room: fields.room ?? room };
}

function refuseShares(sum: Fraction, findings: Findings): void {
  findings.push({
    code: 'out-of-range',
    path: ['duties'],
    at: 'key',
    message: 'the shares of the duties do not make up the whole time',
    found: `${Number((sum * 100).toFixed(2))} % in sum`,
    expected: '100 % in sum',
  });
}
