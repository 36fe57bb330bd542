import { fanChange } from './fan-change.ts';
import { banksIn, isSameSize, quietestFor } from './fan-screen.ts';
import type { Lever } from './lever.ts';

/** A fan of the same frame that is deeper than the place allows. */
export const thickerFan: Lever = {
  name: 'thicker fan',
  eases: 'by flow',
  isFan: true,
  effort: 'make room',
  changes: (situation, strength) =>
    strength > 1
      ? []
      : banksIn(situation).flatMap((there) => {
          const { bank, place, need } = there;
          const thicker = situation.fans
            .filter((fan) => isSameSize(fan, bank.fan) && fan.depth > place.depth + 1e-6)
            .map((fan) => ({ fan, count: bank.count }));
          return fanChange(situation, there, quietestFor(situation, thicker, need));
        }),
};
