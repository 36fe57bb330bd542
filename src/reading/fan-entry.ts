import { curveFromBox } from '../fan/box-figures.ts';
import { curveFromPoints, type FanCurve } from '../fan/curve.ts';
import { DEFAULT_HOLD_FLOOR, START_ABOVE_HOLD } from '../fan/fan-assumptions.ts';
import type { FanModel, Provenance } from '../fan/fan-model.ts';
import type { SoundAssumptions } from '../sound/sound-assumptions.ts';
import { curveFinding } from './curve-check.ts';
import type { FanFields } from './fan-form.ts';
import { readRatings } from './fan-ratings.ts';
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
  const written = { noise: fields.noise, fullSpeed: fields.speed, path: [...path, 'noise'] };
  const ratings = readRatings(written, context.sound, findings);
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
    ...(fields.struts === undefined ? {} : { struts: fields.struts }),
    ...(fields.turns === undefined ? {} : { turns: fields.turns }),
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
