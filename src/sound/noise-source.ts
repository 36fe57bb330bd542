import type { Decibels, Fraction, Metres } from '../quantities/dimensions.ts';
import { levelAtDistance, levelOf } from './levels.ts';
import { RATING_DISTANCE } from './rating.ts';
import type { SoundAssumptions } from './sound-assumptions.ts';

/** What one place sends out. */
export interface Emission {
  /** Index of the place in the enclosure's list. */
  readonly place: number;
  /** What makes the sound there. */
  readonly label: string;
  /** Relative squared pressure at 1 m, all fans of the place together [-], ≥ 0. */
  readonly energyAtOneMetre: number;
}

/** One row of the noise budget. */
export interface NoiseSource {
  /** Index of the place in the enclosure's list. */
  readonly place: number;
  /** What makes the sound there. */
  readonly label: string;
  /** Level at 1 m [dB]; -Infinity if silent. */
  readonly levelAtOneMetre: Decibels;
  /** Level at the listener [dB]; -Infinity if silent. */
  readonly levelAtListener: Decibels;
  /** Share of the whole sound energy [-]; all shares sum to 1, or are 0 if everything is silent. */
  readonly share: Fraction;
}

/** The noise budget: the rows and what they come to. */
export interface NoiseBudget {
  readonly sources: readonly NoiseSource[];
  /** Sum at 1 m [dB]. */
  readonly levelAtOneMetre: Decibels;
  /** Sum at the listener [dB]. */
  readonly levelAtListener: Decibels;
}

/**
 * Noise budget at a listener equally far from all sources, in the order of the emissions.
 *
 * Source: energetic sum and spherical spreading, as in `levelAtDistance`.
 *
 * @param emissions what each place sends out
 * @param distance distance of the listener [m], > 0
 * @param assumptions `attenuation` on the way out [dB]
 */
export function noiseBudget(
  emissions: readonly Emission[],
  distance: Metres,
  assumptions: SoundAssumptions,
): NoiseBudget {
  const heard = (level: Decibels) =>
    levelAtDistance(level, RATING_DISTANCE, distance) - assumptions.attenuation;
  let sum = 0;
  for (const emission of emissions) sum += emission.energyAtOneMetre;
  const sources = emissions.map(({ place, label, energyAtOneMetre }) => {
    const levelAtOneMetre = levelOf(energyAtOneMetre);
    const share = sum > 0 ? energyAtOneMetre / sum : 0;
    return { place, label, levelAtOneMetre, levelAtListener: heard(levelAtOneMetre), share };
  });
  const levelAtOneMetre = levelOf(sum);
  return { sources, levelAtOneMetre, levelAtListener: heard(levelAtOneMetre) };
}
