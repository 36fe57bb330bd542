import type { Build, Enclosure } from '../enclosure/enclosure.ts';
import { assemble, type Plant, plantOf } from '../enclosure/machine.ts';
import type { BuildOutcome } from '../enclosure/outcome.ts';
import type { Fraction } from '../quantities/dimensions.ts';
import type { Ranking } from '../search/ranking.ts';
import { createTrial, fullSpeed } from '../search/trial.ts';
import { type BuildBands, buildBands, holdingOf } from './build-bands.ts';
import { type ComparedLevel, type Comparison, compared } from './comparison.ts';
import { type Response, responseOf } from './response.ts';

function responseTo(plant: Plant, { build, duties }: BuildOutcome): Response | null {
  const ratios = duties.map(({ banks }) => Float64Array.from(banks, ({ ratio }) => ratio));
  const response = responseOf(assemble(plant, build.options), ratios);
  return typeof response === 'string' ? null : response;
}

/**
 * Bands of a build at the speeds of its outcome; null if it has no solution there.
 *
 * @param enclosure the scenario
 * @param outcome of the build
 */
export function outcomeBands(enclosure: Enclosure, outcome: BuildOutcome): BuildBands | null {
  const response = responseTo(plantOf(enclosure), outcome);
  return response && buildBands(response);
}

/** Bands of a row of a ranking. */
export interface RowBands {
  readonly bands: BuildBands;
  /** Whether the first row is quieter than this one; absent in the first. */
  readonly first?: Comparison;
  /** Whether the row above is quieter than this one; absent in the first. */
  readonly above?: Comparison;
}

/**
 * Bands of all rows of a ranking, and how sure its order is; null for a row without a solution.
 *
 * @param enclosure the scenario
 * @param ranking with its rows in order
 * @param by level the builds are compared by
 */
export function rankingBands(
  enclosure: Enclosure,
  { rows }: Ranking,
  by: ComparedLevel,
): readonly (RowBands | null)[] {
  const plant = plantOf(enclosure);
  const { sound } = enclosure.assumptions;
  const responses = rows.map(({ outcome }) => responseTo(plant, outcome));
  return responses.map((response, index) => {
    if (!response) return null;
    const first = index > 0 ? responses[0] : undefined;
    const above = responses[index - 1];
    return {
      bands: buildBands(response),
      ...(first ? { first: compared(first, response, sound, by) } : {}),
      ...(above ? { above: compared(above, response, sound, by) } : {}),
    };
  });
}

/**
 * Probability that a build holds all limits in all duties with every fan at full speed [-]; null if it has no solution
 * there.
 *
 * @param enclosure the scenario
 * @param build one option index per place
 */
export function holdingAtFullSpeed(enclosure: Enclosure, build: Build): Fraction | null {
  const machine = assemble(plantOf(enclosure), build);
  const ratios = enclosure.duties.map((duty) => fullSpeed(createTrial(machine, duty)));
  const response = responseOf(machine, ratios, { noise: false });
  return typeof response === 'string' ? null : holdingOf(response);
}
