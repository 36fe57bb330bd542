import type { Build, Duty, Enclosure } from '../enclosure/enclosure.ts';
import { assemble, type Machine, plantOf } from '../enclosure/machine.ts';
import { createPass } from '../enclosure/pass.ts';
import { conditionsOf, newPassState } from '../enclosure/pass-state.ts';
import { bracketedRoot } from '../numerics/roots.ts';
import type { Decibels, KelvinDifference, Watts } from '../quantities/dimensions.ts';
import { fasterIsCooler } from '../search/monotone-airway.ts';
import { quietestSpeeds } from '../search/quietest-speeds.ts';
import type { SolvedBuild, SolvedDuty } from '../search/solve-build.ts';
import { createTrial, fullSpeed, isAdequate, type Point, type Trial } from '../search/trial.ts';
import { levelOf } from '../sound/levels.ts';

/** Accuracy of a common factor on the speeds, as a logarithm [-]: 0.005 dB. */
const FACTOR_TOLERANCE = 2e-4;
/** Levels closer than this are alike [dB]. */
const ALIKE: Decibels = 1e-3;
/** Accuracy of the temperatures behind a power [K]. */
const POWER_TOLERANCE: KelvinDifference = 1e-4;

/**
 * Whether a duty is beyond a build, told by one pass: even at full speed, with fans that give off no heat, something is
 * too warm, in an airway in which a faster fan never warms anything and no exhaust is drawn in again.
 */
function isBeyond(machine: Machine, duty: Duty, monotone: boolean): boolean {
  if (!monotone || machine.plant.enclosure.legs.some(({ recirculation }) => recirculation > 0)) return false;
  const trial = createTrial(machine, duty, 0);
  return !isAdequate(trial.evaluate(fullSpeed(trial)));
}

function solveDuty(machine: Machine, duty: Duty, monotone: boolean): SolvedDuty {
  const trial = createTrial(machine, duty);
  if (isBeyond(machine, duty, monotone)) {
    return { duty, point: trial.evaluate(fullSpeed(trial)), adequate: false };
  }
  const { best, coolest } = quietestSpeeds(trial, monotone);
  const point = best ?? coolest;
  return { duty, point, adequate: isAdequate(point) };
}

/** Speeds of a build in every duty. */
export type SolvedChange = Pick<SolvedBuild, 'machine' | 'duties'>;

/**
 * Solves a build anew: the quietest speeds that hold every limit, or the coolest if none do. Where it is plain that none
 * do, full speed.
 *
 * @param enclosure the scenario
 * @param build one option index per place
 */
export function solveAnew(enclosure: Enclosure, build: Build): SolvedChange {
  const plant = plantOf(enclosure);
  const machine = assemble(plant, build);
  const monotone = fasterIsCooler(plant);
  return { machine, duties: enclosure.duties.map((duty) => solveDuty(machine, duty, monotone)) };
}

/**
 * Whether a build can hold every limit in every duty, at whatever speeds: at full speed where a faster fan never warms
 * anything, else at the quietest that do. Much less work than to find them.
 *
 * @param machine the build
 */
export function canHold(machine: Machine): boolean {
  const monotone = fasterIsCooler(machine.plant);
  return machine.plant.enclosure.duties.every((duty) => {
    const trial = createTrial(machine, duty);
    if (isAdequate(trial.evaluate(fullSpeed(trial)))) return true;
    return !monotone && quietestSpeeds(trial, monotone).best !== null;
  });
}

/** Level of a point at the listener [dB]. */
function pointLevel({ energy: found }: Point): Decibels {
  return levelOf(found);
}

/** Level of the mean sound energy over the duties by their shares [dB]. */
export function meanLevel({ duties }: SolvedChange): Decibels {
  return levelOf(duties.reduce((sum, { duty, point }) => sum + duty.share * point.energy, 0));
}

/** Whether a build holds every limit in every duty. */
export function isAdequateBuild({ duties }: SolvedChange): boolean {
  return duties.every(({ adequate }) => adequate);
}

function moved(trial: Trial, base: Float64Array, shift: number): Float64Array {
  return base.map((ratio, bank) => {
    const most = Math.max(ratio, trial.ceilings[bank] as number);
    const least = Math.min(ratio, trial.floors[bank] as number);
    return Math.min(most, Math.max(least, ratio * Math.exp(shift)));
  });
}

/** Shift beyond which no bank moves any more, down or up. */
function rangeOf(trial: Trial, base: Float64Array, up: boolean): number {
  const shifts = [...base].map((ratio, bank) =>
    Math.log(((up ? trial.ceilings : trial.floors)[bank] as number) / ratio),
  );
  return up ? Math.max(0, ...shifts) : Math.min(0, ...shifts);
}

/**
 * The least margin in a duty when all speeds are moved by a common factor to where the level is one given; less noise
 * if full speed makes no more [K].
 *
 * @param trial build and duty
 * @param base speeds to start from [-]
 * @param level to reach at the listener [dB]
 * @returns undefined if even the lowest speeds are louder, or there is no solution
 */
function marginAtLevel(trial: Trial, base: Float64Array, level: Decibels): KelvinDifference | undefined {
  const start = trial.evaluate(base);
  const miss = (shift: number): number => pointLevel(trial.evaluate(moved(trial, base, shift))) - level;
  const first = pointLevel(start) - level;
  if (Math.abs(first) < ALIKE) return marginOf(start);
  const end = rangeOf(trial, base, first < 0);
  const last = end === 0 ? first : miss(end);
  if (first < 0 && last <= 0) return marginOf(trial.evaluate(moved(trial, base, end)));
  if (!(first * last < 0)) return undefined;
  const found = bracketedRoot(miss, 0, end, { tolerance: FACTOR_TOLERANCE });
  return found.ok ? marginOf(trial.evaluate(moved(trial, base, found.root))) : undefined;
}

function marginOf({ warmest }: Point): KelvinDifference | undefined {
  return Number.isFinite(warmest) ? -warmest : undefined;
}

/**
 * Least margin over all duties, each at a level of its own [K].
 *
 * @param solved the build with speeds to start from
 * @param levels one a duty [dB]
 * @returns undefined if a duty cannot be that quiet
 */
export function marginAtLevels(
  { machine, duties }: SolvedChange,
  levels: readonly Decibels[],
): KelvinDifference | undefined {
  let least = Number.POSITIVE_INFINITY;
  for (const [index, { duty, point }] of duties.entries()) {
    const margin = marginAtLevel(createTrial(machine, duty), point.ratios, levels[index] as number);
    if (margin === undefined) return undefined;
    least = Math.min(least, margin);
  }
  return Number.isFinite(least) ? least : undefined;
}

function powerIn(solved: SolvedChange, duty: Duty, ratios: Float64Array): Watts {
  const { machine } = solved;
  const state = newPassState(machine);
  createPass(machine)(conditionsOf(machine.plant.enclosure, duty), ratios, state, POWER_TOLERANCE);
  return state.fanPowers.reduce((sum, power) => sum + power, 0);
}

/** Electrical power of the fans, mean over the duties by their shares [W]. */
export function meanPower(solved: SolvedChange): Watts {
  return solved.duties.reduce(
    (sum, { duty, point }) => sum + duty.share * (duty.share > 0 ? powerIn(solved, duty, point.ratios) : 0),
    0,
  );
}
