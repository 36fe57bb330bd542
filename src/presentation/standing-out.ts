import type { LimitKind } from '../enclosure/enclosure.ts';
import type { BuildOutcome, DutyOutcome, LimitOutcome } from '../enclosure/outcome.ts';

/** The limit with the least margin of all duties. */
export interface Tightest extends LimitOutcome {
  readonly part: string;
  readonly duty: string;
}

/** Margins that differ by no more are alike: what is found of speeds that just hold two limits ends by chance [K]. */
const ALIKE = 0.01;

/**
 * Finds the limit that is nearest to being broken, or broken most.
 *
 * @param outcome of a build
 * @returns undefined if nothing has a limit; of margins alike the first
 */
export function tightestOf(outcome: BuildOutcome): Tightest | undefined {
  let tightest: Tightest | undefined;
  for (const duty of outcome.duties) {
    if (duty.tightest && !(tightest && tightest.margin <= duty.tightest.margin + ALIKE)) {
      tightest = { ...duty.tightest, duty: duty.duty };
    }
  }
  return tightest;
}

/** What each kind of limit is on, before the name of the part or chamber. */
const kinds: Readonly<Record<LimitKind, string>> = {
  part: '',
  air: 'air at ',
  probe: 'probe at ',
  pipes: 'heat pipes of ',
  panel: 'panel of ',
};

/** What a limit is on, in words. */
export function limited({ of, part }: { readonly of: LimitKind; readonly part: string }): string {
  return `${kinds[of]}${part}`;
}

/**
 * The duty whose speeds are shown where there is room for one only: the loudest that takes up any time.
 *
 * @param outcome of a build; at least one duty
 */
export function loudestDuty(outcome: BuildOutcome): DutyOutcome | undefined {
  const lasting = outcome.duties.filter(({ share }) => share > 0);
  const candidates = lasting.length > 0 ? lasting : outcome.duties;
  return candidates.reduce<DutyOutcome | undefined>(
    (loudest, duty) => (loudest && loudest.level >= duty.level ? loudest : duty),
    undefined,
  );
}
