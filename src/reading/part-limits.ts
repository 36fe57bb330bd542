import { z } from 'zod';
import type { Limit, Part } from '../enclosure/enclosure.ts';
import type { Kelvins } from '../quantities/dimensions.ts';
import { roundedQuantity } from '../quantities/rounded.ts';
import { written } from '../quantities/written.ts';
import type { Findings } from './findings.ts';
import { valueAt } from './form-tree.ts';
import type { Path } from './problem.ts';

/** Form of `limit` of a part: of the part itself, or by what it is of. */
export const limitForm = z
  .union([
    written.temperature,
    z
      .strictObject({
        part: written.temperature.optional(),
        air: written.temperature.optional(),
        probe: written.temperature.optional(),
      })
      .refine((limit) => Object.values(limit).some((temperature) => temperature !== undefined), {
        error: 'a limit needs a temperature of the part, of the air, or both',
      }),
  ])
  .meta({
    description: 'highest temperature of the part; or { part, air, probe }: of the part, its air, a probe',
  });

/**
 * The limits of a part.
 *
 * @param limit as the form gives it
 */
export function limitsOf(limit: z.output<typeof limitForm> | undefined): readonly Limit[] {
  if (limit === undefined) return [];
  if (typeof limit === 'number') return [{ of: 'part', temperature: limit }];
  return (['part', 'air', 'probe'] as const).flatMap((of) => {
    const temperature = limit[of];
    return temperature === undefined ? [] : [{ of, temperature }];
  });
}

/**
 * Refuses limits of parts that the room alone exceeds.
 *
 * @param value `heat` as written
 * @param parts as read
 * @param hottest room temperature of all duties [K]
 * @param findings receives what is wrong
 */
export function checkLimits(
  value: unknown,
  parts: readonly (Part | undefined)[],
  hottest: Kelvins,
  findings: Findings,
): void {
  for (const [index, part] of parts.entries()) {
    for (const { of, temperature } of part?.limits ?? []) {
      const plain = typeof valueAt(value, [index, 'limit']) === 'string';
      checkLimit(temperature, hottest, ['heat', index, 'limit', ...(plain ? [] : [of])], findings);
    }
  }
}

/**
 * Refuses a limit that the room alone exceeds.
 *
 * @param temperature allowed at most [K]
 * @param hottest room temperature of all duties [K]
 * @param path of the limit
 * @param findings receives what is wrong
 */
export function checkLimit(temperature: Kelvins, hottest: Kelvins, path: Path, findings: Findings): void {
  if (temperature > hottest) return;
  findings.push({
    code: 'out-of-range',
    path,
    at: 'value',
    message: 'this limit is not above the hottest room temperature, so nothing can hold it',
    found: celsius(temperature),
    expected: `more than ${celsius(hottest)}`,
  });
}

function celsius(kelvins: Kelvins): string {
  return roundedQuantity('temperature', kelvins, 6);
}
