// What many do with a spreadsheet or a script: every build, every bank at every twentieth of its full speed, in every
// duty, the quietest that holds all limits. It is given the program's own physics for nothing, and the knowledge that
// a build which is too warm with all fans at full speed is out (true only where faster is known to be cooler); a duty
// that only has to be survived is tried at full speed first. It misses what lies between two steps, and shows nothing
// about it: between steps of 5 % a fan's level changes by 1 to 5 dB.
// Where there are too many builds a seeded sample of them is run and the time of all is worked out from it.
import type { Duty } from '../../src/enclosure/enclosure.ts';
import { assemble, type Plant, plantOf } from '../../src/enclosure/machine.ts';
import { fasterIsCooler } from '../../src/search/monotone-airway.ts';
import { createTrial, fullSpeed, isAdequate, type Trial } from '../../src/search/trial.ts';
import { levelOf } from '../../src/sound/levels.ts';
import { seeded } from '../search/random.ts';
import { buildAt, countOf, processorSeconds, type RivalResult, type Task } from './rival.ts';

const STEPS = 20;
const SEED = 4711;

/** Speeds of a bank in turn, fastest first. */
function speedsOf({ floors, ceilings }: Trial): readonly (readonly number[])[] {
  return Array.from(floors, (floor, bank) =>
    Array.from({ length: STEPS }, (_, step) => 1 - step / STEPS).filter(
      (speed) => speed >= floor - 1e-9 && speed <= (ceilings[bank] as number) + 1e-9,
    ),
  );
}

/** Least energy of a build in a duty over the grid; infinite if nothing holds the limits. */
function leastEnergy(plant: Plant, trial: Trial, duty: Duty): number {
  const fastest = trial.evaluate(fullSpeed(trial));
  if (isAdequate(fastest) ? duty.share === 0 : fasterIsCooler(plant)) {
    return isAdequate(fastest) ? 0 : Number.POSITIVE_INFINITY;
  }
  const speeds = speedsOf(trial);
  const total = speeds.reduce((product, { length }) => product * length, 1);
  const ratios = new Float64Array(speeds.length);
  let least = Number.POSITIVE_INFINITY;
  for (let number = 0; number < total; number++) {
    let rest = number;
    speeds.forEach((choice, bank) => {
      ratios[bank] = choice[rest % choice.length] as number;
      rest = Math.floor(rest / choice.length);
    });
    const point = trial.evaluate(ratios);
    if (isAdequate(point) && point.energy < least) least = point.energy;
  }
  return least;
}

function energyOf(plant: Plant, number: number): number {
  const { enclosure } = plant;
  const machine = assemble(plant, buildAt(enclosure, number));
  let sum = 0;
  for (const duty of [...enclosure.duties].sort((a, b) => a.share - b.share)) {
    const energy = leastEnergy(plant, createTrial(machine, duty), duty);
    if (energy === Number.POSITIVE_INFINITY) return energy;
    sum += duty.share * energy;
  }
  return sum;
}

/** Standard error of the mean of a sample, over that mean [-]. */
function relativeError(sample: readonly number[]): number {
  const mean = sample.reduce((sum, value) => sum + value, 0) / sample.length;
  const squares = sample.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return Math.sqrt(squares / (sample.length - 1) / sample.length) / mean;
}

/**
 * The quietest build of the grid.
 *
 * @param task what is asked
 * @param sample builds to run [-]; all if there are no more
 */
export function gridRival({ enclosure }: Task, sample: number): RivalResult {
  const plant = plantOf(enclosure);
  const count = countOf(enclosure);
  const random = seeded(SEED);
  const whole = count <= sample;
  const times: number[] = [];
  let least = Number.POSITIVE_INFINITY;
  for (let index = 0; index < Math.min(count, sample); index++) {
    const began = processorSeconds();
    least = Math.min(least, energyOf(plant, whole ? index : random.whole(0, count - 1)));
    times.push(processorSeconds() - began);
  }
  const seconds = times.reduce((sum, time) => sum + time, 0);
  return {
    method: 'grid of 5 % speed steps',
    level: whole && Number.isFinite(least) ? levelOf(least) : null,
    seconds: whole ? seconds : (seconds * count) / sample,
    extrapolated: !whole,
    proof: whole
      ? 'of the grid only'
      : `not run: by a sample of ${sample} builds, ±${(100 * relativeError(times)).toFixed(0)} %`,
  };
}
