import { type Band, joined } from '../bands/band.ts';
import { holdingOf, meanLevelBand } from '../bands/build-bands.ts';
import { marginsOf } from '../bands/holding.ts';
import { type Response, responseOf } from '../bands/response.ts';
import { askedLimits } from '../enclosure/asked-limits.ts';
import type { Machine } from '../enclosure/machine.ts';
import type { Fraction } from '../quantities/dimensions.ts';
import type { BuildState, TightestOfAll } from './build-state.ts';

/** How sure the numbers of a build at one point are. */
export interface PointSureness {
  /** Mean over time at the listener [dB]. */
  readonly level: Band;
  /** Of the limit that is tightest as stated [K]; absent if nothing has a limit. */
  readonly margin?: Band;
  /** Probability that every limit holds in every duty, without the asked margin [-]; 1 if there is none. */
  readonly holding: Fraction;
}

/** Band of the margin of a limit; of those of one kind that a part has, the least. */
function marginBand(response: Response, { duty, subject, of }: TightestOfAll): Band | undefined {
  const { machine } = response;
  const { duties } = machine.plant.enclosure;
  const index = duties.findIndex(({ id }) => id === duty);
  const state = duties[index];
  if (!state) return undefined;
  const { stated, effects } = marginsOf(response, index);
  const least = askedLimits(machine, state)
    .map((limit, at) => ({ limit, at, expected: stated[at] as number }))
    .filter(({ limit }) => limit.subject === subject && limit.of === of)
    .toSorted((one, other) => one.expected - other.expected)[0];
  if (!least) return undefined;
  const { at, expected } = least;
  const { below, above } = joined(
    effects.map((effect) => [effect.below[at] as number, effect.above[at] as number] as const),
  );
  return { low: expected - below, expected, high: expected + above };
}

/**
 * How sure a state of a build is, at its speeds; null if it has no solution. Only what is told of a point is worked out,
 * and not the bands of all results: a sweep has many points.
 *
 * @param machine the build
 * @param state of it
 */
export function pointSureness(
  machine: Machine,
  { level, tightest, duties }: BuildState,
): PointSureness | null {
  if (Number.isNaN(level)) return null;
  const response = responseOf(
    machine,
    duties.map(({ ratios }) => Float64Array.from(ratios)),
  );
  if (typeof response === 'string') return null;
  const margin = tightest && marginBand(response, tightest);
  return { level: meanLevelBand(response), ...(margin ? { margin } : {}), holding: holdingOf(response) };
}
