import { fitsDepth, isSameSize } from './fan-screen.ts';
import { fanSwap } from './fan-swap.ts';

/** A fan of the same frame that is deeper than the place allows. */
export const thickerFan = fanSwap('thicker fan', 'make room', ({ bank, place }, fan) =>
  isSameSize(fan, bank.fan) && !fitsDepth(fan, place) ? [{ fan, count: bank.count }] : [],
);
