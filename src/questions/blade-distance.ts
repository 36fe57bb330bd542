import { type Build, type Enclosure, type Leg, OUTSIDE } from '../enclosure/enclosure.ts';
import { bankIn } from '../enclosure/stages.ts';
import type { Metres } from '../quantities/dimensions.ts';

/** What a finger meets on its way from an opening, looking along the leg one way. */
function distanceAlong(
  enclosure: Enclosure,
  build: Build,
  leg: Leg,
  from: number,
  step: 1 | -1,
): Metres | undefined {
  let empty = 0;
  for (let at = from + step; at >= 0 && at < leg.through.length; at += step) {
    const index = leg.through[at] as number;
    const place = enclosure.places[index];
    // Whatever else stands there stops a finger.
    if (place?.kind !== 'bank') return undefined;
    if (bankIn(enclosure, build, index)) return empty + (step === 1 ? place.inletGap : place.outletGap);
    empty += place.depth;
  }
  return undefined;
}

/**
 * Clear distance from an opening of the outer wall to the frame of the fan next to it [m]; the blades stand no nearer.
 *
 * @param enclosure the scenario
 * @param build one option index per place
 * @param place of the opening
 * @returns undefined if no fan is next to it in its leg, or it is not in the outer wall: what fingers can reach beyond
 *   is not in the drawing
 */
export function bladeDistance(enclosure: Enclosure, build: Build, place: number): Metres | undefined {
  const leg = enclosure.legs.find(({ through }) => through.includes(place));
  if (!leg) return undefined;
  const at = leg.through.indexOf(place);
  const inward = [
    ...(leg.from === OUTSIDE ? [distanceAlong(enclosure, build, leg, at, 1)] : []),
    ...(leg.to === OUTSIDE ? [distanceAlong(enclosure, build, leg, at, -1)] : []),
  ].filter((distance) => distance !== undefined);
  return inward.length === 0 ? undefined : Math.min(...inward);
}
