import { fitsDepth, isSameSize } from './fan-screen.ts';
import { fanSwap } from './fan-swap.ts';

/** Another fan of the catalog that fits the place: of those that do the work of the present one, the quietest. */
export const otherFan = fanSwap('other fan', 'buy', ({ bank, place }, fan) =>
  isSameSize(fan, bank.fan) && fitsDepth(fan, place) ? [{ fan, count: bank.count }] : [],
);
