import { allowedRanges, type SpeedRange } from './avoided-speeds.ts';
import type { Machine } from './machine.ts';

/** Banks that run at one share of full speed. */
export interface Drive {
  /** Indices into the banks of the machine, at least one. */
  readonly banks: readonly number[];
  /** Shares of full speed all of them may run at, slowest first; none if they have none in common. */
  readonly ranges: readonly SpeedRange[];
}

/** What two lists of ranges have in common. */
function common(ones: readonly SpeedRange[], others: readonly SpeedRange[]): readonly SpeedRange[] {
  return ones.flatMap((one) =>
    others.flatMap((other) => {
      const from = Math.max(one.from, other.from);
      const to = Math.min(one.to, other.to);
      return from <= to ? [{ from, to }] : [];
    }),
  );
}

/**
 * The speeds of a build that may be chosen: one for the banks of each header, one for every other bank; in the order
 * of their first banks.
 *
 * @param machine the build
 */
export function drivesOf(machine: Machine): readonly Drive[] {
  const { headers = [] } = machine.plant.enclosure;
  const groups = new Map<string, number[]>();
  for (const [index, { place }] of machine.banks.entries()) {
    const header = headers.findIndex(({ places }) => places.includes(place));
    const key = header < 0 ? `bank ${index}` : `header ${header}`;
    groups.set(key, [...(groups.get(key) ?? []), index]);
  }
  return [...groups.values()].map((banks) => ({
    banks,
    ranges: banks
      .map((index) => allowedRanges(machine.banks[index] as Machine['banks'][number]))
      .reduce(common),
  }));
}

/**
 * Speeds of all banks from one value a drive.
 *
 * @param drives of the build
 * @param values one a drive [-]
 */
export function perBank(drives: readonly Drive[], values: ArrayLike<number>): Float64Array {
  const ratios = new Float64Array(drives.reduce((sum, { banks }) => sum + banks.length, 0));
  drives.forEach(({ banks }, drive) => {
    for (const bank of banks) ratios[bank] = values[drive] as number;
  });
  return ratios;
}

/**
 * One value a drive from the speeds of all banks: that of its first bank.
 *
 * @param drives of the build
 * @param ratios one a bank [-]
 */
export function perDrive(drives: readonly Drive[], ratios: Float64Array): Float64Array {
  return Float64Array.from(drives, ({ banks }) => ratios[banks[0] as number] as number);
}
