import type { BuildOutcome, DutyOutcome } from '../../enclosure/outcome.ts';
import type { RankedBy } from '../../search/ranking.ts';
import { fixed, levelText } from '../figures.ts';
import type { RankedFigure } from '../rank-columns.ts';
import { loudestDuty } from '../standing-out.ts';

/**
 * What a build is ranked by, where the usual columns do not show it or not finely enough.
 *
 * @param outcome of the build
 * @param by what the list goes by
 */
export function rankedFigure(outcome: BuildOutcome, by: RankedBy | undefined): RankedFigure | undefined {
  if (by?.goal === 'depth') {
    return { head: 'Depth', unit: 'mm', text: fixed(1000 * outcome.build.depth, 0) };
  }
  if (by?.goal === 'power') return { head: 'Fans', unit: 'mW', text: fixed(1000 * outcome.fanPower, 0) };
  const duty = namedDuty(outcome, by);
  return duty && by?.goal === 'mean'
    ? { head: 'Here', unit: 'dB(A)', text: levelText(duty.level) }
    : undefined;
}

function namedDuty({ duties }: BuildOutcome, by: RankedBy | undefined): DutyOutcome | undefined {
  return by?.duty === undefined ? undefined : duties.find(({ duty }) => duty === by.duty);
}

/**
 * The duty whose speeds a row shows: the only one that counts, or the loudest.
 *
 * @param outcome of the build
 * @param by what the list goes by
 */
export function rankedDuty(outcome: BuildOutcome, by: RankedBy | undefined): DutyOutcome | undefined {
  return namedDuty(outcome, by) ?? loudestDuty(outcome);
}
