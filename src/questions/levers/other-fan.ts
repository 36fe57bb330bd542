import { fanChange } from './fan-change.ts';
import { banksIn, isSameSize, quietestFor } from './fan-screen.ts';
import type { Lever } from './lever.ts';

/** Another fan of the catalog that fits the place: of those that do the work of the present one, the quietest. */
export const otherFan: Lever = {
  name: 'other fan',
  eases: 'by flow',
  isFan: true,
  effort: 'buy',
  changes: (situation, strength) =>
    strength > 1
      ? []
      : banksIn(situation).flatMap((there) => {
          const { bank, place, need } = there;
          const others = situation.fans
            .filter((fan) => isSameSize(fan, bank.fan) && fan.depth <= place.depth + 1e-6)
            .map((fan) => ({ fan, count: bank.count }));
          const best = quietestFor(situation, others, need);
          return best?.fan === bank.fan ? [] : fanChange(situation, there, best);
        }),
};
