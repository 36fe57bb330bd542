import { fitsDepth, isSameSize } from './fan-screen.ts';
import { fanSwap } from './fan-swap.ts';

/** Frames beyond this many times the present one are another box [-] (assumption). */
const LARGEST = 1.55;

/** A fan of a larger frame, no deeper than the place; one of them may stand for several. */
export const largerFan = fanSwap('larger fan', 'make room', ({ bank, place }, fan) => {
  const isLarger = fan.size > bank.fan.size && !isSameSize(fan, bank.fan);
  if (!isLarger || fan.size > LARGEST * bank.fan.size || !fitsDepth(fan, place)) return [];
  const counts = bank.count > 1 ? [1, bank.count] : [1];
  return counts.map((count) => ({ fan, count }));
});
