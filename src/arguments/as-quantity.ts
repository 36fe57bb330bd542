import type { KindName } from '../quantities/unit-table.ts';
import { quantityOption } from './quantity-option.ts';

/** What must hold of a value, with the words that say so. */
export type Fits = readonly [(value: number) => boolean, string];

/** Above zero. */
export const ABOVE_ZERO: Fits = [(value) => value > 0, 'something above zero'];

/**
 * Turns an option given as a quantity into SI as the parser reads it.
 *
 * @param option its name, for the message
 * @param kind of quantity
 * @param fits what else must hold of it
 * @returns a function that takes the text and throws what is wrong with it
 */
export function asQuantity(
  option: string,
  kind: KindName,
  [holds, words]: Fits = [Number.isFinite, ''],
): (text: string | undefined) => number | undefined {
  return (text) => {
    if (text === undefined) return undefined;
    const value = quantityOption(kind, option, String(text));
    if (!holds(value)) throw new Error(`--${option}: found ${text}, expected ${words}`);
    return value;
  };
}

/**
 * The same for an option that may be given several times.
 *
 * @param option its name, for the message
 * @param kind of quantity
 * @param fits what else must hold of each
 */
export function asQuantities(
  option: string,
  kind: KindName,
  fits?: Fits,
): (texts: readonly string[]) => number[] {
  const one = asQuantity(option, kind, fits);
  return (texts) => texts.flatMap((text) => one(text) ?? []);
}
