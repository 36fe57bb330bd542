import { densityAt, type Site } from '../air/air.ts';
import { type AskedLimit, askedLimits, refusals } from '../enclosure/asked-limits.ts';
import type { Duty, Enclosure, LimitKind } from '../enclosure/enclosure.ts';
import { OUTSIDE } from '../enclosure/enclosure.ts';
import type { Machine } from '../enclosure/machine.ts';
import { levelOfEnergy, newNoiseState, soundEnergy } from '../enclosure/noise.ts';
import { createPass, type PassFailure } from '../enclosure/pass.ts';
import { conditionsOf, newPassState, type PassState } from '../enclosure/pass-state.ts';
import type {
  CubicMetresPerSecond,
  Decibels,
  KelvinDifference,
  Kelvins,
  KilogramsPerSecond,
  Watts,
} from '../quantities/dimensions.ts';

/** Accuracy of the temperatures [K]. */
const TOLERANCE: KelvinDifference = 1e-7;
/** A limit that is missed by less is held [K]: speeds are found to within this. */
const HELD: KelvinDifference = 1e-6;

/** The limit with the least margin. */
export interface TightLimit {
  /** Part, or chamber of a panel. */
  readonly subject: string;
  readonly of: LimitKind;
  readonly limit: Kelvins;
  readonly found: Kelvins;
  /** Limit less found [K]. */
  readonly margin: KelvinDifference;
}

/** One build in one duty at given speeds, in a few numbers. */
export interface OperatingState {
  readonly duty: string;
  /** Share of the time [-]. */
  readonly share: number;
  /** Speed of each bank as a share of full speed [-], order of the machine's banks. */
  readonly ratios: readonly number[];
  /** All limits hold with the asked margin, and no part fails. */
  readonly adequate: boolean;
  /** At the listener, free field [dB]; NaN without a solution. */
  readonly level: Decibels;
  /** Absent if nothing has a limit or there is no solution. */
  readonly tightest?: TightLimit;
  /** Air that enters from outside [kg/s]. */
  readonly massFlow: KilogramsPerSecond;
  /** The same as a volume, as it enters [m³/s]. */
  readonly flow: CubicMetresPerSecond;
  /** Flow through each bank [kg/s], along its leg. */
  readonly bankFlows: readonly KilogramsPerSecond[];
  readonly fanPower: Watts;
  /** Why there is no solution, or that a part fails; absent if neither. */
  readonly failure?: PassFailure | 'a part fails';
}

/** Works out states of one build in one duty; each starts from the one before. */
export type OperatingBench = (ratios: ArrayLike<number>) => OperatingState;

function tightestOf(limits: readonly AskedLimit[], state: PassState): TightLimit | undefined {
  return limits
    .map(({ subject, of, limit, found }) => ({ subject, of, limit, found: found(state) }))
    .map((each) => ({ ...each, margin: each.limit - each.found }))
    .reduce<TightLimit | undefined>(
      (least, each) => (least && least.margin <= each.margin ? least : each),
      undefined,
    );
}

/** What enters the box from outside. */
function inflowOf(
  { legs }: Enclosure,
  state: PassState,
  site: Site,
): Pick<OperatingState, 'massFlow' | 'flow'> {
  let massFlow = 0;
  let flow = 0;
  legs.forEach((leg, index) => {
    const along = state.network.flows[index] as number;
    const entering = leg.from === OUTSIDE ? along : leg.to === OUTSIDE ? -along : 0;
    if (entering <= 0) return;
    massFlow += entering;
    flow += entering / densityAt(site, state.chambers[OUTSIDE] as number);
  });
  return { massFlow, flow };
}

function nothing(duty: Duty, ratios: readonly number[], failure: PassFailure): OperatingState {
  return {
    duty: duty.id,
    share: duty.share,
    ratios,
    adequate: false,
    level: Number.NaN,
    massFlow: Number.NaN,
    flow: Number.NaN,
    bankFlows: ratios.map(() => Number.NaN),
    fanPower: Number.NaN,
    failure,
  };
}

/**
 * Prepares looks at a build in one duty that tell the few numbers a table or a curve needs: some dozen times quicker
 * than the whole outcome.
 *
 * @param machine the build
 * @param duty the state of use
 */
export function operatingBench(machine: Machine, duty: Duty): OperatingBench {
  const { enclosure } = machine.plant;
  const conditions = conditionsOf(enclosure, duty);
  const pass = createPass(machine);
  const state = newPassState(machine);
  const noise = newNoiseState(machine);
  const limits = askedLimits(machine, duty);
  const isRefused = refusals(machine, duty);
  return (given) => {
    const speeds = Float64Array.from(given);
    const ratios = [...speeds];
    const failure = pass(conditions, speeds, state, TOLERANCE);
    if (failure) return nothing(duty, ratios, failure);
    const tightest = tightestOf(limits, state);
    const refused = isRefused(state);
    const holds = !tightest || tightest.margin >= enclosure.margin - HELD;
    return {
      duty: duty.id,
      share: duty.share,
      ratios,
      adequate: holds && !refused,
      level: levelOfEnergy(soundEnergy(machine, speeds, state, noise)),
      ...(tightest ? { tightest } : {}),
      ...inflowOf(enclosure, state, conditions.site),
      bankFlows: machine.banks.map(({ leg }) => state.network.flows[leg] as number),
      fanPower: state.fanPowers.reduce((sum, power) => sum + power, 0),
      ...(refused ? { failure: 'a part fails' as const } : {}),
    };
  };
}
