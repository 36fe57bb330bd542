import { lostWords } from '../enclosure/bank-words.ts';
import type { BankOutcome, DutyOutcome } from '../enclosure/outcome.ts';
import type { WhistleOutcome } from '../enclosure/sound-outcome.ts';
import { fixed, quantity } from './figures.ts';

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
 * What is out of the ordinary in a duty, in sentences: failures first, then banks, reversed legs, holes that may
 * whistle, and remarks.
 *
 * @param duty of a build
 */
export function noticesOf({ failures, banks, legs, sound, remarks }: DutyOutcome): readonly string[] {
  return [
    ...failures.map(({ part, reason }) => `${part} fails: ${reason}.`),
    ...banks.flatMap(bankNotices),
    ...legs
      .filter(({ reversed }) => reversed)
      .map(({ leg, from, to }) => `${leg} runs in reverse: air flows from ${to} to ${from}.`),
    ...sound.whistles.map(whistleNotice),
    ...remarks,
  ];
}

/** Sharp holes may whistle at a Strouhal number of 0.2 to 0.4; it is not computed. */
function whistleNotice({ place, velocity }: WhistleOutcome): string {
  return `${place} may whistle: ${fixed(velocity, 1)} m/s in its holes.`;
}

/** Fans that do not turn, and the air that passes their places. */
function lostSentences({ count, lost }: BankOutcome): readonly string[] {
  if (!lost) return [];
  const fans = `has ${lostWords(lost)} of ${count + lost.dead + lost.missing} fans`;
  const flow = quantity('flow', Math.abs(lost.flow));
  const way = lost.flow < 0 ? 'flow back through what they leave open' : 'pass what they leave open';
  return [`${fans}: ${flow} ${way}`];
}

/** What the points of the curve as given say, where it was not counted on. */
function dipSentences({ pressureRise, rawPressureRise }: BankOutcome): readonly string[] {
  if (rawPressureRise === undefined) return [];
  const raw = quantity('pressure', rawPressureRise);
  return [
    `works in the dip of its curve: its points give ${raw}, counted are ${quantity('pressure', pressureRise)}`,
  ];
}

function bankNotices(bank: BankOutcome): readonly string[] {
  const told = flags.filter((flag) => bank[flag]).map((flag) => meanings[flag]);
  const sentences = [...lostSentences(bank), ...told, ...dipSentences(bank)];
  return sentences.map((meaning) => `${bank.place} (${bank.fan}) ${meaning}.`);
}
