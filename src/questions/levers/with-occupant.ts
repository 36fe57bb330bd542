import type { Element } from '../../elements/element.ts';
import type { Bank, Build, Enclosure, Place } from '../../enclosure/enclosure.ts';

/** An enclosure and a build of it. */
interface Changed {
  readonly enclosure: Enclosure;
  readonly build: Build;
}

function withOption(enclosure: Enclosure, build: Build, index: number, place: Place): Changed {
  return {
    enclosure: { ...enclosure, places: enclosure.places.with(index, place) },
    build: build.with(index, place.options.length - 1),
  };
}

/**
 * The build with another element in one of its places.
 *
 * @param enclosure the scenario
 * @param build one option index per place
 * @param index of a place for an element
 * @param element to stand there
 */
export function withElement(enclosure: Enclosure, build: Build, index: number, element: Element): Changed {
  const place = enclosure.places[index];
  if (place?.kind !== 'element') return { enclosure, build };
  return withOption(enclosure, build, index, {
    ...place,
    options: [...place.options, { label: '', element }],
  });
}

/**
 * The build with other fans in one of its places.
 *
 * @param enclosure the scenario
 * @param build one option index per place
 * @param index of a place for fans
 * @param bank to stand there
 */
export function withBank(enclosure: Enclosure, build: Build, index: number, bank: Bank): Changed {
  const place = enclosure.places[index];
  if (place?.kind !== 'bank') return { enclosure, build };
  return withOption(enclosure, build, index, { ...place, options: [...place.options, bank] });
}
