import type { PerforatedSheet } from '../../elements/perforated-sheet.ts';
import type { Build, Duty, Enclosure } from '../../enclosure/enclosure.ts';
import type { Fraction, Metres } from '../../quantities/dimensions.ts';
import type { Process } from './sheet-rules.ts';

/** What a vent has to do. */
export type Aim = 'flow' | 'limits';

/** An opening to find a pattern for. */
export interface VentTask {
  readonly enclosure: Enclosure;
  readonly build: Build;
  /** Index of the opening among the places. */
  readonly place: number;
  /** Speed of each bank in each duty [-], at which flow and temperatures are looked at. */
  readonly speeds: readonly Float64Array[];
  /** The duty that is looked at. */
  readonly duty: Duty;
  /** Field, thickness and facing of the sheet; its holes are those that stand there now. */
  readonly sheet: PerforatedSheet;
  /** Whether such a sheet stands there now, with these holes. */
  readonly stands: boolean;
  readonly process: Process;
  /** Narrowest web that is left between holes [m]. */
  readonly leastWeb: Metres;
  /** The only size of holes [m]; any if absent. */
  readonly hole?: Metres;
  /** Distance from the sheet to moving blades [m]. */
  readonly blades: Metres;
  /** Share of the flow through an opening without any loss that is to be kept [-]. */
  readonly keep: Fraction;
  readonly aim: Aim;
}
