import type { Duty } from '../../enclosure/enclosure.ts';
import type { Machine } from '../../enclosure/machine.ts';
import { createPass } from '../../enclosure/pass.ts';
import { conditionsOf, newPassState } from '../../enclosure/pass-state.ts';
import { bankOutcome } from '../../enclosure/source-outcome.ts';
import type { CubicMetresPerSecond } from '../../quantities/dimensions.ts';
import type { SetBuild } from './rescue.ts';

const TOLERANCE = 1e-7;

/**
 * Air that flows back through fans of a place that do not turn [m³/s]: past them and out again, against the stream.
 * Negative if air passes them along the stream.
 *
 * @param machine the build with its lost fans
 * @param set speeds, room and duty
 * @param place of the lost fans
 * @returns 0 if nothing is lost there; NaN without a solution
 */
export function backFlow(machine: Machine, set: SetBuild, place: number): CubicMetresPerSecond {
  const { enclosure } = machine.plant;
  const duty: Duty = { ...(enclosure.duties[set.duty] as Duty), room: set.room };
  const conditions = conditionsOf(enclosure, duty);
  const ratios = Float64Array.from(set.ratios, (ratio) => ratio * (1 - set.slower));
  const state = newPassState(machine);
  if (createPass(machine)(conditions, ratios, state, TOLERANCE)) return Number.NaN;
  const index = machine.banks.findIndex((bank) => bank.place === place);
  const bank = machine.banks[index];
  if (!bank) return 0;
  const { lost } = bankOutcome({ machine, duty, conditions, ratios, state }, bank, index);
  return lost ? -lost.flow : 0;
}
