import type { Duty, Enclosure } from '../enclosure/enclosure.ts';

/**
 * An enclosure in which one state of use is all that counts, so that what is told of it is told of that state.
 *
 * @param enclosure the scenario
 * @param duty of it, or like one of it
 */
export function inOneDuty(enclosure: Enclosure, duty: Duty): Enclosure {
  return { ...enclosure, duties: [{ ...duty, share: 1 }] };
}
