import type { BankOutcome, DutyOutcome } from '../enclosure/outcome.ts';

type Flag = 'stalled' | 'overdriven' | 'backflow' | 'synthesisedCurve';

/** What each flag of a bank means. */
const meanings: Readonly<Record<Flag, string>> = {
  stalled: 'runs stalled: too much resistance for its speed',
  overdriven: 'is overdriven: more air is driven through it than it delivers by itself',
  backflow: 'lets air flow backwards through it',
  synthesisedCurve: 'has a pressure curve made up from the two figures on the box',
};

/** The flags in the order in which they are told. */
const flags: readonly Flag[] = ['stalled', 'overdriven', 'backflow', 'synthesisedCurve'];

/**
 * What is out of the ordinary in a duty, in sentences: banks first, then reversed legs, then remarks.
 *
 * @param duty of a build
 */
export function noticesOf({ banks, legs, remarks }: DutyOutcome): readonly string[] {
  return [
    ...banks.flatMap(bankNotices),
    ...legs
      .filter(({ reversed }) => reversed)
      .map(({ leg, from, to }) => `${leg} runs in reverse: air flows from ${to} to ${from}.`),
    ...remarks,
  ];
}

function bankNotices(bank: BankOutcome): readonly string[] {
  const told = flags.filter((flag) => bank[flag]).map((flag) => meanings[flag]);
  return told.map((meaning) => `${bank.place} (${bank.fan}) ${meaning}.`);
}
