import { askedLimits } from '../enclosure/asked-limits.ts';
import type { Duty, LimitKind } from '../enclosure/enclosure.ts';
import type { Fraction } from '../quantities/dimensions.ts';
import { type Band, bandAt, bandsOf } from './band.ts';
import { drawsOf, marginsOf, probabilityOfHolding } from './holding.ts';
import type { Response } from './response.ts';

/** What is left to a limit. */
export interface MarginBand {
  /** Name of the part, or of the chamber whose panel it is. */
  readonly subject: string;
  readonly of: LimitKind;
  /** Limit less temperature [K]. */
  readonly margin: Band;
}

/** Bands of a build in one duty. */
export interface DutyBands {
  readonly duty: string;
  /** Probability that every limit of the duty holds, without the asked margin [-]. */
  readonly holding: Fraction;
  /** At the listener [dB]. */
  readonly level: Band;
  /** [W] */
  readonly fanPower: Band;
  /** From outside into the box [m³/s]. */
  readonly through: Band;
  readonly margins: readonly MarginBand[];
  /** [K] */
  readonly parts: readonly { readonly part: string; readonly temperature: Band }[];
  /** At the state in which the air enters [m³/s]. */
  readonly legs: readonly { readonly leg: string; readonly flow: Band }[];
}

/** Bands of a build. */
export interface BuildBands {
  /** Mean over time [dB]. */
  readonly level: Band;
  /** Of the loudest duty that has a share [dB]. */
  readonly loudest: Band;
  /** Mean over time [W]. */
  readonly fanPower: Band;
  /** Probability that every limit holds in every duty, without the asked margin [-]. */
  readonly holding: Fraction;
  readonly duties: readonly DutyBands[];
}

/**
 * Probability that all limits hold at once [-].
 *
 * @param response of a build at some speeds
 * @param duty index of the only duty that counts; all if absent
 */
export function holdingOf(response: Response, duty?: number): Fraction {
  const margins = marginsOf(response, duty);
  return probabilityOfHolding(drawsOf(margins), margins.stated);
}

/** Takes bands one by one, in the order of the results. */
function inTurn(bands: readonly Band[]): () => Band {
  let at = 0;
  return () => bands[at++] as Band;
}

function dutyBands(response: Response, duty: Duty, index: number, next: () => Band): DutyBands {
  const { machine } = response;
  const { parts, legs } = machine.plant.enclosure;
  const margins = askedLimits(machine, duty).map(({ subject, of }) => ({ subject, of, margin: next() }));
  const temperatures = parts.map(({ id }) => ({ part: id, temperature: next() }));
  const flows = legs.map(({ id }) => ({ leg: id, flow: next() }));
  const through = next();
  const fanPower = next();
  const level = next();
  const holding = holdingOf(response, index);
  return { duty: duty.id, holding, level, fanPower, through, margins, parts: temperatures, legs: flows };
}

/** Results of a whole build, after those of its duties: mean level, loudest level, mean power. */
const OF_BUILD = 3;

/**
 * Band of the mean level over time [dB], without those of all other results.
 *
 * @param response of the build at its speeds
 */
export function meanLevelBand(response: Response): Band {
  return bandAt(response, response.expected.length - OF_BUILD);
}

/**
 * Low, expected and high of all results of a build, and how likely its limits hold.
 *
 * @param response of the build at its speeds
 */
export function buildBands(response: Response): BuildBands {
  const next = inTurn(bandsOf(response));
  const duties = response.machine.plant.enclosure.duties.map((duty, index) =>
    dutyBands(response, duty, index, next),
  );
  const [only] = duties;
  // The draws of a single duty are those of all.
  const holding = only && duties.length === 1 ? only.holding : holdingOf(response);
  return { duties, level: next(), loudest: next(), fanPower: next(), holding };
}
