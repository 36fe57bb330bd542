import type { LostFans } from '../fan/mixed-bank.ts';
import type { Bank } from './enclosure.ts';

/** Fans that do not turn, in words: "1 dead and 2 missing"; empty if there are none. */
export function lostWords({ dead, missing }: LostFans): string {
  return [dead > 0 ? `${dead} dead` : '', missing > 0 ? `${missing} missing` : '']
    .filter((words) => words !== '')
    .join(' and ');
}

/**
 * An option of a bank in words, as a scenario names it: "f80-25-b x2 with 1 dead", or "empty".
 *
 * @param option of the bank
 */
export function bankWords(option: Bank | null): string {
  if (option === null) return 'empty';
  const { fan, count, lost } = option;
  if (!lost) return `${fan.id} x${count}`;
  return `${fan.id} x${count + lost.dead + lost.missing} with ${lostWords(lost)}`;
}
