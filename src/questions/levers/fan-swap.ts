import type { Bank } from '../../enclosure/enclosure.ts';
import type { FanModel } from '../../fan/fan-model.ts';
import { fanChange } from './fan-change.ts';
import { type BankThere, banksIn, quietestFor } from './fan-screen.ts';
import type { Lever } from './lever.ts';

/** Rows of one fan of the catalog that may take the place of a bank; none if it may not. */
export type Rows = (there: BankThere, fan: FanModel) => readonly Bank[];

/**
 * The lever of putting another fan into a place: of all that may stand there and do the work of the present one, the
 * quietest. It is moved once, and not where the present fan is the best already.
 *
 * @param name of the lever
 * @param effort it takes
 * @param rows which fans may stand there
 */
export function fanSwap(name: string, effort: Lever['effort'], rows: Rows): Lever {
  return {
    name,
    eases: 'by flow',
    isFan: true,
    effort,
    changes: (situation, strength) =>
      strength > 1
        ? []
        : banksIn(situation).flatMap((there) => {
            const banks = situation.fans.flatMap((fan) => rows(there, fan));
            const best = quietestFor(situation, banks, there.need);
            return best?.fan === there.bank.fan ? [] : fanChange(situation, there, best);
          }),
  };
}
