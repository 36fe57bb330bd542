import type { FanModel, Rating } from '../../fan/fan-model.ts';
import { ratingFromPower } from '../../sound/rating.ts';
import { SOUND_ASSUMPTIONS } from '../../sound/sound-assumptions.ts';
import type { FanFields } from '../fan-form.ts';
import { valueAt } from '../form-tree.ts';
import type { Finding, Path } from '../problem.ts';
import {
  classOf,
  flowScale,
  NOISE_RANGE,
  noiseConstant,
  pressureScale,
  type Range,
  within,
} from './fan-class.ts';
import { type Slip, slipsOf } from './unit-slips.ts';

/** A fan that was read, and what was written of it. */
export interface WrittenFan {
  readonly fan: FanModel;
  readonly fields: FanFields;
  /** Its entry in the file. */
  readonly written: unknown;
  /** Where that stands. */
  readonly path: Path;
}

/** Digits shown of a coefficient. */
const DIGITS = 2;

/**
 * What is odd about the figures of a fan that can be read: probably a slip, but it may be true.
 *
 * @param given the fan as read and as written
 * @returns findings of code "doubtful", none if the figures go together
 */
export function fanDoubts(given: WrittenFan): readonly Finding[] {
  const speed = speedDoubt(given);
  const figures = speed
    ? [speed]
    : [pressureDoubt(given), flowDoubt(given)].filter((each) => each !== undefined);
  const power = figures.length === 0 ? powerDoubt(given) : undefined;
  return [...figures, ...(power ? [power] : []), ...levelDoubts(given, figures.length === 0)];
}

function doubt(path: Path, message: string, more: Partial<Finding> = {}): Finding {
  return { code: 'doubtful', path, at: 'value', message, ...more };
}

/** Where the figures of the curve stand: under `curve` or `box`. */
function figurePath({ fan, path }: WrittenFan, key: 'flow' | 'pressure'): Path {
  return [...path, fan.curve.synthesised ? 'box' : 'curve', key];
}

function coefficients({ fan }: WrittenFan, ratio = 1): { readonly flow: number; readonly pressure: number } {
  const turning = { size: fan.size, depth: fan.depth, speed: fan.fullSpeed * ratio };
  return {
    flow: fan.curve.freeDelivery / flowScale(turning),
    pressure: fan.curve.shutOff / pressureScale(turning),
  };
}

function isBelievable(given: WrittenFan, ratio = 1): { readonly flow: boolean; readonly pressure: boolean } {
  const { flow, pressure } = coefficients(given, ratio);
  const known = classOf(given.fan.depth);
  return { flow: within(flow, known.flow), pressure: within(pressure, known.pressure) };
}

/** Both figures are odd, and one other speed makes sense of both. */
function speedDoubt(given: WrittenFan): Finding | undefined {
  const now = isBelievable(given);
  if (now.flow || now.pressure) return undefined;
  const written = valueAt(given.written, ['speed']);
  const slip = [...slipsOf('speed', written), ...digitSlips(written)].find(({ factor }) => {
    const then = isBelievable(given, factor);
    return then.flow && then.pressure;
  });
  if (!slip) return undefined;
  return doubt([...given.path, 'speed'], 'flow and pressure do not go with this speed', {
    found: String(written),
    expected: 'the full speed of the fan',
    suggestion: slip.written,
  });
}

/** A digit too few or too many. */
function digitSlips(written: unknown): readonly Slip[] {
  const [, number = '', unit = ''] = /^\s*(\d+)(.*)$/.exec(String(written)) ?? [];
  if (number === '') return [];
  return [10, 0.1].map((factor) => {
    return { written: `${Number(number) * factor}${unit}`, factor, from: unit, to: unit };
  });
}

function outside(name: string, value: number, [least, greatest]: Range): string {
  return `${name} coefficient ${value.toPrecision(DIGITS)}, usual are ${least} to ${greatest}`;
}

