import { FAN_ASSUMPTIONS, type FanAssumptions } from '../fan/fan-assumptions.ts';
import { HEAT_ASSUMPTIONS, type HeatAssumptions } from '../heat/heat-assumptions.ts';
import { SOUND_ASSUMPTIONS, type SoundAssumptions } from '../sound/sound-assumptions.ts';

/** Every number of the model that rests on judgement, by room; a scenario may override each. */
export interface Assumptions {
  readonly sound: SoundAssumptions;
  readonly fan: FanAssumptions;
  readonly heat: HeatAssumptions;
}

/** The defaults. */
export const ASSUMPTIONS: Assumptions = {
  sound: SOUND_ASSUMPTIONS,
  fan: FAN_ASSUMPTIONS,
  heat: HEAT_ASSUMPTIONS,
};
