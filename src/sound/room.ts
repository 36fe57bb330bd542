import type { Decibels, Metres, SquareMetres } from '../quantities/dimensions.ts';
import { energy } from './levels.ts';
import type { Directivity } from './rating.ts';
import { pressureOverPower } from './rating.ts';

/** Sabine's factor [s/m]. Source: published, phonometry, page on the duct path (0.161; ISO 3744 has 0.16). */
const SABINE = 0.161;

/** Where somebody listens in a room. */
export interface ListeningPlace {
  /** Distance from the source [m], > 0. */
  readonly distance: Metres;
  /** Directivity factor of the source's place [-]. */
  readonly directivity: Directivity;
  /** Directivity index of the source itself towards the listener [dB]; 0 if absent. */
  readonly index?: Decibels;
  /**
   * Equivalent absorption area A [m²], > 0 (VDI 2081). Handbooks that use the room constant A/(1 - ᾱ) may put
   * it here instead; the two must not be mixed in one comparison. Infinity is the open air.
   */
  readonly absorption: SquareMetres;
}

/**
 * Sound pressure minus sound power in a room [dB]: 10 lg(Q/(4πr²) + 4/A).
 *
 * An extra beside the free-field figure, never the base of a ranking.
 * Source: VDI 2081 part 1, equation 36 (published: phonometry, page on VDI 2081).
 *
 * The source's own directivity index raises the direct sound only, not the power.
 *
 * @param place distance [m], directivity [-], index [dB] and absorption area [m²]
 * @throws RangeError if the absorption is not above 0
 */
export function pressureOverPowerInRoom(place: ListeningPlace): Decibels {
  const { distance, directivity, index = 0, absorption } = place;
  if (!(absorption > 0)) throw new RangeError('the absorption area must be above 0');
  const direct = (energy(index) * directivity) / (4 * Math.PI * distance * distance);
  return 10 * Math.log10(direct + 4 / absorption);
}

/**
 * What the room adds to the level without it at the same place [dB], ≥ 0.
 *
 * Source: as `pressureOverPowerInRoom`.
 *
 * @param place distance [m], directivity [-] and absorption area [m²]
 */
export function roomRise(place: ListeningPlace): Decibels {
  const { distance, directivity, index = 0 } = place;
  return pressureOverPowerInRoom(place) - pressureOverPower(distance, directivity) - index;
}

/**
 * Equivalent absorption area from a reverberation time [m²]: 0.161 V/T.
 *
 * Source: Sabine's formula.
 *
 * @param volume volume of the room [m³], > 0
 * @param reverberation reverberation time [s], > 0
 */
export function absorptionArea(volume: number, reverberation: number): SquareMetres {
  return (SABINE * volume) / reverberation;
}

/**
 * Distance at which room and direct sound are equal [m]: √(QA/(16π)).
 *
 * Source: VDI 2081 part 1 (published: phonometry, page on VDI 2081).
 *
 * @param directivity directivity factor of the source's place [-]
 * @param absorption equivalent absorption area [m²], > 0
 */
export function reverberantRadius(directivity: Directivity, absorption: SquareMetres): Metres {
  return Math.sqrt((directivity * absorption) / (16 * Math.PI));
}
