import type { DutyBands } from '../bands/build-bands.ts';
import type { SpeedBand } from '../enclosure/avoided-speeds.ts';
import type { MachineBank } from '../enclosure/machine.ts';
import { placeId } from '../enclosure/solved-pass.ts';
import type { Fraction, RevolutionsPerSecond } from '../quantities/dimensions.ts';
import type { SolvedBuild, SolvedDuty } from '../search/solve-build.ts';
import { bandsAt } from './bands-at.ts';
import { type BankSpeed, speedOf, startRatio } from './bank-speed.ts';
import {
  CONTROLLER_OPTIONS,
  type ControllerLadder,
  type ControllerOptions,
  controllerLadder,
} from './controller-ladder.ts';

/** A bank and what a controller must know of it. */
export interface ControlledBank {
  readonly place: string;
  readonly fan: string;
  readonly count: number;
  readonly fullSpeed: RevolutionsPerSecond;
  /** Least speed at which it keeps turning. */
  readonly holdFloor: BankSpeed;
  /** Least speed at which it starts, bands to avoid heeded. */
  readonly startFloor: BankSpeed;
  /** Bands it should not run in. */
  readonly avoid: readonly SpeedBand[];
}

/** Fixed speeds for a duty: the quietest that hold every limit. */
export interface DutySetting {
  readonly duty: string;
  readonly share: Fraction;
  readonly adequate: boolean;
  /** Order of the banks. */
  readonly speeds: readonly BankSpeed[];
  /** At these speeds; null without a solution. */
  readonly bands: DutyBands | null;
}

/** What to set a controller to. */
export interface ControllerTable {
  readonly banks: readonly ControlledBank[];
  /** Order of the scenario. */
  readonly duties: readonly DutySetting[];
  readonly ladder: ControllerLadder;
}

function controlledBank({ machine }: SolvedBuild, entry: MachineBank): ControlledBank {
  const { fan, count } = entry.bank;
  return {
    place: placeId(machine, entry.place),
    fan: fan.id,
    count,
    fullSpeed: fan.fullSpeed,
    holdFloor: speedOf(entry, fan.holdFloor),
    startFloor: speedOf(entry, startRatio(entry)),
    avoid: entry.avoid,
  };
}

function settingOf({ machine }: SolvedBuild, { duty, point, adequate }: SolvedDuty): DutySetting {
  const speeds = machine.banks.map((bank, index) => speedOf(bank, point.ratios[index] as number));
  const bands = bandsAt(machine, duty, point.ratios);
  return { duty: duty.id, share: duty.share, adequate, speeds, bands };
}

/**
 * What to set a controller to: fixed speeds for each duty, and a ladder of speeds over the temperature nearest to its
 * limit, with hysteresis. The controller goes one rung at a time and waits until the temperature has settled.
 *
 * @param solved a build with its quietest speeds
 * @param options how fine the ladder is, and how sure its sensor
 */
export function controllerTable(
  solved: SolvedBuild,
  options: ControllerOptions = CONTROLLER_OPTIONS,
): ControllerTable {
  return {
    banks: solved.machine.banks.map((bank) => controlledBank(solved, bank)),
    duties: solved.duties.map((duty) => settingOf(solved, duty)),
    ladder: controllerLadder(solved, options),
  };
}
