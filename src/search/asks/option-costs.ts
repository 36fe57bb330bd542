import type { Bank, Build, Enclosure } from '../../enclosure/enclosure.ts';
import { groupAt, type OptionForest } from '../option-tree.ts';

/** Something that each bank adds to a build, looked up by place and code. */
export type OptionCosts = (build: Build, place: number) => number;

/** Least of every group; groups are made of options and of groups that come after them. */
function leastOfGroups(tree: OptionForest[number], costs: readonly number[]): readonly number[] {
  const least: number[] = [];
  for (let index = tree.length - 1; index >= 0; index--) {
    const { parts } = groupAt(tree, -1 - index);
    const each = parts.map((part) => (part < 0 ? least[-1 - part] : costs[part]) as number);
    least[index] = Math.min(...each);
  }
  return least;
}

/**
 * What the options of each place cost, at least where a place holds a group.
 *
 * @param enclosure the scenario
 * @param forest groups of the options of its places
 * @param of cost of a bank; of none for an empty place
 */
export function optionCosts(
  enclosure: Enclosure,
  forest: OptionForest,
  of: (bank: Bank | null) => number,
): OptionCosts {
  const tables = enclosure.places.map((place, index) => {
    if (place.kind !== 'bank') return { costs: [], least: [] };
    const costs = place.options.map(of);
    return { costs, least: leastOfGroups(forest[index] ?? [], costs) };
  });
  return (build, place) => {
    const code = build[place] as number;
    const { costs, least } = tables[place] as (typeof tables)[number];
    return (code < 0 ? least[-1 - code] : costs[code]) ?? 0;
  };
}

/**
 * Sum over some places of what their options cost at least.
 *
 * @param costs by place and code
 * @param build a build, or a set of builds with groups in its places
 * @param places that count
 */
export function sumOf(costs: OptionCosts, build: Build, places: readonly number[]): number {
  let sum = 0;
  for (const place of places) sum += costs(build, place);
  return sum;
}
