import type { BuildOutcome, DutyOutcome, PartOutcome } from '../enclosure/outcome.ts';
import type { Fraction, KelvinDifference } from '../quantities/dimensions.ts';

/** Where the tightest limit of a build is. */
export interface TightestPart {
  readonly duty: DutyOutcome;
  readonly part: PartOutcome;
  /** Whether the limit is on the air at the part, which nothing but air decides. */
  readonly onAir: boolean;
}

/** Margins closer than this are alike, and the first duty counts [K]. */
const ALIKE: KelvinDifference = 0.01;

function rounded({ tightest }: DutyOutcome): number {
  return Math.round((tightest?.margin ?? 0) / ALIKE);
}

/**
 * The part with the tightest limit of all duties.
 *
 * @param outcome of a build
 * @returns undefined if nothing has a limit, or the tightest is that of a panel
 */
export function tightestPart({ duties }: BuildOutcome): TightestPart | undefined {
  const [duty] = duties
    .filter(({ tightest }) => tightest !== undefined)
    .sort((one, other) => rounded(one) - rounded(other));
  const part = duty?.parts.find((each) => each.part === duty.tightest?.part);
  return duty && part ? { duty, part, onAir: duty.tightest?.of === 'air' } : undefined;
}

/**
 * Share of the tightest part's rise that falls with more flow [-]: all up to the base of its fins; all of it where the
 * limit is on the air.
 *
 * @param outcome of a build
 */
export function flowShareOf(outcome: BuildOutcome): Fraction | undefined {
  const tightest = tightestPart(outcome);
  if (!tightest) return undefined;
  if (tightest.onAir) return 1;
  const { rise } = tightest.part;
  const total = rise.reduce((sum, { amount }) => sum + amount, 0);
  const byFlow = rise.reduce((sum, { amount, eased }) => sum + (eased === 'by flow' ? amount : 0), 0);
  return total > 0 ? byFlow / total : undefined;
}
