import { z } from 'zod';
import type { Header } from '../../enclosure/asks.ts';
import type { Place } from '../../enclosure/enclosure.ts';
import { positive, written } from '../../quantities/written.ts';
import { check, entriesOf, type Findings } from '../findings.ts';
import { name, names } from '../name.ts';
import { unknownName } from '../name-findings.ts';

/** Form of one header. */
export const headerForm = z
  .strictObject({
    banks: names,
    current: positive(written.current).optional(),
    voltage: positive(written.voltage).optional(),
  })
  .refine(({ current, voltage }) => (current === undefined) === (voltage === undefined), {
    error: 'give the current of a header together with its voltage',
  });

/** Form of `headers`: what fan headers feed, under their names. */
export const headersForm = z.record(name, headerForm);

/** What headers refer to. */
export interface HeaderContext {
  readonly placeNames: readonly string[];
  readonly places: ReadonlyMap<string, Place>;
}

/**
 * Reads `headers`; without them every bank runs at a speed of its own.
 *
 * @param value as written
 * @param context what they refer to
 * @param findings receives what is wrong
 */
export function readHeaders(value: unknown, context: HeaderContext, findings: Findings): readonly Header[] {
  const { placeNames, places } = context;
  const known = placeNames.filter((id) => places.get(id)?.kind === 'bank');
  const fed = new Set<string>();
  return entriesOf(value, ['headers'], findings).flatMap(([id, given]) => {
    const fields = check(headerForm, given, ['headers', id], findings);
    if (!fields) return [];
    for (const [index, bank] of fields.banks.entries()) {
      const path = ['headers', id, 'banks', index];
      if (fed.has(bank)) {
        const message = `"${bank}" is on a header already`;
        findings.push({ code: 'conflict', path, at: 'value', message });
      } else if (!known.includes(bank) && known.length > 0) {
        findings.push(unknownName('place for fans', bank, known, path));
      }
      fed.add(bank);
    }
    const { current, voltage } = fields;
    return [
      {
        id,
        places: fields.banks.map((bank) => placeNames.indexOf(bank)).filter((place) => place >= 0),
        ...(current === undefined || voltage === undefined ? {} : { current: { most: current, voltage } }),
      },
    ];
  });
}
