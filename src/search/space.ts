import type { Build, Enclosure } from '../enclosure/enclosure.ts';
import { groupAt, type OptionForest } from './option-tree.ts';

/** Code of all options of a place, in a partial build: nothing has been chosen yet. */
export const OPEN = -1;

/** Number of builds: the product of the options of all places; may exceed what an integer holds exactly. */
export function spaceSize(enclosure: Enclosure): number {
  return enclosure.places.reduce((size, place) => size * place.options.length, 1);
}

/** Number of builds a partial build stands for. */
export function buildsIn(forest: OptionForest, partial: Build): number {
  return forest.reduce((size, tree, index) => {
    const code = partial[index] as number;
    return code < 0 ? size * groupAt(tree, code).options.length : size;
  }, 1);
}

/** Every set of elements, bank places left open. */
export function elementSets(enclosure: Enclosure): readonly Build[] {
  let sets: Build[] = [enclosure.places.map(() => OPEN)];
  enclosure.places.forEach((place, index) => {
    if (place.kind !== 'element') return;
    sets = sets.flatMap((set) => place.options.map((_, option) => set.with(index, option)));
  });
  return sets;
}

/** Every complete build, for small spaces. */
export function allBuilds(enclosure: Enclosure): readonly Build[] {
  let builds: Build[] = [[]];
  for (const place of enclosure.places) {
    builds = builds.flatMap((build) => place.options.map((_, option) => [...build, option]));
  }
  return builds;
}

/** Number of a build's set of elements, whatever stands in its bank places. */
export function elementKey(enclosure: Enclosure, build: Build): number {
  let key = 0;
  enclosure.places.forEach((place, index) => {
    if (place.kind === 'element') key = key * place.options.length + (build[index] as number);
  });
  return key;
}
