import type { Build, Enclosure } from '../enclosure/enclosure.ts';
import { groupAt, type OptionForest, type OptionTree } from './option-tree.ts';

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

/** Options still open in a place of a partial build [-]; 0 if it is decided. */
function openOptions(forest: OptionForest, build: Build, place: number): number {
  const code = build[place] as number;
  return code < 0 ? groupAt(forest[place] as OptionTree, code).options.length : 0;
}

/**
 * The place with the most options still open; the first of them if several have as many.
 *
 * @param forest groups of the options of all places
 * @param places that may be open
 * @param build partial
 * @returns undefined if all are decided
 */
export function widestPlace(
  forest: OptionForest,
  places: readonly number[],
  build: Build,
): number | undefined {
  let most = 0;
  let widest: number | undefined;
  for (const place of places) {
    const size = openOptions(forest, build, place);
    if (size > most) {
      most = size;
      widest = place;
    }
  }
  return widest;
}

/** Sets with more options than this in one place are split before their bound is made tight [-]. */
const WIDE = 8;

/**
 * Whether a place has so many options open that its set is split before it is looked at closely.
 *
 * @param forest groups of the options of all places
 * @param build partial
 * @param place the widest; undefined if all are decided
 */
export function isWide(forest: OptionForest, build: Build, place: number | undefined): boolean {
  return place !== undefined && openOptions(forest, build, place) > WIDE;
}
