import { fanChange } from './fan-change.ts';
import { banksIn, isSameSize, quietestFor } from './fan-screen.ts';
import type { Lever } from './lever.ts';

/** Frames beyond this many times the present one are another box [-] (assumption). */
const LARGEST = 1.55;

/** A fan of a larger frame, no deeper than the place; one of them may stand for several. */
export const largerFan: Lever = {
  name: 'larger fan',
  eases: 'by flow',
  isFan: true,
  effort: 'make room',
  changes: (situation, strength) =>
    strength > 1
      ? []
      : banksIn(situation).flatMap((there) => {
          const { bank, place, need } = there;
          const counts = bank.count > 1 ? [1, bank.count] : [1];
          const larger = situation.fans
            .filter(
              (fan) =>
                fan.size > bank.fan.size &&
                !isSameSize(fan, bank.fan) &&
                fan.size <= LARGEST * bank.fan.size &&
                fan.depth <= place.depth + 1e-6,
            )
            .flatMap((fan) => counts.map((count) => ({ fan, count })));
          return fanChange(situation, there, quietestFor(situation, larger, need));
        }),
};
