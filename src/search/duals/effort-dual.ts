import type { Fraction } from '../../quantities/dimensions.ts';
import type { Effort } from '../bank-effort.ts';

/** Prices of pressure looked at, energy per pascal: a ratio of √2 loses at most 0.1 dB. */
export const PRICES = Float64Array.from({ length: 48 }, (_, index) => 2 ** (index / 2 - 3));

/** Corners of the lower hull of energies over rises, rises ascending. */
interface Hull {
  rises: Float64Array;
  energies: Float64Array;
  length: number;
}

const hull: Hull = { rises: new Float64Array(0), energies: new Float64Array(0), length: 0 };

/** Whether the last corner lies on or above the line from the one before it to a further point. */
function isHidden({ rises, energies, length }: Hull, rise: number, value: number): boolean {
  const ahead = (energies[length - 1] as number) - (energies[length - 2] as number);
  const along = (rises[length - 1] as number) - (rises[length - 2] as number);
  const whole = value - (energies[length - 2] as number);
  return ahead * (rise - (rises[length - 2] as number)) >= whole * along;
}

/** Takes a further point into the hull; false if it lies left of and below the last corner. */
function takeIn(corners: Hull, rise: number, value: number): boolean {
  const last = corners.length - 1;
  if (last >= 0 && rise <= (corners.rises[last] as number)) {
    if (value >= (corners.energies[last] as number)) return true;
    if (rise < (corners.rises[last] as number)) return false;
    corners.length -= 1;
  }
  while (corners.length > 1 && isHidden(corners, rise, value)) corners.length -= 1;
  corners.rises[corners.length] = rise;
  corners.energies[corners.length] = value;
  corners.length += 1;
  return true;
}

/** Finds the corners of the lower hull; false if the speeds are not in the order of their rises. */
function findHull(effort: Effort, derating: Fraction): boolean {
  if (hull.rises.length < effort.length) {
    hull.rises = new Float64Array(effort.length);
    hull.energies = new Float64Array(effort.length);
  }
  hull.length = 0;
  for (let index = 0; index < effort.length; index++) {
    const given = effort.rises[index] as number;
    if (!takeIn(hull, given > 0 ? derating * given : given, effort.energies[index] as number)) return false;
  }
  return true;
}

/** At a higher price of pressure more of it is worth buying: the best corner is never an earlier one. */
function dualAlong({ rises, energies, length }: Hull, best: Float64Array): void {
  let corner = 0;
  for (let price = 0; price < PRICES.length; price++) {
    const cost = PRICES[price] as number;
    let least = (energies[corner] as number) - cost * (rises[corner] as number);
    for (let next = corner + 1; next < length; next++) {
      const value = (energies[next] as number) - cost * (rises[next] as number);
      if (value > least) break;
      least = value;
      corner = next;
    }
    if (least < (best[price] as number)) best[price] = least;
  }
}

function dualOfAll({ energies, rises, length }: Effort, derating: Fraction, best: Float64Array): void {
  for (let price = 0; price < PRICES.length; price++) {
    const cost = PRICES[price] as number;
    let least = Number.POSITIVE_INFINITY;
    for (let index = 0; index < length; index++) {
      const given = rises[index] as number;
      const value = (energies[index] as number) - cost * (given > 0 ? derating * given : given);
      if (value < least) least = value;
    }
    if (least < (best[price] as number)) best[price] = least;
  }
}

/**
 * For each price of pressure, the least of energy minus price times rise: the dual of "least energy for a rise". The
 * best of several banks are lowered to those of one.
 *
 * @param effort of a bank at one flow
 * @param derating factor on positive rises [-]
 * @param best lowered, one entry per price; infinite before the first bank
 */
export function lowerToDual(effort: Effort, derating: Fraction, best: Float64Array): void {
  if (findHull(effort, derating)) dualAlong(hull, best);
  else dualOfAll(effort, derating, best);
}
