import type { Machine } from '../enclosure/machine.ts';
import type { PassFailure } from '../enclosure/pass.ts';
import type { SolvedPass } from '../enclosure/solved-pass.ts';
import { UNCERTAINTIES } from '../enclosure/uncertainties.ts';
import { levelOf } from '../sound/levels.ts';
import { airDoubts } from './air-doubts.ts';
import type { Doubt } from './doubt.ts';
import { type DutyReading, movedReading, readingOf, solvedAt } from './duty-reading.ts';
import { fanDoubts } from './fan-doubts.ts';
import { heatDoubts } from './heat-doubts.ts';
import { floorEnergies, movedEnergy, type NoiseDoubt, noiseDoubts } from './noise-doubts.ts';

/** By how much results move if one thing is off by the half-width of its 90 % band. */
export interface Effect {
  readonly key: string;
  /** If it is below what was stated; order of the results. */
  readonly below: Float64Array;
  /** If it is above. */
  readonly above: Float64Array;
}

/** Results of a build at given speeds and how they answer to what may be off. */
export interface Response {
  readonly machine: Machine;
  /** Readings by duty. */
  readonly readings: readonly DutyReading[];
  /** All results in a row, see `resultsOf`. */
  readonly expected: Float64Array;
  readonly effects: readonly Effect[];
}

/** A build at work in one duty with all that may be off about it. */
interface DutyAtWork {
  readonly solved: SolvedPass;
  readonly reading: DutyReading;
  readonly doubts: readonly Doubt[];
  readonly noise: readonly NoiseDoubt[];
  readonly floors: readonly number[];
}

function sumOf(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0);
}

/** Energies of a duty's sources together [-]. */
function energyOf({ banks, vents }: DutyReading): number {
  return sumOf(banks) + sumOf(vents);
}

/**
 * All results of a build in a row: for each duty the margin of each limit, the temperature of each part, the flow of
 * each leg, the flow through the box, the power of the fans and the level; then the mean level over time, that of the
 * loudest duty with a share, and the mean power of the fans.
 */
function resultsOf(
  machine: Machine,
  readings: readonly DutyReading[],
  energies: readonly number[],
): Float64Array {
  const { duties } = machine.plant.enclosure;
  const shares = duties.map(({ share }) => share);
  const mean = (values: readonly number[]): number =>
    values.reduce((sum, value, duty) => sum + (shares[duty] as number) * value, 0);
  return Float64Array.from([
    ...readings.flatMap(({ margins, temperatures, flows, through, fanPower }, duty) => [
      ...margins,
      ...temperatures,
      ...flows,
      through,
      fanPower,
      levelOf(energies[duty] as number),
    ]),
    levelOf(mean(energies)),
    levelOf(Math.max(...energies.filter((_, duty) => (shares[duty] as number) > 0))),
    mean(readings.map(({ fanPower }) => fanPower)),
  ]);
}

/** What moves, and by how much; what stays silent or has no figure either way has not moved. */
function difference(moved: Float64Array, expected: Float64Array): Float64Array {
  return moved.map((value, index) => (value === expected[index] ? 0 : value - (expected[index] as number)));
}

/** Keys of all duties, each once, in the order in which they first come. */
function keysOf(duties: readonly (readonly { readonly key: string }[])[]): readonly string[] {
  return [...new Set(duties.flatMap((list) => list.map(({ key }) => key)))];
}

/** Results if one thing is off in every duty. */
function movedResults(
  machine: Machine,
  duties: readonly DutyAtWork[],
  key: string,
  amount: number,
): Float64Array {
  const readings = duties.map(({ solved, reading, doubts }) => {
    const doubt = doubts.find((each) => each.key === key);
    return doubt ? movedReading(doubt.moved(solved, amount), solved, reading) : reading;
  });
  return resultsOf(machine, readings, readings.map(energyOf));
}

function movedNoise(
  machine: Machine,
  duties: readonly DutyAtWork[],
  key: string,
  amount: number,
): Float64Array {
  const energies = duties.map(({ reading, noise, floors }) => {
    const doubt = noise.find((each) => each.key === key);
    return doubt ? movedEnergy(reading, floors, doubt, amount) : energyOf(reading);
  });
  return resultsOf(
    machine,
    duties.map(({ reading }) => reading),
    energies,
  );
}

/** What a response should tell. */
export interface ResponseOptions {
  /** Whether noise is of interest beside air and heat. */
  readonly noise: boolean;
}

/**
 * Solves a build at given speeds, then once for each thing that may be off, below and above, at the ends of its 90 %
 * band, with everything else as stated.
 *
 * Source: numerical sensitivities (JCGM 100, 5.1.4), taken over the whole band instead of one standard deviation, so
 * that a single curved dependence is met at its ends.
 *
 * @param machine the build
 * @param ratios speeds of the banks in each duty, order of the duties [-]
 * @param options what is of interest
 * @returns the response, or why the build has no solution as stated
 */
export function responseOf(
  machine: Machine,
  ratios: readonly Float64Array[],
  options: ResponseOptions = { noise: true },
): Response | PassFailure {
  const { enclosure } = machine.plant;
  const sizes = enclosure.uncertainties ?? UNCERTAINTIES;
  const duties: DutyAtWork[] = [];
  for (const [index, duty] of enclosure.duties.entries()) {
    const solved = solvedAt(machine, duty, ratios[index] as Float64Array);
    if (!solved) return 'air and heat do not settle';
    duties.push({
      solved,
      reading: readingOf(solved),
      doubts: [...heatDoubts(machine, sizes), ...airDoubts(solved, sizes), ...fanDoubts(solved, sizes)],
      noise: options.noise ? noiseDoubts(solved, sizes) : [],
      floors: floorEnergies(machine),
    });
  }
  const readings = duties.map(({ reading }) => reading);
  const expected = resultsOf(machine, readings, readings.map(energyOf));
  const effect = (key: string, results: (amount: number) => Float64Array): Effect => ({
    key,
    below: difference(results(-1), expected),
    above: difference(results(1), expected),
  });
  return {
    machine,
    readings,
    expected,
    effects: [
      ...keysOf(duties.map(({ doubts }) => doubts)).map((key) =>
        effect(key, (amount) => movedResults(machine, duties, key, amount)),
      ),
      ...keysOf(duties.map(({ noise }) => noise)).map((key) =>
        effect(key, (amount) => movedNoise(machine, duties, key, amount)),
      ),
    ],
  };
}
