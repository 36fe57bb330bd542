import type { Machine } from '../enclosure/machine.ts';
import type { Fraction, KelvinDifference } from '../quantities/dimensions.ts';
import { fasterIsCooler } from '../search/monotone-airway.ts';
import { quietestSpeeds } from '../search/quietest-speeds.ts';
import { createTrial } from '../search/trial.ts';
import type { ControlPath } from './control-path.ts';

/** Speeds that differ by less are the same [-]. */
const SAME: Fraction = 1e-6;

/** Speeds of all banks that are enough up to a state of the path. */
export interface SpeedRung {
  /** Index of the last state it is made for. */
  readonly upTo: number;
  /** Share of full speed of each bank [-], order of the machine's banks. */
  readonly ratios: readonly Fraction[];
}

/** Quietest speeds that leave some margin, or no more than asked if that cannot be had, or the coolest. */
function speedsFor(
  machine: Machine,
  path: ControlPath,
  index: number,
  spare: KelvinDifference,
): readonly Fraction[] {
  const duty = path[index];
  if (!duty) throw new RangeError('a state of the path');
  const { margin } = machine.plant.enclosure;
  const monotone = fasterIsCooler(machine.plant);
  const plain = createTrial(machine, duty);
  const asked = new Float64Array(plain.limits.length).fill(margin + spare);
  const spared = quietestSpeeds(createTrial(machine, duty, 1, asked), monotone).best;
  if (spared) return [...spared.ratios];
  const { best, coolest } = quietestSpeeds(plain, monotone);
  return [...(best ?? coolest).ratios];
}

/** No bank turns slower on a rung than on the one before: a faster one is always among the speeds it may have. */
function climbing(speeds: readonly (readonly Fraction[])[]): readonly (readonly Fraction[])[] {
  const rungs: (readonly Fraction[])[] = [];
  for (const ratios of speeds) {
    const before = rungs.at(-1);
    rungs.push(ratios.map((ratio, bank) => Math.max(ratio, before?.[bank] ?? ratio)));
  }
  return rungs;
}

function alike(one: readonly Fraction[], other: readonly Fraction[] | undefined): boolean {
  return other !== undefined && one.every((ratio, bank) => Math.abs(ratio - (other[bank] ?? 0)) <= SAME);
}

/**
 * Rungs of speed along a path, slowest first. Each leaves more margin than the next by a step, so that the temperatures
 * at which they are left rise along the path; the last one leaves what is asked.
 *
 * @param machine the build
 * @param path states of use, each asking no less than the one before
 * @param step margin from rung to rung [K], > 0
 */
export function speedRungs(
  machine: Machine,
  path: ControlPath,
  step: KelvinDifference,
): readonly SpeedRung[] {
  const last = path.length - 1;
  const speeds = path.map((_, index) => speedsFor(machine, path, index, step * (last - index)));
  const rungs = climbing(speeds);
  return rungs.flatMap((ratios, upTo) => (alike(ratios, rungs[upTo + 1]) ? [] : [{ upTo, ratios }]));
}
