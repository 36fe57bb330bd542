import type { Decibels, Metres, SquareMetres } from '../quantities/dimensions.ts';
import { energy } from '../sound/levels.ts';
import type { Directivity } from '../sound/rating.ts';
import type { Enclosure } from './enclosure.ts';

/** Where the box stands in its room, with the directivity factor of each [-]. */
export const STANDS = { free: 1, plane: 2, edge: 4, corner: 8 } as const satisfies Record<
  string,
  Directivity
>;

/** In the open, on one surface, where two meet, where three meet. */
export type Stand = keyof typeof STANDS;

/** Who listens and what they hear besides. */
export interface Listener {
  /** Distance from the box [m]. */
  readonly distance: Metres;
  /** A-weighted level without the box [dB]. */
  readonly background?: Decibels;
  /** Where the box stands; only the figure for the room depends on it. */
  readonly stand?: Stand;
  /** Equivalent absorption area of the room [m²]; only the figure for the room depends on it. */
  readonly absorption?: SquareMetres;
}

/** How one source lies to the listener. */
export interface Hearing {
  /** Distance of the source from the listener [m]; that of the box if absent. */
  readonly distance?: Metres;
  /** Level towards the listener above that in the rated direction [dB]; 0 if absent. */
  readonly directivity?: Decibels;
}

/** Distance of a place from the listener [m]. */
export function distanceOf(enclosure: Enclosure, place: number): Metres {
  return enclosure.places[place]?.heard?.distance ?? enclosure.listener.distance;
}

/** Directivity index of a place towards the listener [dB]. */
export function directivityOf(enclosure: Enclosure, place: number): Decibels {
  return enclosure.places[place]?.heard?.directivity ?? 0;
}

/**
 * Sound energy of a place at the listener over what it would be at the distance of the box, with no directivity and
 * nothing in the way [-]. With this factor all sources count as equally far.
 *
 * Source: spherical spreading, definition of the directivity index, and the `attenuation` of the sound assumptions.
 *
 * @param enclosure the scenario
 * @param place index of the place
 */
export function nearness(enclosure: Enclosure, place: number): number {
  const { listener, assumptions } = enclosure;
  const nearer = listener.distance / distanceOf(enclosure, place);
  return nearer * nearer * energy(directivityOf(enclosure, place) - assumptions.sound.attenuation);
}
