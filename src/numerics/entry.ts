/**
 * The entry of a list at an index that is known to lie inside it.
 *
 * @param values list of numbers [any unit]
 * @param index place, 0 … length − 1 [-]
 * @returns the entry [unit of the list]
 * @throws RangeError if there is no such entry, which is a mistake in the calling code
 */
export function entry(values: ArrayLike<number>, index: number): number {
  const value = values[index];
  if (value === undefined) throw new RangeError(`no entry ${index} in a list of ${values.length}`);
  return value;
}
