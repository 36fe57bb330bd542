import type { Build, Enclosure } from '../enclosure/enclosure.ts';
import type { Plant } from '../enclosure/machine.ts';
import { createAirPowerBound } from './air-power-bound.ts';
import { type CellList, leastValue } from './cell-list.ts';
import { createLegBound, type LegBound } from './leg-bound.ts';
import type { Objective } from './objective.ts';
import type { OptionForest } from './option-tree.ts';

/** What a build, or every build of a set, needs at least. */
export interface Promised {
  /** Sound energy at 1 m by duty [-]; infinite where it cannot do. */
  readonly energies: Float64Array;
  /** Where in the range of pressures of the chamber that is, by duty; none in airways that are not so simple. */
  readonly cells: readonly CellList[];
  /** The same of what a ranking goes by, if that is neither noise nor told without solving. */
  readonly cost?: Promised;
}

/** Lower bounds of the sound energy of builds. */
export interface Promises {
  /** Of every build, before anything is known. */
  readonly none: Promised;
  /**
   * Quick to have, for sets and builds, from what was found of a set that holds them. Stops early once the set is
   * above the energy to beat, an energy of the objective at 1 m [-].
   */
  readonly coarse: (build: Build, from: Promised, toBeat: number) => Promised;
  /** The same, as tight as bounds without a pass get. */
  readonly fine: (build: Build, from: Promised, toBeat: number) => Promised;
}

/** Width of the cells a first look ends with, and of the least there are [nodes]. */
const COARSE = 4;
const FINE = 1;

/** Energy a duty is known to add to the whole [-]; nothing if it does not count. */
function partOf(enclosure: Enclosure, objective: Objective, energies: Float64Array, duty: number): number {
  return objective.energyOf(
    enclosure,
    energies.map((value, index) => (index === duty ? value : 0)),
  );
}

/** Duties that add most first: they soonest tell that a set is out. Those that do not count come last. */
function dutyOrder(enclosure: Enclosure, objective: Objective, energies: Float64Array): readonly number[] {
  return enclosure.duties
    .map((_, duty) => ({
      duty,
      counts: objective.counts(enclosure, duty) ? 1 : 0,
      part: partOf(enclosure, objective, energies, duty),
    }))
    .sort((a, b) => b.counts - a.counts || b.part - a.part || a.duty - b.duty)
    .map(({ duty }) => duty);
}

function legPromises(enclosure: Enclosure, legs: LegBound, objective: Objective): Promises {
  const look = (build: Build, from: Promised, toBeat: number, narrowest: number): Promised => {
    const energies = Float64Array.from(from.energies);
    const cells = [...from.cells];
    for (const duty of dutyOrder(enclosure, objective, from.energies)) {
      if (objective.energyOf(enclosure, energies) >= toBeat) break;
      const enough = objective.budgetOf(enclosure, energies, duty, toBeat);
      const survive = !objective.counts(enclosure, duty);
      const found = legs.refine(build, duty, cells[duty] as CellList, { enough, narrowest, survive });
      cells[duty] = found;
      energies[duty] = Math.max(energies[duty] as number, leastValue(found));
    }
    return { energies, cells };
  };
  return {
    none: {
      energies: new Float64Array(enclosure.duties.length),
      cells: enclosure.duties.map(() => legs.unknown),
    },
    coarse: (build, from, toBeat) => look(build, from, toBeat, COARSE),
    fine: (build, from, toBeat) => look(build, from, toBeat, FINE),
  };
}

/**
 * Prepares the bounds that fit an airway.
 *
 * @param enclosure the scenario
 * @param plant its plan
 * @param objective what the ranking goes by
 * @param forest groups of the options of its places
 */
export function createPromises(
  enclosure: Enclosure,
  plant: Plant,
  objective: Objective,
  forest: OptionForest,
): Promises {
  const legs = createLegBound(enclosure, plant, forest);
  if (legs) return legPromises(enclosure, legs, objective);
  const airPower = createAirPowerBound(enclosure, forest);
  const look = (build: Build): Promised => ({ energies: airPower(build), cells: [] });
  return {
    none: { energies: new Float64Array(enclosure.duties.length), cells: [] },
    coarse: look,
    fine: look,
  };
}
