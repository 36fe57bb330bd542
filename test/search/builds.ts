import type { Build, Enclosure } from '../../src/enclosure/enclosure.ts';

/** Every build of an enclosure, one by one. */
export function buildsOf(enclosure: Enclosure): readonly Build[] {
  return enclosure.places.reduce<readonly Build[]>(
    (builds, place) => builds.flatMap((build) => place.options.map((_, option) => [...build, option])),
    [[]],
  );
}
