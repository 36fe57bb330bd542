import type { Change, Lever, Situation } from './lever.ts';

function without({ enclosure, build }: Situation, index: number): readonly Change[] {
  const place = enclosure.places[index];
  const leg = enclosure.legs.findIndex(({ through }) => through.includes(index));
  const there = enclosure.legs[leg];
  // An open leg without any loss is no airway.
  if (!place || !there || there.through.length < 2) return [];
  const legs = enclosure.legs.with(leg, {
    ...there,
    through: there.through.filter((each) => each !== index),
  });
  return [
    {
      at: place.id,
      what: 'left out',
      notes: ['dust goes in: fins and fans have to be cleaned more often.'],
      enclosure: { ...enclosure, legs },
      build,
    },
  ];
}

/** Does without what only keeps dust out. */
export const withoutFilter: Lever = {
  name: 'no filter',
  eases: 'by flow',
  isFan: false,
  effort: 'cut',
  changes: (situation, strength) => {
    const { enclosure, build } = situation;
    if (strength > 1) return [];
    return enclosure.places.flatMap((place, index) => {
      const filters =
        place.kind === 'element' && place.options[build[index] ?? 0]?.element.purpose === 'keeps dust out';
      return filters ? without(situation, index) : [];
    });
  },
};
