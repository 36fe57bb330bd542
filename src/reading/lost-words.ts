import type { LostFans } from '../fan/mixed-bank.ts';

/** An option of a bank as a build names it, and the fans of it that do not turn. */
export interface LostWords {
  /** The option by itself. */
  readonly option: string;
  readonly lost: LostFans | undefined;
}

/** "with 1 dead", ", 1 dead", "with 1 dead and 2 missing" behind the name of an option. */
const LOST =
  /^(?<option>.+?)(?:\s*,|\s+with)\s+(?<first>\d{1,2}) (?<kind>dead|missing)(?:(?:\s*,|\s+and)\s+(?<second>\d{1,2}) (?<other>dead|missing))?$/;

/**
 * Parts the words of a build for a bank into the option and the fans that do not turn.
 *
 * @param text as written, such as "f80-25-b x2 with 1 dead"
 */
export function lostWordsIn(text: string): LostWords {
  const groups = LOST.exec(text.trim())?.groups;
  if (!groups) return { option: text, lost: undefined };
  const { option = '', first, kind, second, other } = groups;
  const count = (of: string): number =>
    (kind === of ? Number(first) : 0) + (other === of ? Number(second ?? 0) : 0);
  return { option, lost: { dead: count('dead'), missing: count('missing') } };
}
