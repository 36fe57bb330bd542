import type { BankPlace } from '../enclosure/enclosure.ts';
import { peakAirPower } from '../fan/curve.ts';
import { workOut } from './asks/work-out.ts';
import type { Hunt } from './hunt.ts';
import { elementKey } from './space.ts';

/** Sets of elements whose strongest build is tried [-]. */
const MOST_TRIES = 8;

/** The option of a bank place that gives most air power: where anything is adequate, it is so most likely. */
function strongest({ options }: BankPlace): number {
  const powers = options.map((bank) => (bank ? bank.count * peakAirPower(bank.fan.curve) : 0));
  return powers.indexOf(Math.max(...powers));
}

/**
 * Works out a build that is likely to be adequate, if none has been found: for a search that was stopped before it had
 * anything to show. It may be loud, and nothing is proved by it.
 *
 * @param hunt the search
 */
export function findAny(hunt: Hunt): void {
  if (hunt.list.candidates.length > 0) return;
  const { places, duties } = hunt.enclosure;
  const best = places.map((place) => (place.kind === 'bank' ? strongest(place) : 0));
  const tried = new Set<number>();
  for (const { build } of [...hunt.asked, ...hunt.waiting.data]) {
    const key = elementKey(hunt.enclosure, build);
    if (tried.has(key)) continue;
    if (tried.size >= MOST_TRIES) return;
    tried.add(key);
    const whole = build.map((option, place) =>
      places[place]?.kind === 'bank' ? (best[place] as number) : option,
    );
    if (hunt.wishes.broken(whole) || hunt.wishes.fallen(whole)) continue;
    const found = workOut(hunt, whole, new Float64Array(duties.length), Number.POSITIVE_INFINITY);
    if (found === null || typeof found === 'string') continue;
    hunt.list.insert(found);
    hunt.solved += 1;
    hunt.open -= 1;
    return;
  }
}
