import type { Fraction, RevolutionsPerSecond } from '../quantities/dimensions.ts';
import type { MachineBank } from './machine.ts';

/** A band of speeds a bank should not run in, ends excluded. */
export interface SpeedBand {
  readonly from: RevolutionsPerSecond;
  readonly to: RevolutionsPerSecond;
}

/** Shares of full speed a bank may run at, ends included [-]. */
export interface SpeedRange {
  readonly from: Fraction;
  readonly to: Fraction;
}

/** Cuts a band out of a range; nothing, one or two ranges are left. */
function without(range: SpeedRange, band: SpeedRange): readonly SpeedRange[] {
  if (band.to <= range.from || band.from >= range.to) return [range];
  const below = band.from >= range.from ? [{ from: range.from, to: band.from }] : [];
  const above = band.to <= range.to ? [{ from: band.to, to: range.to }] : [];
  return [...below, ...above];
}

/**
 * Ranges of speed a bank may run in, slowest first: from hold floor to full speed without the bands to avoid. If
 * the bands leave nothing, the bank has no speed at all and the list is empty.
 *
 * @param bank in its place
 */
export function allowedRanges(bank: MachineBank): readonly SpeedRange[] {
  const { holdFloor, fullSpeed } = bank.bank.fan;
  let ranges: readonly SpeedRange[] = [{ from: holdFloor, to: 1 }];
  for (const { from, to } of bank.avoid) {
    const band = { from: from / fullSpeed, to: to / fullSpeed };
    ranges = ranges.flatMap((range) => without(range, band));
  }
  return ranges;
}
