import { bankWords } from '../../enclosure/bank-words.ts';
import type { Bank, Leg } from '../../enclosure/enclosure.ts';
import { bankIn } from '../../enclosure/stages.ts';
import { type BankThere, banksIn, quietestFor } from './fan-screen.ts';
import type { Change, Lever, Situation } from './lever.ts';

/** Share of the rise that a second fan in the leg is asked to give when it is chosen [-] (assumption). */
const SHARE = 0.5;

function changesIn(situation: Situation, leg: Leg, running: BankThere): readonly Change[] {
  const { enclosure, build } = situation;
  const need = { flow: running.need.flow, rise: SHARE * running.need.rise };
  return leg.through.flatMap((index) => {
    const place = enclosure.places[index];
    if (place?.kind !== 'bank' || bankIn(enclosure, build, index) !== null) return [];
    const fitting = place.options.filter((option): option is Bank => option !== null);
    const best = quietestFor(situation, fitting, need);
    const option = place.options.indexOf(best ?? null);
    if (!best || option < 0) return [];
    return [{ at: place.id, what: bankWords(best), notes: [], enclosure, build: build.with(index, option) }];
  });
}

/** A fan in an empty place of a leg in which another runs: push beside pull, or two behind each other. */
export const fanInSeries: Lever = {
  name: 'fan in series',
  eases: 'by flow',
  isFan: true,
  effort: 'buy',
  changes: (situation, strength) => {
    if (strength > 1) return [];
    const banks = banksIn(situation);
    return situation.enclosure.legs.flatMap((leg) => {
      const running = banks.find(({ index }) => leg.through.includes(index));
      return running ? changesIn(situation, leg, running) : [];
    });
  },
};
