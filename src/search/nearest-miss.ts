import type { Build, Enclosure } from '../enclosure/enclosure.ts';
import { assemble, type Plant } from '../enclosure/machine.ts';
import { buildOutcome, isFailed } from './build-outcome.ts';
import type { NearestMiss } from './ranking.ts';
import { solveBuild } from './solve-build.ts';
import { allBuilds, spaceSize } from './space.ts';
import { createTrial, fullSpeed } from './trial.ts';

/** Spaces up to this size are gone through; larger ones are searched place by place. */
const MOST_BUILDS = 3000;
const MOST_ROUNDS = 10;

/** A build with every bank at full speed. */
interface Fastest {
  readonly build: Build;
  /** Largest excess over any limit in any duty [K]. */
  readonly excess: number;
  /** Air that moves in all legs and duties together [kg/s]. */
  readonly air: number;
}

function fastest(plant: Plant, build: Build): Fastest {
  const machine = assemble(plant, build);
  let excess = Number.NEGATIVE_INFINITY;
  let air = 0;
  for (const duty of plant.enclosure.duties) {
    const trial = createTrial(machine, duty);
    const { worst, flows } = trial.evaluate(fullSpeed(trial));
    excess = Math.max(excess, worst);
    for (const flow of flows) air += Math.abs(flow);
  }
  return { build, excess, air };
}

/** The coolest of some builds; where parts run away in all of them, the one that moves most air. */
function coolestOf(plant: Plant, builds: readonly Build[]): Fastest | null {
  let best: Fastest | null = null;
  for (const build of builds) {
    const found = fastest(plant, build);
    const isTie = best?.excess === found.excess;
    if (!best || (isTie ? found.air > best.air : found.excess < best.excess)) best = found;
  }
  return best;
}

/** From the first options, changes one place at a time for the better until nothing helps. */
function descend(plant: Plant): Build {
  const { enclosure } = plant;
  // The last option of a bank is never "empty", which would cool nothing.
  let build: Build = enclosure.places.map((place) => place.options.length - 1);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const before = build;
    enclosure.places.forEach((place, index) => {
      const best = coolestOf(
        plant,
        place.options.map((_, option) => build.with(index, option)),
      );
      if (best) build = best.build;
    });
    if (before.every((option, index) => option === build[index])) break;
  }
  return build;
}

/** The build that is coolest with every bank at full speed: in small spaces of all, in large ones as found. */
function coolestBuild(enclosure: Enclosure, plant: Plant): Build {
  if (spaceSize(enclosure) > MOST_BUILDS) return descend(plant);
  return coolestOf(plant, allBuilds(enclosure))?.build ?? descend(plant);
}

/**
 * The build that comes closest to its limits where none holds them all, and the limit it breaks by most.
 *
 * @param plant the enclosure's plan
 * @param monotone whether faster is known never to warm a limited part in this airway
 * @returns null if even that build has no solution
 */
export function nearestMiss(plant: Plant, monotone: boolean): NearestMiss | null {
  const { enclosure } = plant;
  const build = coolestBuild(enclosure, plant);
  const outcome = buildOutcome(solveBuild(assemble(plant, build), monotone));
  if (isFailed(outcome)) return null;
  let miss: NearestMiss | null = null;
  for (const { duty, tightest, failures } of outcome.duties) {
    const [failure] = failures;
    if (failure) return { outcome, duty, ...failure, of: 'part', over: 0 };
    if (!tightest) continue;
    const over = enclosure.margin - tightest.margin;
    if (!miss || over > miss.over) miss = { outcome, duty, part: tightest.part, of: tightest.of, over };
  }
  return miss;
}
