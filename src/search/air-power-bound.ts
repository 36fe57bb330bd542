import { airAt } from '../air/air.ts';
import type { Build, Enclosure } from '../enclosure/enclosure.ts';
import { nearness } from '../enclosure/hearing.ts';
import { conditionsOf } from '../enclosure/pass-state.ts';
import { energy } from '../sound/levels.ts';
import { airPowerByLevel, energyAtFloor, LEVEL_STEP, LEVEL_STEPS } from './bank-limits.ts';
import { neededAirPower } from './needed-air.ts';
import { groupAt, type OptionForest, type OptionTree } from './option-tree.ts';
import { elementKey } from './space.ts';

/**
 * Least sound energy at 1 m that a build needs in each duty [-]; infinite if it cannot do at all. Elements must be
 * chosen; bank places may hold groups.
 */
export type AirPowerBound = (build: Build) => Float64Array;

/** Entry by entry the most of several tables; null if there is none. */
function highest(tables: readonly (Float64Array | null)[]): Float64Array | null {
  const given = tables.filter((table) => table !== null);
  if (given.length === 0) return null;
  return Float64Array.from({ length: LEVEL_STEPS + 1 }, (_, step) =>
    given.reduce((most, table) => Math.max(most, table[step] as number), 0),
  );
}

/** The best of a group of options. */
interface GroupTable {
  readonly most: Float64Array | null;
  /** Least energy at the hold floors [-]. */
  readonly quietest: number;
}

/** Best of every group of a place; groups are made of options and of groups that come after them. */
function groupTables(
  tree: OptionTree,
  tables: readonly (Float64Array | null)[],
  floors: readonly number[],
): readonly GroupTable[] {
  const found: GroupTable[] = [];
  for (let index = tree.length - 1; index >= 0; index--) {
    const { parts } = groupAt(tree, -1 - index);
    const inner = parts.map((part) => (part < 0 ? found[-1 - part] : undefined));
    found[index] = {
      most: highest(parts.map((part, at) => inner[at]?.most ?? tables[part] ?? null)),
      quietest: parts.reduce(
        (least, part, at) => Math.min(least, inner[at]?.quietest ?? floors[part] ?? 0),
        Number.POSITIVE_INFINITY,
      ),
    };
  }
  return found;
}

/**
 * Prepares a bound that needs no pass: the fans of a build must give the air power its parts ask for, and the
 * louder they may be the more they give.
 *
 * Tables of the banks and the needs of each set of elements are worked out once.
 *
 * @param enclosure the scenario
 * @param forest groups of the options of its places
 */
export function createAirPowerBound(enclosure: Enclosure, forest: OptionForest): AirPowerBound {
  const airs = enclosure.duties.map((duty) => airAt(conditionsOf(enclosure, duty).site, duty.room));
  const densest = Math.max(...airs.map((air) => air.density));
  const near = enclosure.places.map((_, index) => nearness(enclosure, index));
  const tables = enclosure.places.map((place, index) =>
    place.kind === 'bank'
      ? place.options.map((bank) =>
          bank ? airPowerByLevel(enclosure, bank, near[index] as number, densest) : null,
        )
      : [],
  );
  const floors = enclosure.places.map((place, index) =>
    place.kind === 'bank'
      ? place.options.map((bank) => (bank ? energyAtFloor(enclosure, bank, near[index] as number) : 0))
      : [],
  );
  const needs = new Map<number, Float64Array>();

  const needsOf = (build: Build): Float64Array => {
    const key = elementKey(enclosure, build);
    let known = needs.get(key);
    if (!known) {
      known = Float64Array.from(enclosure.duties, (duty) => neededAirPower(enclosure, build, duty));
      needs.set(key, known);
    }
    return known;
  };

  const groups = forest.map((tree, place) => groupTables(tree, tables[place] ?? [], floors[place] ?? []));

  const given = (build: Build, step: number): number => {
    let sum = 0;
    for (let place = 0; place < tables.length; place++) {
      const code = build[place] as number;
      const table = code < 0 ? groups[place]?.[-1 - code]?.most : tables[place]?.[code];
      sum += table?.[step] ?? 0;
    }
    return sum;
  };

  /** Least step of the tables at which the banks give enough; the last one below it is the bound. */
  const leastEnergy = (build: Build, need: number): number => {
    if (need <= 0) return 0;
    if (given(build, LEVEL_STEPS) < need) return Number.POSITIVE_INFINITY;
    let low = -1;
    let high = LEVEL_STEPS;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (given(build, middle) < need) low = middle;
      else high = middle;
    }
    return low < 0 ? 0 : energy(low * LEVEL_STEP);
  };

  /** Energy of all banks at their hold floors: no build is quieter. */
  const atFloors = (build: Build): number => {
    let sum = 0;
    for (let place = 0; place < floors.length; place++) {
      const code = build[place] as number;
      sum += (code < 0 ? groups[place]?.[-1 - code]?.quietest : floors[place]?.[code]) ?? 0;
    }
    return sum;
  };

  return (build) => {
    const least = atFloors(build);
    return needsOf(build).map((need) => Math.max(least, leastEnergy(build, need)));
  };
}
