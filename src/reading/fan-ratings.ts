import type { Rating, RatingBasis } from '../fan/fan-model.ts';
import type { Decibels, RevolutionsPerSecond } from '../quantities/dimensions.ts';
import { octaveBands } from '../sound/rated-spectrum.ts';
import { ratingFromPressure } from '../sound/rating.ts';
import { levelOnBasis } from '../sound/rating-basis.ts';
import type { SoundAssumptions } from '../sound/sound-assumptions.ts';
import { weightedLevel } from '../sound/spectrum.ts';
import type { RatingFields } from './fan-form.ts';
import type { Findings } from './findings.ts';
import type { Path } from './problem.ts';

/** Most that octaves may differ in sum from the level they stand beside [dB]: both are rounded. */
const OCTAVE_TOLERANCE: Decibels = 1;

/** Noise ratings of a fan as written, and what they refer to. */
export interface WrittenRatings {
  readonly noise: readonly RatingFields[];
  readonly fullSpeed: RevolutionsPerSecond;
  /** Path of the list. */
  readonly path: Path;
}

/**
 * Reads the noise ratings of a fan.
 *
 * @param written checked fields of each
 * @param sound how power becomes pressure
 * @param findings receives what does not go together
 * @returns ratings in order of speed; undefined if some do not go together
 */
export function readRatings(
  written: WrittenRatings,
  sound: SoundAssumptions,
  findings: Findings,
): readonly Rating[] | undefined {
  const { noise, fullSpeed, path } = written;
  const before = findings.length;
  const ratings = noise.map((given, index) => {
    const rating = readRating(given, fullSpeed, sound);
    checkSpeed(written, index, rating, findings);
    checkOctaves(given, [...path, index, 'octaves'], findings);
    return rating;
  });
  return findings.length === before ? ratings.sort((one, other) => one.speed - other.speed) : undefined;
}

function checkSpeed(
  { noise, fullSpeed, path }: WrittenRatings,
  index: number,
  { speed }: Rating,
  findings: Findings,
): void {
  const place = { path: [...path, index, 'speed'], at: 'value' } as const;
  if (speed > fullSpeed) {
    const message = 'this rating is for a speed the fan does not reach';
    const expected = 'full speed ("speed" of the fan) at most';
    findings.push({ code: 'conflict', ...place, message, expected });
  }
  if (noise.slice(0, index).some((other) => (other.speed ?? fullSpeed) === speed)) {
    findings.push({ code: 'conflict', ...place, message: 'there is a rating for this speed already' });
  }
}

/** The level written beside octaves; undefined if there is none. */
function writtenLevel(given: RatingFields): Decibels | undefined {
  return 'power-level' in given ? given['power-level'] : given.level;
}

/** The level of a rating on its own basis: as written, else the A-weighted sum of its octaves. */
function levelOn(given: RatingFields): Decibels {
  return writtenLevel(given) ?? weightedLevel(octaveBands(given.octaves ?? []));
}

function checkOctaves(given: RatingFields, path: Path, findings: Findings): void {
  const level = writtenLevel(given);
  if (level === undefined || !given.octaves) return;
  const sum = weightedLevel(octaveBands(given.octaves));
  if (Math.abs(sum - level) <= OCTAVE_TOLERANCE) return;
  findings.push({
    code: 'conflict',
    path,
    at: 'value',
    message: 'these octaves, A-weighted and summed, are not the level beside them',
    found: `${sum.toFixed(1)} dB(A) in sum`,
    expected: `${level} dB(A), give or take ${OCTAVE_TOLERANCE} dB; octaves that are A-weighted already do not belong here`,
  });
}

/** The basis of a rating; undefined if no assumption bears on it. */
function basisOf(given: RatingFields, level: Decibels): RatingBasis | undefined {
  const { mounted } = given;
  if ('power-level' in given) return { level, of: given.declared ? 'declared-power' : 'power', mounted };
  return mounted === 'free' ? undefined : { level, of: 'pressure', mounted };
}

/** Sound pressure at 1 m in the free field, or sound power as it stands, with what is known of the distance. */
function asGiven(given: RatingFields, speed: RevolutionsPerSecond): Rating {
  const level = levelOn(given);
  if ('power-level' in given) return { speed, level, basisStated: true };
  const { distance, field } = given;
  return ratingFromPressure({
    speed,
    level,
    ...(distance === undefined ? {} : { distance }),
    ...(field === undefined ? {} : { field }),
  });
}

/** Octaves are brought to the same basis as the level. */
function readRating(given: RatingFields, fullSpeed: RevolutionsPerSecond, sound: SoundAssumptions): Rating {
  const plain = asGiven(given, given.speed ?? fullSpeed);
  const basis = basisOf(given, plain.level);
  const level = basis ? levelOnBasis(basis, sound) : plain.level;
  const rating = { ...plain, level, ...(basis ? { basis } : {}) };
  if (!given.octaves) return rating;
  const shift = level - levelOn(given);
  return { ...rating, octaves: given.octaves.map((each) => each + shift) };
}
