import type { Rating } from '../fan/fan-model.ts';
import type { Decibels, Fraction, RevolutionsPerSecond } from '../quantities/dimensions.ts';
import { atLevel, type Band, fanShape, fanSpectrum, OCTAVES } from './spectrum.ts';

/**
 * Octave levels as bands.
 *
 * Source: definition.
 *
 * @param levels from 63 Hz to 8 kHz [dB]; a missing one is -Infinity
 */
export function octaveBands(levels: readonly Decibels[]): Band[] {
  return OCTAVES.map((centre, octave) => ({ centre, level: levels[octave] ?? Number.NEGATIVE_INFINITY }));
}

/** Octave levels measured at a speed. */
interface RatedOctaves {
  readonly speed: RevolutionsPerSecond;
  /** From 63 Hz to 8 kHz [dB]. */
  readonly octaves: readonly Decibels[];
}

/** Ratings that have a whole set of octaves, slowest first. */
function ratedOctaves(ratings: readonly Rating[]): readonly RatedOctaves[] {
  return ratings
    .flatMap(({ speed, octaves }) => (octaves?.length === OCTAVES.length ? [{ speed, octaves }] : []))
    .sort((one, other) => one.speed - other.speed);
}

/**
 * Whether a fan's ratings tell how its sound is spread over the octaves.
 *
 * Source: definition.
 *
 * @param ratings of the fan [dB]
 */
export function hasOctaves(ratings: readonly Rating[]): boolean {
  return ratedOctaves(ratings).length > 0;
}

function mixed(from: Decibels, to: Decibels, share: Fraction): Decibels {
  return from + share * (to - from);
}

/** Level of an octave round any frequency [dB], between the octaves measured and beyond them. */
function octaveLevelAt({ speed, octaves }: RatedOctaves, frequency: number): Decibels {
  const last = OCTAVES.length - 1;
  const above = OCTAVES.findIndex((centre) => frequency <= centre);
  if (above <= 0) {
    const end = above < 0 ? last : 0;
    const usual = fanShape(frequency, speed) - fanShape(OCTAVES[end] as number, speed);
    return (octaves[end] as Decibels) + usual;
  }
  const lower = OCTAVES[above - 1] as number;
  const share = Math.log(frequency / lower) / Math.log((OCTAVES[above] as number) / lower);
  return mixed(octaves[above - 1] as Decibels, octaves[above] as Decibels, share);
}

/**
 * Octaves of a fan at another speed: their shape moves along the frequencies with the speed, that is, stays as it is
 * over the Strouhal number f/(πn). The level of the result means nothing until it is brought to one.
 *
 * Between the octaves measured the level runs straight against lg f; beyond them the usual shape of an axial fan
 * carries on. Source: fan spectra of one shape over the Strouhal number, as in VDI 2081-1:2001, equation 15
 * (published: phonometry, hvac.py); straight lines between: model assumption, no source.
 *
 * @param octaves from 63 Hz to 8 kHz [dB], as many as there are octaves
 * @param from speed they hold at [1/s], > 0
 * @param to speed asked for [1/s], > 0
 */
export function movedOctaves(
  octaves: readonly Decibels[],
  from: RevolutionsPerSecond,
  to: RevolutionsPerSecond,
): Band[] {
  const rated = { speed: from, octaves };
  return OCTAVES.map((centre) => ({ centre, level: octaveLevelAt(rated, (centre * from) / to) }));
}

/** Spectrum of the ratings next to a speed, moved there; between two, their mean in decibels by lg of the speed. */
function ownSpectrum(rated: readonly RatedOctaves[], speed: RevolutionsPerSecond): Band[] | undefined {
  const faster = rated.find((one) => one.speed >= speed) ?? rated.at(-1);
  const slower = rated.findLast((one) => one.speed <= speed) ?? rated[0];
  if (!faster || !slower) return undefined;
  const there = ({ speed: at, octaves }: RatedOctaves) => atLevel(movedOctaves(octaves, at, speed), 0);
  if (faster.speed === slower.speed) return there(faster);
  const share = Math.log(speed / slower.speed) / Math.log(faster.speed / slower.speed);
  const high = there(faster);
  return there(slower).map(({ centre, level }, octave) => ({
    centre,
    level: mixed(level, high[octave]?.level ?? level, share),
  }));
}

/**
 * Octave spectrum of a fan at a level and a speed, 63 Hz to 8 kHz.
 *
 * Octaves of its own are moved along the frequencies from the speed they were rated at, and brought to the level;
 * between two ratings with octaves the shape goes over from one to the other, without a jump. Without any, the usual
 * shape of an axial fan is taken, which moves with the speed too.
 * Source: `movedOctaves` for the own octaves, that they go over by lg n: model assumption, no source; `fanSpectrum`
 * otherwise.
 *
 * @param ratings of the fan [dB]
 * @param speed speed [1/s], > 0
 * @param level A-weighted level [dB]
 */
export function ratedSpectrum(
  ratings: readonly Rating[],
  speed: RevolutionsPerSecond,
  level: Decibels,
): Band[] {
  const own = ownSpectrum(ratedOctaves(ratings), speed);
  return own ? atLevel(own, level) : fanSpectrum(level, speed);
}
