import type { Duty } from '../enclosure/enclosure.ts';
import { bracketedRoot } from '../numerics/roots.ts';
import type { KelvinDifference, Kelvins } from '../quantities/dimensions.ts';
import { type ControlPath, stateAt } from './control-path.ts';
import type { SpeedRung } from './control-rungs.ts';
import type { LimitReader, LimitReading } from './limit-readings.ts';

/** Accuracy of a place on the path [-]. */
const PLACE_TOLERANCE = 1e-6;
/** A temperature that falls by no more along the path still counts as rising [K]. */
const ROUNDING: KelvinDifference = 1e-4;

/** When a controller leaves a rung. */
export interface Threshold {
  /** Temperature above which it goes to the next rung [K]. */
  readonly up: Kelvins;
  /** Temperature below which it comes back from there [K]. */
  readonly back: Kelvins;
  /** What going up takes off the temperature where it just happens, once all has settled [K]. */
  readonly drop: KelvinDifference;
}

/** What the controller reads. */
export type Sensor = Pick<LimitReading, 'subject' | 'of' | 'limit'>;

/** What is settled of a build, its path and its rungs. */
export interface Ladder {
  readonly read: LimitReader;
  readonly path: ControlPath;
  readonly rungs: readonly SpeedRung[];
}

/** Temperature of a sensor in a state of use on a rung [K]; NaN if there is none. */
export function sensorIn({ read }: Ladder, sensor: Sensor, state: Duty, rung: SpeedRung): Kelvins {
  const readings = read(state, rung.ratios) ?? [];
  const found = readings.find(({ subject, of }) => subject === sensor.subject && of === sensor.of);
  return found?.found ?? Number.NaN;
}

function sensorAt(ladder: Ladder, sensor: Sensor, place: number, rung: SpeedRung): Kelvins {
  return sensorIn(ladder, sensor, stateAt(ladder.path, place), rung);
}

/** Whether a sensor never cools along the path, whatever the rung: only then can it tell how much is asked. */
export function tellsTheWay(ladder: Ladder, sensor: Sensor): boolean {
  return ladder.rungs.every((rung) => {
    const along = ladder.path.map((_, place) => sensorAt(ladder, sensor, place, rung));
    return along.every((found, place) => place === 0 || found >= (along[place - 1] as number) - ROUNDING);
  });
}

/** The place at which a rung has a temperature, from the start of the path to the last state it is made for. */
function placeAt(ladder: Ladder, sensor: Sensor, rung: SpeedRung, temperature: Kelvins): number {
  const over = (place: number): number => sensorAt(ladder, sensor, place, rung) - temperature;
  if (over(rung.upTo) <= 0) return rung.upTo;
  if (over(0) >= 0) return 0;
  const found = bracketedRoot(over, 0, rung.upTo, { tolerance: PLACE_TOLERANCE });
  return found.ok ? found.root : found.best;
}

/**
 * Thresholds between rungs, lowest first, such that a settled controller cannot hunt.
 *
 * A rung is left at the temperature it has in the last state it is made for, or a step below where the next one is
 * left, whichever is lower: all limits hold until then. It is gone back to only below the temperature the next rung
 * settles at where the change just happens, less what the sensor is off by. With more heat than there the next rung is
 * warmer than that, and with less there was no reason to leave: so no heat asks for both.
 *
 * @param ladder of a build, with a sensor that tells the way
 * @param sensor what the controller reads
 * @param step least rise from threshold to threshold [K], > 0
 * @param slack by how much the sensor may be off [K], ≥ 0
 */
export function thresholds(
  ladder: Ladder,
  sensor: Sensor,
  step: KelvinDifference,
  slack: KelvinDifference,
): readonly Threshold[] {
  const found: Threshold[] = [];
  let ceiling = Number.POSITIVE_INFINITY;
  for (let index = ladder.rungs.length - 2; index >= 0; index--) {
    const [rung, next] = [ladder.rungs[index] as SpeedRung, ladder.rungs[index + 1] as SpeedRung];
    const up = Math.min(sensorAt(ladder, sensor, rung.upTo, rung), ceiling);
    const settled = sensorAt(ladder, sensor, placeAt(ladder, sensor, rung, up), next);
    const drop = Math.max(0, up - settled);
    found.unshift({ up, back: up - drop - slack, drop });
    ceiling = up - step;
  }
  return found;
}
