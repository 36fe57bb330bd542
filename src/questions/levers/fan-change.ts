import { bankWords } from '../../enclosure/bank-words.ts';
import type { Bank } from '../../enclosure/enclosure.ts';
import type { Metres } from '../../quantities/dimensions.ts';
import { millimetres } from '../millimetres.ts';
import { type BankThere, fitsDepth, isSameSize } from './fan-screen.ts';
import type { Change, Situation } from './lever.ts';
import { withBank } from './with-occupant.ts';

/** What the place would have to be made for. */
function roomNotes({ place, bank: now }: BankThere, { fan, count }: Bank): readonly string[] {
  return [
    ...(isSameSize(fan, now.fan)
      ? []
      : [`needs a face of ${millimetres(fan.size)}, there are ${millimetres(now.fan.size)}.`]),
    ...(count > now.count
      ? [`needs room for ${count} fans side by side, there ${now.count === 1 ? 'is' : 'are'} ${now.count}.`]
      : []),
    ...(!fitsDepth(fan, place)
      ? [`needs a depth of ${millimetres(fan.depth)}, there are ${millimetres(place.depth)}.`]
      : []),
  ];
}

/** Depth beyond what the place has [m]. */
function moreDepth({ place }: BankThere, { fan }: Bank): { readonly depth?: Metres } {
  return fitsDepth(fan, place) ? {} : { depth: fan.depth - place.depth };
}

/**
 * The change of the fans of one place for others.
 *
 * @param situation the build
 * @param there the fans as they stand
 * @param bank those that take their place; nothing if undefined
 */
export function fanChange(
  { enclosure, build }: Situation,
  there: BankThere,
  bank: Bank | undefined,
): readonly Change[] {
  if (!bank) return [];
  const what = `${bankWords(bank)} for ${bankWords(there.bank)}`;
  const changed = withBank(enclosure, build, there.index, bank);
  return [{ at: there.place.id, what, notes: roomNotes(there, bank), ...moreDepth(there, bank), ...changed }];
}
