/**
 * Rounds amounts so that the rounded ones sum to a rounded total: each is cut down to a whole number of steps,
 * and the steps that are missing go to those that lost most.
 *
 * Source: method of largest remainders (Hamilton), from memory.
 *
 * @param amounts in steps, finite, sum close to the total
 * @param total in steps, whole
 * @returns whole steps, one number an amount; each within one step of the exact one if the amounts sum to
 *   within half a step of the total
 */
export function apportion(amounts: readonly number[], total: number): readonly number[] {
  const steps = amounts.map(Math.floor);
  const missing = total - steps.reduce((sum, value) => sum + value, 0);
  const mostLost = amounts
    .map((value, index) => ({ lost: value - Math.floor(value), index }))
    .sort((one, other) => other.lost - one.lost || one.index - other.index);
  const order = missing >= 0 ? mostLost : mostLost.reverse();
  for (let given = 0; given < Math.abs(missing) && order.length > 0; given++) {
    const { index } = order[given % order.length] ?? { index: 0 };
    steps[index] = (steps[index] ?? 0) + Math.sign(missing);
  }
  return steps;
}
