import type { Rating } from '../fan/fan-model.ts';
import type { Decibels, Metres, RevolutionsPerSecond } from '../quantities/dimensions.ts';
import type { SoundAssumptions } from './sound-assumptions.ts';

/** Directivity factor of a place [-]: free, at one plane, at an edge, in a corner. */
export type Directivity = 1 | 2 | 4 | 8;

/** Field a level holds in: free all round, or over one hard plane. */
export type SoundField = SoundAssumptions['powerField'];

/** Directivity factor of each field [-]. */
export const FIELD_DIRECTIVITY: Readonly<Record<SoundField, Directivity>> = { free: 1, half: 2 };

/** Distance all ratings are reduced to [m]. */
export const RATING_DISTANCE: Metres = 1;

/**
 * Sound pressure minus sound power [dB]: 10 lg(Q/(4πr²)).
 *
 * The 0.1 to 0.2 dB of the state of the air are left out.
 * Source: definition of sound power, ISO 3745 (from memory).
 *
 * @param distance distance from the source [m], > 0
 * @param directivity directivity factor of the place [-]
 * @throws RangeError if the distance is not above 0
 */
export function pressureOverPower(distance: Metres, directivity: Directivity): Decibels {
  if (!(distance > 0)) throw new RangeError('a distance must be above 0');
  return 10 * Math.log10(directivity / (4 * Math.PI * distance * distance));
}

/**
 * Mean sound power level of a figure given in bels [dB].
 *
 * Source: ISO 9296:1988 declares the statistical maximum in bels, 1 B = 10 dB (published: scope text); the
 * allowance taken off is from memory (ISO 9296, ECMA-109).
 *
 * @param bels sound power level [B]
 * @param declared true if the figure is a declared (statistical maximum) value, false if it is a mean
 * @param assumptions `declaredAllowance` [dB]
 */
export function powerFromBels(bels: number, declared: boolean, assumptions: SoundAssumptions): Decibels {
  return 10 * bels - (declared ? assumptions.declaredAllowance : 0);
}

/**
 * Whether a sound power figure without a unit can only be meant in bels: small fans have 2 to 9 bels, and no
 * fan is rated at 2 to 9 dB.
 *
 * Source: model assumption, no source.
 *
 * @param figure the bare number, of a sound power [-]
 */
export function readsAsBels(figure: number): boolean {
  return figure >= 2 && figure <= 9;
}

/** A rating given as sound pressure. */
export interface PressureRating {
  /** Speed it holds at [1/s]. */
  readonly speed: RevolutionsPerSecond;
  /** A-weighted sound pressure level [dB]. */
  readonly level: Decibels;
  /** Distance it was measured at [m]; absent if unstated, then 1 m is assumed. */
  readonly distance?: Metres;
  /** Field it was measured in; absent: free. */
  readonly field?: SoundField;
}

/**
 * Rating from a sound pressure level, reduced to 1 m in the free field [dB].
 *
 * Source: spherical spreading and the directivity factor of the field, as in `pressureOverPower`.
 *
 * @param given speed [1/s], level [dB], distance [m] and field as stated
 */
export function ratingFromPressure(given: PressureRating): Rating {
  const { speed, level, distance, field } = given;
  const stated = pressureOverPower(distance ?? RATING_DISTANCE, FIELD_DIRECTIVITY[field ?? 'free']);
  const reduced = pressureOverPower(RATING_DISTANCE, FIELD_DIRECTIVITY.free);
  return { speed, level: level + (reduced - stated), basisStated: distance !== undefined };
}

/**
 * Rating from a sound power level: pressure at 1 m [dB].
 *
 * Source: definition of sound power, as in `pressureOverPower`.
 *
 * @param speed speed it holds at [1/s]
 * @param power A-weighted sound power level, mean value [dB]
 * @param assumptions `powerField` sets whether 11 dB (free) or 8 dB (half) are taken off
 */
export function ratingFromPower(
  speed: RevolutionsPerSecond,
  power: Decibels,
  assumptions: SoundAssumptions,
): Rating {
  const drop = pressureOverPower(RATING_DISTANCE, FIELD_DIRECTIVITY[assumptions.powerField]);
  return { speed, level: power + drop, basisStated: true };
}

/**
 * Rating from a sound power level in bels: pressure at 1 m [dB].
 *
 * Source: `powerFromBels` and `ratingFromPower`.
 *
 * @param speed speed it holds at [1/s]
 * @param bels A-weighted sound power level [B]
 * @param declared true if it is a declared (statistical maximum) value
 * @param assumptions `declaredAllowance` and `powerField`
 */
export function ratingFromBels(
  speed: RevolutionsPerSecond,
  bels: number,
  declared: boolean,
  assumptions: SoundAssumptions,
): Rating {
  return ratingFromPower(speed, powerFromBels(bels, declared, assumptions), assumptions);
}
