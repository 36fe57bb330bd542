import type { Bank, BankPlace, Build, Enclosure, Place } from '../../enclosure/enclosure.ts';

/** A build to start from. */
export interface StartBuild {
  readonly enclosure: Enclosure;
  readonly build: Build;
}
/** Puts a bank into a place, whatever may be chosen there. */
export function withBank({ enclosure, build }: StartBuild, index: number, bank: Bank | null): StartBuild {
  const place = enclosure.places[index];
  if (place?.kind !== 'bank') return { enclosure, build };
  const changed: BankPlace = { ...place, options: [...place.options, bank] };
  return {
    enclosure: { ...enclosure, places: enclosure.places.with(index, changed) },
    build: build.with(index, place.options.length),
  };
}

/** Makes a place right behind another, fan to fan, and puts a bank into it. */
export function withBankBehind({ enclosure, build }: StartBuild, index: number, bank: Bank): StartBuild {
  const front = enclosure.places[index];
  if (front?.kind !== 'bank') return { enclosure, build };
  const { outletWall, outletBar, ...plain } = front;
  const behind: BankPlace = {
    ...front,
    id: `${front.id}, behind`,
    options: [bank],
    inletGap: 0,
  };
  const { inletWall, inletBar, ...second } = behind;
  const places: readonly Place[] = [...enclosure.places.with(index, { ...plain, outletGap: 0 }), second];
  const legs = enclosure.legs.map((leg) => ({
    ...leg,
    through: leg.through.flatMap((place) => (place === index ? [place, places.length - 1] : [place])),
  }));
  return { enclosure: { ...enclosure, places, legs }, build: [...build, 0] };
}
