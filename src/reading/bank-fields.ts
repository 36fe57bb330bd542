import { z } from 'zod';
import { describeValue, notNegative, positive, written } from '../quantities/written.ts';
import { hearingFields } from './hearing.ts';
import { names } from './name.ts';

/** Most fans side by side in one bank [-]. */
const MOST_FANS = 24;

const square = positive(written.rectangle).refine(({ width, height }) => width === height, {
  error: 'the face of a bank is the square frame of one fan',
});

/** Two speeds, the lower first. */
const speedBand = z
  .tuple([positive(written.speed), positive(written.speed)])
  .refine(([from, to]) => from < to, { error: 'a band of speeds goes from a lower to a higher one' })
  .transform(([from, to]) => ({ from, to }));

/** Form of a bank of fans under `elements`. */
export const bankForm = z.strictObject({
  bank: z.literal('fans'),
  face: square,
  depth: positive(written.length),
  'inlet-gap': notNegative(written.length).default(0),
  'outlet-gap': notNegative(written.length).default(0),
  /** Distance to a flat wall before the inlet. */
  'inlet-wall': positive(written.length).optional(),
  /** Distance to a flat wall behind the outlet. */
  'outlet-wall': positive(written.length).optional(),
  /** Distance to a bar, a cable or a board across a part of the inlet, and of the outlet. */
  'inlet-bar': notNegative(written.length).optional(),
  'outlet-bar': notNegative(written.length).optional(),
  ...hearingFields,
  /** Bands of speed to keep out of, such as [[900 rpm, 1100 rpm]]. */
  avoid: z.array(speedBand).optional(),
});

/** Numbers of fans side by side: 1, "1 to 3" or [1, 2], as a list. */
const countForm = z
  .unknown()
  .meta({
    description: 'how many fans side by side: 1, "1 to 3" or [1, 2]',
    examples: [1, '1 to 3', [1, 2]],
    anyOf: [
      { type: 'integer' },
      { type: 'string' },
      { type: 'array', items: { type: 'integer' }, minItems: 1 },
    ],
  })
  .transform((input, context) => {
    const counts = countsIn(input);
    if (
      counts.length > 0 &&
      counts.every((count) => Number.isInteger(count) && count >= 1 && count <= MOST_FANS)
    ) {
      return counts;
    }
    const found = Array.isArray(input) ? input.map(describeValue).join(', ') : describeValue(input);
    const expected = `a number of fans from 1 to ${MOST_FANS}, such as 1, "1 to 3" or [1, 2]`;
    context.addIssue({
      code: 'custom',
      message: `found ${found}, expected ${expected}`,
      params: { found, expected },
    });
    return z.NEVER;
  });

function countsIn(input: unknown): readonly number[] {
  if (Array.isArray(input))
    return input.map((count: unknown) => (typeof count === 'number' ? count : Number.NaN));
  if (typeof input === 'number') return [input];
  const [, least = '', most = ''] = /^(\d{1,3}) to (\d{1,3})$/.exec(String(input).trim()) ?? [];
  if (least === '') return [];
  return Array.from(
    { length: Math.max(0, Number(most) - Number(least) + 1) },
    (_, index) => Number(least) + index,
  );
}

/** Form of a bank under `choices`. */
export const bankChoiceForm = z.strictObject({
  fans: z.union([z.literal('catalog'), names.min(1)]).default('catalog'),
  count: countForm.default([1]),
  empty: z.literal('allowed').optional(),
});

/** What may be chosen of a bank. */
export type BankChoice = z.output<typeof bankChoiceForm>;