function pressureDoubt(given: WrittenFan): Finding | undefined {
  if (isBelievable(given).pressure) return undefined;
  const { pressure } = coefficients(given);
  const usual = classOf(given.fan.depth).pressure;
  const path = figurePath(given, 'pressure');
  const slips = slipsOf('pressure', valueAt(given.written, path.slice(given.path.length)));
  const slip = slips.find(({ factor }) => within(pressure * factor, usual));
  const much = pressure > usual[1] ? 'more' : 'less';
  return doubt(path, `${much} pressure than fans of this size, depth and speed make`, {
    ...taken(slip),
    expected: outside('pressure', pressure, usual),
  });
}

function flowDoubt(given: WrittenFan): Finding | undefined {
  if (isBelievable(given).flow) return undefined;
  const { flow } = coefficients(given);
  const usual = classOf(given.fan.depth).flow;
  const path = figurePath(given, 'flow');
  const slips = slipsOf('flow', valueAt(given.written, path.slice(given.path.length)));
  const slip = slips.find(({ factor }) => within(flow * factor, usual));
  const much = flow > usual[1] ? 'more' : 'less';
  return doubt(path, `${much} air than fans of this size, depth and speed move`, {
    ...taken(slip),
    expected: outside('flow', flow, usual),
  });
}

function taken(slip: Slip | undefined): Pick<Finding, 'found' | 'suggestion'> {
  return slip ? { found: `${slip.to} written as ${slip.from}, it seems`, suggestion: slip.written } : {};
}

/** No fan gives the air more power than it takes. */
function powerDoubt({ fan, path, written }: WrittenFan): Finding | undefined {
  const { flows, pressures } = fan.curve.raw;
  const air = Math.max(...flows.map((flow, index) => flow * (pressures[index] ?? 0)));
  if (air <= fan.power) return undefined;
  const place = [...path, 'power'];
  return doubt(place, 'its air gets more power than the fan takes', {
    found: `${valueAt(written, ['power'])}, and ${air.toPrecision(DIGITS)} W in the air`,
    expected: 'the electrical power at full speed, or a flow or a pressure in another unit',
  });
}

function levelDoubts(given: WrittenFan, sure: boolean): readonly Finding[] {
  const noise = valueAt(given.written, ['noise']);
  return given.fields.noise.flatMap((rating, index) => {
    // Figures are quoted as they were written.
    const level = valueAt(noise, [index, 'level']);
    if ('power-level' in rating || level === undefined) return [];
    const path = [...given.path, 'noise', index, 'level'];
    const unstated = rating.distance === undefined ? [withoutDistance(path, level)] : [];
    const speed = rating.speed ?? given.fan.fullSpeed;
    const own = sure ? given.fan.ratings.find((each) => each.speed === speed) : undefined;
    const odd = own && loudDoubt(given.fan, own, path, level);
    return odd ? [...unstated, odd] : unstated;
  });
}

function withoutDistance(path: Path, level: unknown): Finding {
  return doubt(path, 'a level without a distance: 1 m is assumed', {
    found: String(level),
    expected: 'the distance it was measured at; measured at 0.5 m it would be 6 dB less at 1 m',
    suggestion: `level: ${level}, distance: 1 m`,
  });
}

/** A sound pressure that would be usual as a sound power, or that no fan of this speed makes. */
function loudDoubt(
  fan: FanModel,
  { speed, level }: Rating,
  path: Path,
  written: unknown,
): Finding | undefined {
  const turning = { size: fan.size, depth: fan.depth, speed };
  const constant = noiseConstant(turning, level);
  if (within(constant, NOISE_RANGE)) return undefined;
  const asPower = noiseConstant(turning, ratingFromPower(speed, level, SOUND_ASSUMPTIONS).level);
  const much = constant > NOISE_RANGE[1] ? 'louder' : 'quieter';
  return doubt(path, `${much} than fans of this size and speed are`, {
    found: String(written),
    ...(much === 'louder' && within(asPower, NOISE_RANGE) ? { suggestion: `power-level: ${written}` } : {}),
  });
}
