import { allowedRanges } from '../enclosure/avoided-speeds.ts';
import type { MachineBank } from '../enclosure/machine.ts';
import type { Fraction, RevolutionsPerSecond } from '../quantities/dimensions.ts';

/** A speed as a controller is told it. */
export interface BankSpeed {
  /** Share of full speed [-]. */
  readonly ratio: Fraction;
  readonly speed: RevolutionsPerSecond;
}

/** A share of full speed of a bank as a speed. */
export function speedOf({ bank }: MachineBank, ratio: Fraction): BankSpeed {
  return { ratio, speed: ratio * bank.fan.fullSpeed };
}

/** Least speed not below the start floor that is in no band to avoid; full speed if there is none [-]. */
export function startRatio(bank: MachineBank): Fraction {
  const { startFloor } = bank.bank.fan;
  const range = allowedRanges(bank).find(({ to }) => to >= startFloor);
  return range ? Math.max(range.from, startFloor) : 1;
}
