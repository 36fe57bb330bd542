import type { WhatNext } from '../../questions/what-next.ts';
import { toCsv } from '../csv.ts';

const HEADS = [
  'lever',
  'at',
  'change',
  'cooler [K]',
  'quieter [dB]',
  'level [dB(A)]',
  'adequate',
  'price',
  'fan power [W]',
  'depth [m]',
];

/**
 * What to change next as comma-separated values, in SI: a line a change, best first; the heads alone if nothing was
 * tried.
 *
 * @param next changes
 */
export function nextCsv(next: WhatNext | undefined): string {
  const rows = (next?.changes ?? []).map((change) => [
    change.lever,
    change.at,
    change.what,
    change.cooler ?? null,
    change.quieter ?? null,
    change.level ?? null,
    change.adequate,
    change.price ?? null,
    change.power,
    change.depth,
  ]);
  return toCsv(HEADS, rows);
}
