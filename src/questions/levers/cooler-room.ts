import type { KelvinDifference } from '../../quantities/dimensions.ts';
import type { Lever } from './lever.ts';

/** How much cooler the room is in one step [K] (assumption). */
const STEP: KelvinDifference = 2;

/** A cooler room in every duty, or a cooler place for the box. */
export const coolerRoom: Lever = {
  name: 'cooler room',
  eases: 'by a cooler room',
  isFan: false,
  effort: 'move',
  changes: ({ enclosure, build }, strength) => {
    const less = STEP * strength;
    const duties = enclosure.duties.map((duty) => ({ ...duty, room: duty.room - less }));
    const notes = ['another place for the box, out of the sun and away from what is warm.'];
    return [
      {
        at: 'room',
        what: `${less} K cooler in every duty`,
        notes,
        enclosure: { ...enclosure, duties },
        build,
      },
    ];
  },
};
