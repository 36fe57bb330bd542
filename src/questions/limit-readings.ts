import { askedLimits } from '../enclosure/asked-limits.ts';
import type { Duty, LimitKind } from '../enclosure/enclosure.ts';
import type { Machine } from '../enclosure/machine.ts';
import { createPass } from '../enclosure/pass.ts';
import { conditionsOf, newPassState } from '../enclosure/pass-state.ts';
import type { KelvinDifference, Kelvins } from '../quantities/dimensions.ts';

/** Accuracy of the temperatures [K]. */
const TOLERANCE: KelvinDifference = 1e-7;

/** A temperature that has a limit, as found. */
export interface LimitReading {
  /** Part, or chamber of a panel. */
  readonly subject: string;
  readonly of: LimitKind;
  readonly limit: Kelvins;
  readonly found: Kelvins;
}

/** Temperatures of all that has a limit in a state of use at given speeds; undefined without a solution. */
export type LimitReader = (duty: Duty, ratios: ArrayLike<number>) => readonly LimitReading[] | undefined;

/**
 * Prepares readings of a build. Each starts from the air and heat of the one before.
 *
 * @param machine the build
 */
export function limitReader(machine: Machine): LimitReader {
  const pass = createPass(machine);
  const state = newPassState(machine);
  return (duty, ratios) => {
    const conditions = conditionsOf(machine.plant.enclosure, duty);
    if (pass(conditions, Float64Array.from(ratios), state, TOLERANCE)) return undefined;
    return askedLimits(machine, duty).map(({ subject, of, limit, found }) => ({
      subject,
      of,
      limit,
      found: found(state),
    }));
  };
}
