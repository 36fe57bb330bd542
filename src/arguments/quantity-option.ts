import type { KindName } from '../quantities/unit-table.ts';
import { readQuantity } from '../quantities/units.ts';

/**
 * Reads the quantity that an option is given, into SI.
 *
 * @param kind of quantity
 * @param option its name, for the message
 * @param text as given
 * @throws Error that says what is wrong with the text
 */
export function quantityOption(kind: KindName, option: string, text: string): number {
  const read = readQuantity(kind, text);
  if (read.ok) return read.value;
  const { found, expected, suggestion } = read.misfit;
  const hint = suggestion === undefined ? '' : `; did you mean "${suggestion}"?`;
  throw new Error(`--${option}: found ${found}, expected ${expected}${hint}`);
}
