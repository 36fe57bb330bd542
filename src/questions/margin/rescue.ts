import type { Duty } from '../../enclosure/enclosure.ts';
import type { Machine } from '../../enclosure/machine.ts';
import { bracketedRoot } from '../../numerics/roots.ts';
import type { Decibels, Fraction, KelvinDifference, Kelvins } from '../../quantities/dimensions.ts';
import { type OperatingState, operatingBench } from '../operating-state.ts';

/** A build under some conditions, its speeds set. */
export interface SetBuild {
  readonly machine: Machine;
  /** Index of the duty. */
  readonly duty: number;
  /** Speeds it is set to, as shares of full speed [-]. */
  readonly ratios: readonly Fraction[];
  readonly room: Kelvins;
  /** Share by which all fans run slower than they are told [-]. */
  readonly slower: Fraction;
}

/** What would hold the limits. */
export type Rescue =
  /** All speeds moved together: the slowest at which all limits hold [-], as the fans are told, and their level. */
  | { readonly kind: 'speeds'; readonly ratios: readonly Fraction[]; readonly level: Decibels }
  /** Not even full speed: what it lacks [K], infinite without a solution or if a part fails. */
  | { readonly kind: 'none'; readonly lacks: KelvinDifference };

/** Up to which room temperature a build holds. */
export type HeldRoom = {
  readonly kind: 'room';
  readonly atSet: Kelvins | 'never' | 'always';
  readonly atFull: Kelvins | 'never' | 'always';
};

/** Room temperatures that are looked at [K]: −40 to 70 °C, as a scenario may name them. */
const COLDEST: Kelvins = 233.15;
const HOTTEST: Kelvins = 343.15;
const ROOM_ACCURACY: KelvinDifference = 1e-4;
/** Accuracy of the logarithm of a speed [-]. */
const SPEED_ACCURACY = 1e-5;
/** Stands for a lack without a number [K]. */
const FAR: KelvinDifference = 1e3;

function dutyIn({ machine, duty, room }: SetBuild): Duty {
  return { ...(machine.plant.enclosure.duties[duty] as Duty), room };
}

/** What a state lacks [K]; ≤ 0 if its limits hold. */
function lackOf(state: OperatingState, asked: KelvinDifference): KelvinDifference {
  if (state.failure !== undefined) return FAR;
  return state.tightest ? asked - state.tightest.margin : -FAR;
}

/** Speeds the fans are told, all moved by a factor and held at full speed. */
function told(ratios: readonly Fraction[], factor: number): readonly Fraction[] {
  return ratios.map((ratio) => Math.min(1, ratio * factor));
}

/**
 * State with all speeds moved by a factor.
 *
 * @param set the build
 * @param factor on the speeds it is set to [-]
 */
export function stateAt(set: SetBuild, factor: number): OperatingState {
  return operatingBench(
    set.machine,
    dutyIn(set),
  )(told(set.ratios, factor).map((ratio) => ratio * (1 - set.slower)));
}

/**
 * The slowest speeds, all moved together from those that are set, at which every limit holds. Fans do not run below
 * their hold floors.
 *
 * @param set the build
 */
export function rescue(set: SetBuild): Rescue {
  const { machine, ratios, slower } = set;
  const { margin } = machine.plant.enclosure;
  const bench = operatingBench(machine, dutyIn(set));
  const floors = machine.banks.map(({ bank }) => bank.fan.holdFloor);
  const speedsAt = (shift: number): readonly Fraction[] =>
    told(ratios, Math.exp(shift)).map((ratio, index) => Math.min(1, Math.max(floors[index] ?? 0, ratio)));
  const at = (shift: number): OperatingState => bench(speedsAt(shift).map((ratio) => ratio * (1 - slower)));
  const most = Math.max(0, ...ratios.map((ratio) => -Math.log(Math.max(ratio, 1e-6))));
  const least = Math.min(
    0,
    ...ratios.map((ratio, index) => Math.log(Math.max(floors[index] ?? 0, 1e-6) / Math.max(ratio, 1e-6))),
  );
  const lack = (shift: number): number => lackOf(at(shift), margin);
  const lacking = lack(most);
  if (lacking > 1e-6) return { kind: 'none', lacks: lacking >= FAR ? Number.POSITIVE_INFINITY : lacking };
  if (lack(least) <= 0) return { kind: 'speeds', ratios: speedsAt(least), level: at(least).level };
  const found = bracketedRoot(lack, least, most, { tolerance: SPEED_ACCURACY });
  const shift = found.ok ? found.root : most;
  return { kind: 'speeds', ratios: speedsAt(shift), level: at(shift).level };
}

/**
 * The room temperature at which the first limit is met, at the speeds that are set and at full speed.
 *
 * @param set the build under otherwise fixed conditions
 */
export function roomHeld(set: Omit<SetBuild, 'room'>): HeldRoom {
  const { margin } = set.machine.plant.enclosure;
  const search = (ratios: readonly Fraction[]): Kelvins | 'never' | 'always' => {
    const lack = (room: Kelvins): number => lackOf(stateAt({ ...set, ratios, room }, 1), margin);
    if (lack(COLDEST) > 0) return 'never';
    if (lack(HOTTEST) <= 0) return 'always';
    const found = bracketedRoot(lack, COLDEST, HOTTEST, { tolerance: ROOM_ACCURACY });
    return found.ok ? found.root : found.best;
  };
  return { kind: 'room', atSet: search(set.ratios), atFull: search(set.ratios.map(() => 1)) };
}
