import { bankWords } from '../enclosure/bank-words.ts';
import type { Build, Enclosure, Place } from '../enclosure/enclosure.ts';
import type { Quantity } from './quantity.ts';

/** Tells an option of a place from the others by what it is; settings of freed fields are left out. */
function wordsOf(place: Place, option: number, freed: readonly string[]): string {
  if (place.kind === 'bank') return bankWords(place.options[option] ?? null);
  const label = place.options[option]?.label ?? '';
  return label
    .split(', ')
    .filter((part) => !freed.some((field) => part.startsWith(`${field} `)))
    .join(', ');
}

/**
 * The same build in a scenario read with other values: by fans and words, since options may have gone or come.
 *
 * @param enclosure the scenario as it was
 * @param build in it
 * @param varied the scenario as it is now
 * @param frees fields whose values no longer tell options apart
 * @returns the build, or why it is no longer possible
 */
export function sameBuild(
  enclosure: Enclosure,
  build: Build,
  varied: Enclosure,
  frees: Quantity['frees'],
): Build | string {
  const options: number[] = [];
  for (const place of varied.places) {
    const before = enclosure.places.findIndex(({ id }) => id === place.id);
    const old = enclosure.places[before];
    const freed = frees.filter((each) => each.place === place.id).map(({ field }) => field);
    const wanted = old ? wordsOf(old, build[before] ?? 0, freed) : '';
    const only = place.options.length === 1 && place.kind === 'element';
    const found = only ? 0 : place.options.findIndex((_, option) => wordsOf(place, option, freed) === wanted);
    if (found < 0) return `${wanted} is no longer possible in ${place.id}`;
    options.push(found);
  }
  return options;
}
