import type { Decibels, Fraction, Metres, SquareMetres } from '../quantities/dimensions.ts';

/*
 * Losses on the way out. A fan rated by one figure cannot carry them, so no credit is given by default; with the
 * octave shape of a fan they may be used, 5 dB(A) at most without a measurement.
 */

/** Speed of sound [m/s]. Source: published, phonometry, hvac.py. */
const SOUND_SPEED = 343;

/** Factor of the end reflection by the way a duct ends [-]. Source: published, phonometry, hvac.py. */
const END_FACTOR = { flush: 0.8, free: 1 } as const;

/**
 * Loss by reflection at the end of a duct at least one diameter long [dB].
 *
 * Never for a fan in a panel. Source: Long, Architectural Acoustics, 2nd ed., equations 14.14 to 14.16 (published:
 * phonometry, hvac.py).
 *
 * @param diameter diameter of the duct [m], > 0
 * @param frequency frequency [Hz], > 0
 * @param ending flush with a wall, or in free space
 */
export function endReflection(
  diameter: Metres,
  frequency: number,
  ending: keyof typeof END_FACTOR,
): Decibels {
  const reach = (END_FACTOR[ending] * SOUND_SPEED) / (Math.PI * frequency * diameter);
  return 10 * Math.log10(1 + reach ** 1.88);
}

/**
 * Loss along a lined channel [dB]: 1.05 α^1.4 (P/S) l.
 *
 * Valid below the frequency c/d and below about 30 dB; a straight sight line limits it to about 10 dB at high
 * frequency. Source: ventilation texts (from memory).
 *
 * @param perimeter lined perimeter [m], ≥ 0
 * @param area clear area [m²], > 0
 * @param length length [m], ≥ 0
 * @param absorption absorption coefficient of the lining [-], 0 to 1
 */
export function linedChannelLoss(
  perimeter: Metres,
  area: SquareMetres,
  length: Metres,
  absorption: Fraction,
): Decibels {
  return ((1.05 * absorption ** 1.4 * perimeter) / area) * length;
}

/** Most an area step is credited with [dB]. Source: VDI 2081 part 1, section 6.3 (published: phonometry, hvac.py). */
const STEP_CAP: Decibels = 5;

/**
 * Loss at a sudden change of area [dB]: 10 lg((r + 1)²/(4r)), at most 5; the same both ways.
 *
 * Source: plane waves at a step, VDI 2081 (published: phonometry, page on VDI 2081).
 *
 * @param ratio one area over the other [-], > 0
 */
export function areaStepLoss(ratio: number): Decibels {
  return Math.min(STEP_CAP, 10 * Math.log10((ratio + 1) ** 2 / (4 * ratio)));
}

/**
 * Loss of a source inside an enclosure on its way out of an opening [dB]: 10 lg((S + A)/S).
 *
 * Needs a diffuse field inside, so not below the first mode of the enclosure, about 1.1 kHz for 150 mm; a fan in the
 * wall gets none of it on its outer side. Source: energy balance (from memory).
 *
 * @param opening area of the opening [m²], > 0
 * @param absorption equivalent absorption area inside [m²], ≥ 0
 */
export function enclosureLoss(opening: SquareMetres, absorption: SquareMetres): Decibels {
  return 10 * Math.log10((opening + absorption) / opening);
}
