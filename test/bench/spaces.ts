import { type CatalogPlan, inventCatalog } from './invented-catalog.ts';
import { inventScenario, type ScenarioPlan } from './invented-scenario.ts';

/** Where generated spaces are written, from the root of the repository. */
export const SPACES = 'reports/spaces';

/** A space of builds: a scenario, and its catalog if that is not the shipped one. */
export interface Space {
  readonly name: string;
  readonly scenario: string;
  /** Null: the shipped fans. */
  readonly catalog: string | null;
}

/** A space that is generated: an enclosure and a catalog, both invented. */
export interface SpacePlan {
  readonly name: string;
  readonly scenario: ScenarioPlan;
  readonly catalog: CatalogPlan;
  /** Builds it is made to hold; a test holds it against what `check` counts. */
  readonly builds: number;
}

const SEED = 20_261;
const HOLES = [4, 3, 5] as const;
const REAR_HOLES = [5, 4, 6] as const;

/** Builds of three banks that may all stay empty, or of two. */
function sizeOf({ scenario, catalog }: Omit<SpacePlan, 'builds' | 'name'>): number {
  const options = (size: number): number => scenario.most * (catalog.sizes[size] ?? 0) + 1;
  const elements = scenario.front.length * scenario.rear.length * scenario.filters;
  return elements * options(92) ** (scenario.banks - 1) * options(80);
}

function planOf(name: string, scenario: ScenarioPlan, catalog: CatalogPlan): SpacePlan {
  return { name, scenario, catalog, builds: sizeOf({ scenario, catalog }) };
}

/** The spaces S2 to S4: some 10⁷ builds of two banks, 10¹⁰ of three from 600 fans, and the same from 2000. */
export const largeSpaces: readonly SpacePlan[] = [
  planOf(
    's2',
    {
      title: 'Bench supply, fans on one side of the fins',
      banks: 2,
      most: 3,
      front: HOLES,
      rear: [5, 4, 6, 7],
      filters: 3,
    },
    { seed: SEED, sizes: { 80: 180, 92: 180 }, strangers: 40 },
  ),
  ...[
    { name: 's3', fans: 240, strangers: 120 },
    { name: 's4', fans: 900, strangers: 200 },
  ].map(({ name, fans, strangers }) =>
    planOf(
      name,
      {
        title: `Bench supply, ${2 * fans + strangers} fans to choose from`,
        banks: 3,
        most: 3,
        front: HOLES,
        rear: REAR_HOLES,
        filters: 3,
      },
      { seed: SEED, sizes: { 80: fans, 92: fans }, strangers },
    ),
  ),
];

/** Fans of each size, and how many of the three elements vary, for each power of ten. */
const rungs: readonly (readonly [decade: number, fans: number, varied: 0 | 1 | 2 | 3])[] = [
  [3, 4, 0],
  [4, 5, 1],
  [5, 11, 1],
  [6, 16, 2],
  [7, 34, 2],
  [8, 51, 3],
  [9, 111, 3],
  [10, 239, 3],
  [11, 515, 3],
];

/** The enclosure of S3 with spaces of 10³ to 10¹¹ builds; each holds all fans of the ones before. */
export const ladder: readonly SpacePlan[] = rungs.map(([decade, fans, varied]) =>
  planOf(
    `ladder-${String(decade).padStart(2, '0')}`,
    {
      title: `Bench supply, about 10^${decade} builds`,
      banks: 3,
      most: 3,
      front: varied > 0 ? HOLES : [4],
      rear: varied > 1 ? REAR_HOLES : [5],
      filters: varied > 2 ? 3 : 1,
    },
    { seed: SEED, sizes: { 80: fans, 92: fans }, strangers: 0 },
  ),
);

/** The main example with the shipped catalog. */
export const mainExample: Space = { name: 's1', scenario: 'scenarios/desk-scanner.yaml', catalog: null };

/** Where a generated space stands on disk. */
export function spaceOf({ name }: SpacePlan): Space {
  return { name, scenario: `${SPACES}/${name}.yaml`, catalog: `${SPACES}/${name}-fans` };
}

/** Options of the program that name a space. */
export function namedBy({ scenario, catalog }: Space): readonly string[] {
  return catalog === null ? [scenario] : [scenario, '--no-shipped', '--catalog', catalog];
}

/** The files of a generated space, by their path from the root of the repository. */
export function filesOf(plan: SpacePlan): ReadonlyMap<string, string> {
  const { scenario, catalog } = spaceOf(plan);
  const fans = inventCatalog(plan.catalog).map(({ name, text }) => [`${catalog}/${name}`, text] as const);
  return new Map([[scenario, inventScenario(plan.scenario)], ...fans]);
}
