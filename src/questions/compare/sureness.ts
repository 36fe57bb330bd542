import type { Band } from '../../bands/band.ts';
import { type BuildBands, buildBands } from '../../bands/build-bands.ts';
import { compared } from '../../bands/comparison.ts';
import { inOneDuty } from '../../bands/one-duty.ts';
import { type Response, responseOf } from '../../bands/response.ts';
import type { Duty } from '../../enclosure/enclosure.ts';
import { assemble, plantOf } from '../../enclosure/machine.ts';
import type { Decibels, Fraction } from '../../quantities/dimensions.ts';
import type { OperatingState } from '../operating-state.ts';
import type { Variant } from './variants.ts';

/** How a variant stands against another one by its noise, as a code. */
export type Standing =
  | 'clearly-quieter'
  | 'probably-quieter'
  | 'no-real-difference'
  | 'probably-louder'
  | 'clearly-louder';

/** Whether a variant is quieter than the one that all are held against. */
export interface Quieter {
  /** Probability that it truly is [-]; what both share cancels. */
  readonly probability: Fraction;
  readonly standing: Standing;
}

/** How sure the numbers of a variant in one duty are. */
export interface Sureness {
  /** At the listener [dB]. */
  readonly level: Band;
  /** Probability that every limit of the duty holds, without the asked margin [-]; 1 if there is none. */
  readonly holding: Fraction;
  /** Whether the duty has limits at all. */
  readonly limits: boolean;
  /** Absent of the one that all are held against, and where all are equally loud. */
  readonly quieter?: Quieter;
}

/** How a variant answers to what may be off at the speeds of a state; null where nothing settles. */
export type Responder = (state: OperatingState | null) => Response | null;

/** Speeds are found to within so much noise: levels that differ by less are not told apart [dB]. */
const TOLD_APART: Decibels = 0.001;

const LOUDER = {
  'clearly-quieter': 'clearly-louder',
  'probably-quieter': 'probably-louder',
  'no-real-difference': 'no-real-difference',
} as const;

/**
 * Prepares the responses of a variant in one duty; speeds that come again are not worked out again.
 *
 * @param variant to be looked at
 * @param duty the only state of use that counts
 */
export function responder({ enclosure, build }: Variant, duty: Duty): Responder {
  const machine = assemble(plantOf(inOneDuty(enclosure, duty)), build);
  const known = new Map<string, Response | null>();
  return (state) => {
    if (!state || Number.isNaN(state.level)) return null;
    const key = state.ratios.join(' ');
    const before = known.get(key);
    if (before !== undefined) return before;
    const found = responseOf(machine, [Float64Array.from(state.ratios)]);
    const response = typeof found === 'string' ? null : found;
    known.set(key, response);
    return response;
  };
}

/** A variant at some speeds. */
interface Answer {
  readonly response: Response;
  readonly bands: BuildBands;
}

function quieterThan(own: Answer, other: Answer): Quieter {
  const { sound } = own.response.machine.plant.enclosure.assumptions;
  const apart = Math.abs(own.bands.level.expected - other.bands.level.expected);
  if (apart < TOLD_APART) return { probability: 0.5, standing: 'no-real-difference' };
  const { probability, verdict } = compared(own.response, other.response, sound);
  return { probability, standing: probability < 0.5 ? LOUDER[verdict] : verdict };
}

/**
 * How sure the numbers of variants are, compared in one way; null for one without a solution.
 *
 * @param responses of the variants at their speeds
 * @param against index of the one that the levels of all others are held against; undefined where all are equally loud
 */
export function surenessOf(
  responses: readonly (Response | null)[],
  against: number | undefined,
): readonly (Sureness | null)[] {
  const answers = responses.map((response) => response && { response, bands: buildBands(response) });
  const other = against === undefined ? null : answers[against];
  return answers.map((own, index) => {
    if (!own) return null;
    const { level, duties } = own.bands;
    const limits = duties.some(({ margins }) => margins.length > 0);
    const quieter = other && index !== against ? { quieter: quieterThan(own, other) } : {};
    return { level, holding: own.bands.holding, limits, ...quieter };
  });
}
