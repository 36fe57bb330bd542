import { askedLimits } from '../enclosure/asked-limits.ts';
import { placeId } from '../enclosure/solved-pass.ts';
import type { Decibels, KelvinDifference, Kelvins } from '../quantities/dimensions.ts';
import type { SolvedBuild } from '../search/solve-build.ts';
import { type BankSpeed, speedOf, startRatio } from './bank-speed.ts';
import { controlPath } from './control-path.ts';
import { type SpeedRung, speedRungs } from './control-rungs.ts';
import {
  type Ladder,
  type Sensor,
  sensorIn,
  type Threshold,
  tellsTheWay,
  thresholds,
} from './control-thresholds.ts';
import { limitReader } from './limit-readings.ts';
import { operatingBench } from './operating-state.ts';

/** A limit that is missed by less is held [K]: speeds are found to within this. */
const HELD: KelvinDifference = 1e-4;

/** How a table for a controller is made. Each is a model assumption without a source. */
export interface ControllerOptions {
  /** Rungs between those of two duties [-], ≥ 0. */
  readonly between: number;
  /** Least rise from one temperature of the table to the next [K], > 0. */
  readonly step: KelvinDifference;
  /** By how much the sensor may be off from one reading to the next [K], ≥ 0. */
  readonly slack: KelvinDifference;
}

/** The options unless a user sets others: sensors of boards tell whole degrees. */
export const CONTROLLER_OPTIONS: ControllerOptions = { between: 1, step: 1, slack: 1 };

/** A line of the table of a controller. */
export interface ControllerRung {
  /** Temperature above which it comes up to this line [K]; absent of the first. */
  readonly from?: Kelvins;
  /** Temperature below which it goes back to the line before [K]; absent of the first. */
  readonly back?: Kelvins;
  /** What coming up takes off the temperature once all has settled [K]; absent of the first. */
  readonly drop?: KelvinDifference;
  /** Order of the banks, none slower than on the line before. */
  readonly speeds: readonly BankSpeed[];
  /** Banks that turn slower here than they start: a fan at rest must be started at its start floor first. */
  readonly startFirst: readonly string[];
}

/** Where a controller settles in a duty when it comes from the first line. */
export interface DutyRung {
  readonly duty: string;
  /** Index of the line. */
  readonly rung: number;
  /** At the listener, free field [dB]: what the ladder costs over the quietest speeds of the duty. */
  readonly level: Decibels;
}

/** Speed over one temperature, or why there is no such table. */
export type ControllerLadder =
  | {
      readonly ok: true;
      readonly sensor: Sensor;
      readonly rungs: readonly ControllerRung[];
      /** Order of the scenario. */
      readonly duties: readonly DutyRung[];
    }
  | {
      readonly ok: false;
      readonly reason:
        | 'no banks'
        | 'no limit'
        | 'not adequate'
        | 'faster is not cooler'
        | 'no temperature tells what is asked';
    };

/** The limit nearest to being reached on the fastest rung that tells the way; dry-out is no reading of a sensor. */
function sensorOf(ladder: Ladder): Sensor | undefined {
  const [state, rung] = [ladder.path.at(-1), ladder.rungs.at(-1)];
  const readings = (state && rung && ladder.read(state, rung.ratios)) ?? [];
  return readings
    .filter(({ of }) => of !== 'pipes')
    .sort((one, other) => one.limit - one.found - (other.limit - other.found))
    .find((sensor) => tellsTheWay(ladder, sensor));
}

/** Whether every limit holds on every rung in all states it is made for. */
function holdsAll({ read, path, rungs }: Ladder, margin: KelvinDifference): boolean {
  return path.every((state, place) => {
    const rung = rungs.find(({ upTo }) => upTo >= place);
    const readings = rung && read(state, rung.ratios);
    return readings?.every(({ limit, found }) => found <= limit - margin + HELD) ?? false;
  });
}

function controllerRungs(
  { machine }: SolvedBuild,
  { rungs }: Ladder,
  found: readonly Threshold[],
): readonly ControllerRung[] {
  return rungs.map(({ ratios }, index): ControllerRung => {
    const threshold = found[index - 1];
    const speeds = machine.banks.map((bank, at) => speedOf(bank, ratios[at] as number));
    const slow = machine.banks.filter((bank, at) => (ratios[at] as number) < startRatio(bank));
    return {
      ...(threshold ? { from: threshold.up, back: threshold.back, drop: threshold.drop } : {}),
      speeds,
      startFirst: slow.map(({ place }) => placeId(machine, place)),
    };
  });
}

function dutyRungs(
  { machine, duties }: SolvedBuild,
  ladder: Ladder,
  sensor: Sensor,
  found: readonly Threshold[],
): readonly DutyRung[] {
  return duties.map(({ duty }) => {
    const stays = (rung: SpeedRung, index: number): boolean =>
      !(sensorIn(ladder, sensor, duty, rung) > (found[index]?.up ?? Number.POSITIVE_INFINITY));
    const rung = ladder.rungs.findIndex(stays);
    const { level } = operatingBench(machine, duty)(ladder.rungs[rung]?.ratios ?? []);
    return { duty: duty.id, rung, level };
  });
}

/**
 * The ladder of speeds over the temperature nearest to its limit.
 *
 * @param solved a build with its quietest speeds
 * @param options how fine it is, and how sure its sensor
 */
export function controllerLadder(
  solved: SolvedBuild,
  { between, step, slack }: ControllerOptions,
): ControllerLadder {
  const { machine, duties } = solved;
  if (machine.banks.length === 0) return { ok: false, reason: 'no banks' };
  if (!duties.every(({ adequate }) => adequate)) return { ok: false, reason: 'not adequate' };
  if (duties.every(({ duty }) => askedLimits(machine, duty).length === 0))
    return { ok: false, reason: 'no limit' };
  const read = limitReader(machine);
  const path = controlPath(solved, read, between);
  const ladder = { read, path, rungs: speedRungs(machine, path, step) };
  if (!holdsAll(ladder, machine.plant.enclosure.margin)) return { ok: false, reason: 'faster is not cooler' };
  const sensor = sensorOf(ladder);
  if (!sensor) return { ok: false, reason: 'no temperature tells what is asked' };
  const found = thresholds(ladder, sensor, step, slack);
  const { subject, of, limit } = sensor;
  return {
    ok: true,
    sensor: { subject, of, limit },
    rungs: controllerRungs(solved, ladder, found),
    duties: dutyRungs(solved, ladder, sensor, found),
  };
}
