import type { DutyOutcome } from '../enclosure/outcome.ts';
import type { CubicMetresPerSecond } from '../quantities/dimensions.ts';

/** Name of the room around the box among the chambers. */
const OUTSIDE_NAME = 'outside';

/**
 * Volume flow from outside into the box [m³/s], at the state in which the air enters.
 *
 * @param duty of a build
 */
export function inflow(duty: DutyOutcome): CubicMetresPerSecond {
  return duty.legs.reduce((sum, { from, to, flow }) => {
    if (from === OUTSIDE_NAME && flow > 0) return sum + flow;
    return to === OUTSIDE_NAME && flow < 0 ? sum - flow : sum;
  }, 0);
}
