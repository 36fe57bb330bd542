// A general-purpose global optimiser on the mixed space: the genetic algorithm of the package genetic-search, with one
// gene for each choice and one for the speed of each bank in each duty, tournaments, even crossover, and small steps as
// well as fresh draws as mutations. Its objective is the mean level plus so many decibels for every kelvin over a limit.
// It is given the program's own physics for nothing. It never knows whether something quieter is left: it is stopped
// after a time; until then it starts afresh whenever it gets no further. Several seeds are run, since luck has a say.
// The package draws from Math.random, which is replaced by a seeded stream while it runs.
import {
  BasePhenomeStrategy,
  DescendingSortingStrategy,
  GeneticSearch,
  type PhenomeStrategyConfig,
  SimplePhenomeCache,
  TournamentSelectionStrategy,
} from 'genetic-search';
import type { Enclosure } from '../../src/enclosure/enclosure.ts';
import { assemble, type Plant, plantOf } from '../../src/enclosure/machine.ts';
import { createTrial, type Trial } from '../../src/search/trial.ts';
import { levelOf } from '../../src/sound/levels.ts';
import { seeded } from '../search/random.ts';
import { changed, crossed, drawn, type Genome } from './genome.ts';
import { processorSeconds, type RivalResult, type Task } from './rival.ts';

const POPULATION = 200;
const SURVIVAL = 0.3;
const CROSSOVER = 0.6;
const TOURNAMENT = 3;
/** Penalty for a kelvin over a limit [dB]. */
const PENALTY = 3;
/** Generations without anything better after which it starts afresh. */
const IDLE = 60;
/** Builds kept ready to compute with. */
const KEPT = 20_000;

/** Level with penalty, and the level if all limits hold. */
interface Judged {
  readonly worth: number;
  readonly adequate: number | null;
}

/** Judges genomes by the whole model. */
function judgeOf(plant: Plant): (genome: Genome) => Judged {
  const { duties, places } = plant.enclosure;
  const bankPlaces = places.flatMap((place, index) => (place.kind === 'bank' ? [index] : []));
  const ready = new Map<string, readonly Trial[]>();
  const trialsOf = (options: readonly number[]): readonly Trial[] => {
    const key = options.join(' ');
    const known = ready.get(key);
    if (known) return known;
    const machine = assemble(plant, options);
    const trials = duties.map((duty) => createTrial(machine, duty));
    if (ready.size >= KEPT) ready.clear();
    ready.set(key, trials);
    return trials;
  };
  return ({ options, speeds }) => {
    let energy = 0;
    let over = 0;
    trialsOf(options).forEach((trial, index) => {
      const ratios = Float64Array.from(trial.machine.banks, ({ place }, bank) => {
        const gene = speeds[index * bankPlaces.length + bankPlaces.indexOf(place)] as number;
        const floor = trial.floors[bank] as number;
        return floor + gene * ((trial.ceilings[bank] as number) - floor);
      });
      const point = trial.evaluate(ratios);
      energy += trial.duty.share * Math.min(point.energy, 1e12);
      over += Math.min(Math.max(0, point.worst), 1000);
    });
    const level = levelOf(energy);
    return { worth: -level - PENALTY * over, adequate: over === 0 ? level : null };
  };
}

class Worths extends BasePhenomeStrategy<Genome, PhenomeStrategyConfig<Genome>, Genome> {
  protected createTaskInput(genome: Genome): Genome {
    return genome;
  }
}

/** Quietest adequate level after each of some times [s]; null if nothing adequate was met by then. */
async function levelsAfter(
  enclosure: Enclosure,
  seed: number,
  times: readonly number[],
): Promise<readonly (number | null)[]> {
  const random = seeded(seed);
  const judge = judgeOf(plantOf(enclosure));
  const levels: (number | null)[] = [];
  const began = processorSeconds();
  let best = Number.POSITIVE_INFINITY;
  const task = async (genome: Genome): Promise<number[]> => {
    const { worth, adequate } = judge(genome);
    if (adequate !== null) best = Math.min(best, adequate);
    return [worth];
  };
  const asked = (): boolean => {
    while (levels.length < times.length && processorSeconds() - began >= (times[levels.length] as number)) {
      levels.push(Number.isFinite(best) ? best : null);
    }
    return levels.length === times.length;
  };
  while (!asked()) {
    let known = best;
    let idle = 0;
    const search = new GeneticSearch<Genome>(
      { populationSize: POPULATION, survivalRate: SURVIVAL, crossoverRate: CROSSOVER },
      {
        populate: {
          populate: (size, ids) => Array.from({ length: size }, () => drawn(random, enclosure, ids.nextId())),
        },
        phenome: new Worths({ task }),
        fitness: { score: (rows) => rows.map(([worth]) => worth as number) },
        sorting: new DescendingSortingStrategy(),
        selection: new TournamentSelectionStrategy(2, TOURNAMENT),
        mutation: { mutate: (genome, id) => changed(random, enclosure, genome, id) },
        crossover: { cross: (parents, id) => crossed(random, parents, id) },
        cache: new SimplePhenomeCache(),
      },
    );
    await search.fit({
      stopCondition: () => {
        idle = best === known ? idle + 1 : 0;
        known = best;
        return idle >= IDLE || asked();
      },
    });
  }
  return levels;
}

/**
 * The quietest build the genetic algorithm meets, one result for each time and seed.
 *
 * @param task what is asked
 * @param seeds of the random numbers
 * @param times after which it is asked for its best, ascending [s]
 */
export async function geneticRival(
  { enclosure }: Task,
  seeds: readonly number[],
  times: readonly number[],
): Promise<readonly RivalResult[]> {
  const results: RivalResult[] = [];
  const original = Math.random;
  try {
    for (const seed of seeds) {
      Math.random = seeded(seed + 1000).unit;
      const levels = await levelsAfter(enclosure, seed, times);
      levels.forEach((level, index) => {
        results.push({
          method: `genetic algorithm, seed ${seed}`,
          level,
          seconds: times[index] as number,
          proof: 'none',
        });
      });
    }
  } finally {
    Math.random = original;
  }
  return results;
}
