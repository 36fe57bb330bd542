import type { Machine } from '../enclosure/machine.ts';
import { assemble, plantOf } from '../enclosure/machine.ts';
import type { ValueRange } from '../quantities/value-range.ts';
import { fasterIsCooler } from '../search/monotone-airway.ts';
import { rank } from '../search/rank.ts';
import { buildState, evenPlan, fullPlan, lackOf, quietestPlan, type SpeedPlan } from './build-state.ts';
import { type Crossing, crossingsOf } from './crossing.ts';
import type { Quantity } from './quantity.ts';
import type { SweepPoint } from './sweep-point.ts';
import { pointSureness } from './sweep-sure.ts';
import {
  onlyDuty,
  type ScenarioBuild,
  type VariedScenario,
  variedMachine,
  variedScenario,
  withSpeeds,
} from './varied-scenario.ts';

/** A quantity and the values it takes. */
export interface Axis {
  readonly quantity: Quantity;
  readonly range: ValueRange;
}

/** How a sweep is run. */
export interface SweepOptions {
  /** Share of full speed at which all banks run [-]; their quietest adequate speeds if absent. */
  readonly speed?: number | undefined;
  /** Looks for the quietest adequate build at every point, instead of keeping one. */
  readonly anew?: boolean | undefined;
  /** The only duty that counts; all if absent. */
  readonly duty?: string | undefined;
  /** Whether to tell how sure each point is; so if absent. */
  readonly bands?: boolean | undefined;
}

/** A quantity varied, or two. */
export interface Sweep {
  readonly axes: readonly Axis[];
  /** The first axis runs fastest. */
  readonly points: readonly SweepPoint[];
  /** Where adequacy begins or ends along the only axis; none on two. */
  readonly crossings: readonly Crossing[];
  /** Banks of the build, in the order of the speeds; empty if it is found anew. */
  readonly banks: readonly { readonly place: string; readonly fan: string; readonly count: number }[];
}

/** Everything that stays the same over a sweep. */
interface Course {
  readonly base: ScenarioBuild;
  readonly axes: readonly Axis[];
  readonly options: SweepOptions;
  readonly plan: SpeedPlan;
}

function variedAt({ base, axes, options }: Course, positions: readonly number[]): VariedScenario | string {
  const varied = variedScenario(
    base,
    axes.map(({ quantity, range }, index) => quantity.changeTo(range.textAt(positions[index] ?? 0))),
  );
  return typeof varied === 'string'
    ? varied
    : { ...varied, enclosure: onlyDuty(varied.enclosure, options.duty) };
}

function machineAt(course: Course, varied: VariedScenario): Machine | string {
  const { base, axes, options } = course;
  if (!options.anew)
    return variedMachine(
      base,
      varied,
      axes.flatMap(({ quantity }) => quantity.frees),
    );
  const ranking = rank(varied.enclosure, { top: 1, gap: 0.01 });
  const [row] = ranking.rows;
  const found = row?.outcome ?? ranking.nearestMiss?.outcome;
  return found ? assemble(plantOf(varied.enclosure), found.build.options) : 'no build has a solution';
}

function pointAt(course: Course, positions: readonly number[], bands: boolean): SweepPoint {
  const varied = variedAt(course, positions);
  const machine = typeof varied === 'string' ? varied : machineAt(course, varied);
  if (typeof machine === 'string' || typeof varied === 'string')
    return { positions, state: String(machine), sure: null };
  const state = buildState(machine, withSpeeds(course.plan, varied.speeds));
  const sure = bands ? pointSureness(machine, state) : null;
  return { positions, state, sure, ...(course.options.anew ? { build: machine.build } : {}) };
}

/** Speeds that banks nobody varies run at: the same at every point if any speed is varied. */
function planOf(base: ScenarioBuild, axes: readonly Axis[], speed: number | undefined): SpeedPlan {
  if (speed !== undefined) return evenPlan(speed);
  if (!axes.some(({ quantity }) => quantity.speeds)) return quietestPlan;
  const varied = variedMachine(base, { enclosure: base.enclosure, speeds: [] }, []);
  if (typeof varied === 'string') return quietestPlan;
  const found = base.enclosure.duties.map((duty, index) => quietestPlan(varied, duty, index));
  return (_machine, _duty, index) => found[index] ?? [];
}

/**
 * How far from adequate a build is at a position of the only axis [K]. Where speeds are free and faster is never warmer,
 * full speed tells, which is smooth; else the speeds that were found tell.
 */
function lackAt(course: Course): (position: number) => number {
  return (position) => {
    const varied = variedAt(course, [position]);
    const machine = typeof varied === 'string' ? varied : machineAt(course, varied);
    if (typeof machine === 'string' || typeof varied === 'string') return Number.NaN;
    const { enclosure } = machine.plant;
    const free = course.plan === quietestPlan;
    const plan = free && fasterIsCooler(machine.plant) ? fullPlan : course.plan;
    return lackOf(buildState(machine, withSpeeds(plan, varied.speeds)), enclosure.margin);
  };
}

function positionsOf(axes: readonly Axis[]): readonly (readonly number[])[] {
  const [first, second] = axes;
  const along = first?.range.positions ?? [];
  if (!second) return along.map((position) => [position]);
  return second.range.positions.flatMap((other) => along.map((position) => [position, other]));
}

function banksOf(base: ScenarioBuild, anew: boolean): Sweep['banks'] {
  if (anew) return [];
  const machine = variedMachine(base, { enclosure: base.enclosure, speeds: [] }, []);
  if (typeof machine === 'string') return [];
  return machine.banks.map(({ place, bank }) => ({
    place: base.enclosure.places[place]?.id ?? '',
    fan: bank.fan.id,
    count: bank.count,
  }));
}

/**
 * Varies one quantity of a scenario, or two, and tells what becomes of a build: its level, margin, flow and speeds at
 * each point, how sure these are, and on one axis where it stops or begins to be adequate, found as a root and not from the grid.
 *
 * @param whole scenario and build
 * @param axes one quantity with its values, or two
 * @param options speeds, and whether the build is found anew at each point
 */
export function sweep(whole: ScenarioBuild, axes: readonly Axis[], options: SweepOptions = {}): Sweep {
  const base = { ...whole, enclosure: onlyDuty(whole.enclosure, options.duty) };
  const course: Course = { base, axes, options, plan: planOf(base, axes, options.speed) };
  const points = positionsOf(axes).map((positions) => pointAt(course, positions, options.bands ?? true));
  const [axis, second] = axes;
  const adequateAt = (position: number): boolean => {
    const { state } = pointAt(course, [position], false);
    return typeof state !== 'string' && state.adequate;
  };
  const crossings =
    axis && !second && !options.anew ? crossingsOf(points, axis.range, lackAt(course), adequateAt) : [];
  return { axes, points, crossings, banks: banksOf(base, options.anew === true) };
}
