import { curveFromBox } from '../fan/box-figures.ts';
import { curveFromPoints, type FanCurve } from '../fan/curve.ts';
import { DEFAULT_HOLD_FLOOR, START_ABOVE_HOLD } from '../fan/fan-assumptions.ts';
import type { FanModel, Provenance, Rating } from '../fan/fan-model.ts';
import { ratingFromPower, ratingFromPressure } from '../sound/rating.ts';
import type { SoundAssumptions } from '../sound/sound-assumptions.ts';
import { curveFinding } from './curve-check.ts';
import type { FanFields, RatingFields } from './fan-form.ts';
import type { Findings } from './findings.ts';
import type { Path } from './problem.ts';

/** What a fan inherits from its file. */
export interface FanContext {
  readonly provenance: Provenance;
  readonly sound: SoundAssumptions;
}

/**
 * Makes a fan from its checked fields.
 *
 * @param fields in SI
 * @param path of the fan in the file
 * @param context what it inherits
 * @param findings receives what does not go together
 */
export function readFan(
  fields: FanFields,
  path: Path,
  context: FanContext,
  findings: Findings,
): FanModel | undefined {
  const curve = readCurve(fields, path, findings);
  const ratings = readRatings(fields, path, context.sound, findings);
  const holdFloor = fields.hold ?? Math.min(DEFAULT_HOLD_FLOOR, fields.start ?? 1);
  const startFloor = fields.start ?? Math.min(1, holdFloor + START_ABOVE_HOLD);
  if (startFloor < holdFloor) {
    const message = 'a fan cannot start at a lower speed than it holds';
    findings.push({
      code: 'conflict',
      path: [...path, 'start'],
      at: 'value',
      message,
      expected: '"hold" or more',
    });
  }
  if (!curve || !ratings) return undefined;
  return {
    id: fields.fan,
    size: fields.size,
    depth: fields.depth,
    fullSpeed: fields.speed,
    holdFloor,
    startFloor,
    curve,
    ratings,
    power: fields.power,
    ...(fields.price === undefined ? {} : { price: fields.price }),
    ...(fields.blades === undefined ? {} : { blades: fields.blades }),
    provenance: fields.provenance ?? context.provenance,
  };
}

function readCurve(fields: FanFields, path: Path, findings: Findings): FanCurve | undefined {
  if (fields.box) return curveFromBox(fields.box.flow, fields.box.pressure);
  if (!fields.curve) return undefined;
  const points = { flows: fields.curve.flow, pressures: fields.curve.pressure };
  const finding = curveFinding(points, [...path, 'curve']);
  if (finding) {
    findings.push(finding);
    return undefined;
  }
  return curveFromPoints(points);
}

/** Ratings in order of speed. */
function readRatings(
  fields: FanFields,
  path: Path,
  sound: SoundAssumptions,
  findings: Findings,
): readonly Rating[] | undefined {
  const before = findings.length;
  const ratings = fields.noise.map((given, index) => {
    const rating = readRating(given, fields.speed, sound);
    const place = { path: [...path, 'noise', index, 'speed'], at: 'value' } as const;
    if (rating.speed > fields.speed) {
      const message = 'this rating is for a speed the fan does not reach';
      findings.push({
        code: 'conflict',
        ...place,
        message,
        expected: 'full speed ("speed" of the fan) at most',
      });
    }
    const twice = fields.noise
      .slice(0, index)
      .some((other) => (other.speed ?? fields.speed) === rating.speed);
    if (twice)
      findings.push({ code: 'conflict', ...place, message: 'there is a rating for this speed already' });
    return rating;
  });
  return findings.length === before ? ratings.sort((one, other) => one.speed - other.speed) : undefined;
}

function readRating(given: RatingFields, fullSpeed: number, sound: SoundAssumptions): Rating {
  const speed = given.speed ?? fullSpeed;
  if ('power-level' in given) {
    const mean = given['power-level'] - (given.declared ? sound.declaredAllowance : 0);
    return ratingFromPower(speed, mean, sound);
  }
  const { level, distance } = given;
  return ratingFromPressure(distance === undefined ? { speed, level } : { speed, level, distance });
}
