import { type Enclosure, type Leg, OUTSIDE } from '../../enclosure/enclosure.ts';
import type { Lever, Situation } from './lever.ts';

/** Whether a leg is nothing but gaps. */
function isGap({ enclosure, build }: Situation, { through }: Leg): boolean {
  return through.every((index) => {
    const place = enclosure.places[index];
    return place?.kind === 'element' && place.options[build[index] ?? 0]?.element.purpose === 'leaks';
  });
}

/** Whether every chamber still has a way in and a way out. */
function breathes({ chambers }: Enclosure, legs: readonly Leg[]): boolean {
  return chambers.every(
    (_, chamber) =>
      chamber === OUTSIDE || legs.filter(({ from, to }) => from === chamber || to === chamber).length > 1,
  );
}

/** Closes gaps through which air passes by what it should cool. */
export const sealedGap: Lever = {
  name: 'sealed gap',
  eases: 'by flow',
  isFan: false,
  effort: 'seal',
  changes: (situation, strength) => {
    const { enclosure, build } = situation;
    if (strength > 1) return [];
    return enclosure.legs.flatMap((leg) => {
      const legs = enclosure.legs.filter((other) => other !== leg);
      if (!isGap(situation, leg) || !breathes(enclosure, legs)) return [];
      const notes = ['a gasket, or tape, that has to stay tight.'];
      return [{ at: leg.id, what: 'closed', notes, enclosure: { ...enclosure, legs }, build }];
    });
  },
};
