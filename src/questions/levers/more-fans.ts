import { fanChange } from './fan-change.ts';
import { banksIn } from './fan-screen.ts';
import type { Lever } from './lever.ts';

/** More fans of the same model side by side, all of them slower. */
export const moreFans: Lever = {
  name: 'one more fan, slower',
  eases: 'by flow',
  isFan: true,
  effort: 'make room',
  changes: (situation, strength) =>
    banksIn(situation).flatMap((there) => {
      const { fan, count, lost } = there.bank;
      return fanChange(situation, there, { fan, count: count + strength, ...(lost ? { lost } : {}) });
    }),
};
