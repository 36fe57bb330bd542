import type { Lever } from './lever.ts';

/** Keeps the box's own exhaust away from what it draws in. */
export const exhaustKeptAway: Lever = {
  name: 'exhaust kept away',
  eases: 'by keeping exhaust away',
  isFan: false,
  effort: 'seal',
  changes: ({ enclosure, build }, strength) => {
    if (strength > 1) return [];
    return enclosure.legs.flatMap((leg, index) => {
      if (leg.recirculation === 0) return [];
      const legs = enclosure.legs.with(index, { ...leg, recirculation: 0 });
      const notes = ['a baffle between exhaust and intake, or another side of the box for one of them.'];
      return [
        { at: leg.id, what: 'draws in room air only', notes, enclosure: { ...enclosure, legs }, build },
      ];
    });
  },
};
