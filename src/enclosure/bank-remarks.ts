import { UNCERTAIN_SIZE, UNCERTAIN_SPEED } from '../fan/fan-assumptions.ts';
import type { MachineBank } from './machine.ts';
import type { BankOutcome } from './outcome.ts';

/**
 * Where the fan laws are uncertain, in words.
 *
 * @param entries banks of the build
 * @param banks the same at their working points
 */
export function bankRemarks(
  entries: readonly MachineBank[],
  banks: readonly BankOutcome[],
): readonly string[] {
  return banks.flatMap(({ place, ratio }, index) => {
    const size = entries[index]?.bank.fan.size ?? Number.POSITIVE_INFINITY;
    return [
      ...(ratio < UNCERTAIN_SPEED
        ? [`${place}: below ${100 * UNCERTAIN_SPEED} % speed the fan laws are uncertain`]
        : []),
      ...(size < UNCERTAIN_SIZE
        ? [`${place}: for fans smaller than ${1000 * UNCERTAIN_SIZE} mm the fan laws are uncertain`]
        : []),
    ];
  });
}
