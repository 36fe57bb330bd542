import type { Metres } from '../quantities/dimensions.ts';
import { bankWords } from './bank-words.ts';
import { depthOf, fansThere, priceOf } from './build-costs.ts';
import { type Bank, type Build, type Enclosure, type Leg, OUTSIDE, type Place } from './enclosure.ts';
import { bankIn } from './stages.ts';

/** What stands where in a build. */
export interface BuildDescription {
  /** One index per place of the scenario. */
  readonly options: readonly number[];
  /** The arrangement in words, for example "push-pull on stack, exit exhausting". */
  readonly arrangement: string;
  readonly places: readonly { readonly place: string; readonly holds: string }[];
  readonly fanCount: number;
  /** Depth that the fans of a leg have together [m], of the leg where that is most. */
  readonly depth: Metres;
  /** Sum of the prices [-]; absent if one is unknown. */
  readonly price?: number;
}

/** What stands in a place where there was a choice, or fans that do not turn; else empty. */
function holds(place: Place, option: number): string {
  const chosen = place.options.length > 1;
  if (place.kind === 'element') return chosen ? (place.options[option]?.label ?? '') : '';
  const bank = place.options[option] ?? null;
  return chosen || bank?.lost ? bankWords(bank) : '';
}

function isFins(place: Place | undefined, option: number | undefined): boolean {
  return place?.kind === 'element' && place.options[option ?? 0]?.element.disturbance === 'fins';
}

/** Fans of one leg in words: where they stand to the fins, or which way they move the air. */
function legWords(enclosure: Enclosure, build: Build, leg: Leg): string | null {
  const running = leg.through.filter((place) => bankIn(enclosure, build, place) !== null);
  if (running.length === 0) return null;
  const fins = leg.through.find((place) => isFins(enclosure.places[place], build[place]));
  const names = running.map((place) => enclosure.places[place]?.id ?? '').join(' and ');
  if (fins === undefined) {
    const way = leg.to === OUTSIDE ? 'exhausting' : leg.from === OUTSIDE ? 'blowing in' : 'passing air on';
    return `${names} ${way}`;
  }
  const at = leg.through.indexOf(fins);
  const before = running.some((place) => leg.through.indexOf(place) < at);
  const behind = running.some((place) => leg.through.indexOf(place) > at);
  const how = before && behind ? 'push-pull' : before ? 'push' : 'pull';
  return `${how} on ${enclosure.places[fins]?.id ?? ''}`;
}

/** All fans of a build, bank by bank. */
function banksOf(enclosure: Enclosure, build: Build): readonly Bank[] {
  return enclosure.places.flatMap((_, place) => bankIn(enclosure, build, place) ?? []);
}

/**
 * A build in words and numbers: arrangement, what stands where, number of fans, price.
 *
 * @param enclosure the scenario
 * @param build one option index per place
 */
export function describeBuild(enclosure: Enclosure, build: Build): BuildDescription {
  const banks = banksOf(enclosure, build);
  const words = enclosure.legs.flatMap((leg) => legWords(enclosure, build, leg) ?? []);
  const price = priceOf(enclosure, build);
  return {
    options: build,
    arrangement: words.length > 0 ? words.join(', ') : 'no fans',
    places: enclosure.places.map((place, index) => ({
      place: place.id,
      holds: holds(place, build[index] ?? 0),
    })),
    fanCount: banks.reduce((sum, bank) => sum + fansThere(bank), 0),
    depth: depthOf(enclosure, build),
    ...(Number.isFinite(price) ? { price } : {}),
  };
}
