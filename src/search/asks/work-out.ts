import type { Build, Duty } from '../../enclosure/enclosure.ts';
import { assemble } from '../../enclosure/machine.ts';
import type { Hunt } from '../hunt.ts';
import type { Candidate } from '../list.ts';
import { createTrial, fullSpeed, isAdequate, type Trial } from '../trial.ts';
import type { AskReason } from './reasons.ts';

/** Best speeds in one duty; null where full speed is enough to survive it, `false` if it cannot be met. */
function solveDuty(
  hunt: Hunt,
  trial: Trial,
  duty: number,
  energies: Float64Array,
  toBeat: number,
): Float64Array | null | false {
  const { enclosure, objective, spreading, wishes } = hunt;
  if (!objective.counts(enclosure, duty) && isAdequate(trial.evaluate(fullSpeed(trial)))) return null;
  const allowed = objective.budgetOf(enclosure, energies, duty, toBeat) / spreading;
  const best = wishes.speedsOf(trial, hunt.monotone, allowed);
  energies[duty] = best ? best.energy * spreading : Number.POSITIVE_INFINITY;
  return best ? best.ratios : false;
}

/** Duties that only have to be survived first, which is soon told; then those that add most, which soonest tell that it is out. */
function dutyOrder({ enclosure, objective, duties }: Hunt, energies: Float64Array): readonly number[] {
  const parts = energies.map((_, duty) =>
    objective.energyOf(
      enclosure,
      energies.map((value, index) => (index === duty ? value : 0)),
    ),
  );
  const counts = duties.filter((duty) => objective.counts(enclosure, duty));
  counts.sort((one, other) => (parts[other] as number) - (parts[one] as number));
  return [...duties.filter((duty) => !counts.includes(duty)), ...counts];
}

/**
 * Works out the best speeds of a build, duty by duty, as long as it can still make the list.
 *
 * @param hunt the search
 * @param build one option index per place
 * @param energies what it needs at least by duty, at 1 m [-]; overwritten
 * @param toBeat energy at 1 m, as the objective has it, that it must stay below [-]
 * @returns a candidate for the list, why it is refused, or null if it is not adequate or too loud
 */
export function workOut(
  hunt: Hunt,
  build: Build,
  energies: Float64Array,
  toBeat: number,
): Candidate | AskReason | null {
  const { enclosure, objective, spreading, wishes } = hunt;
  const machine = assemble(hunt.plant, build);
  const speeds = enclosure.duties.map((): Float64Array | null => null);
  const energyAt = (values: Float64Array): number => objective.energyOf(enclosure, values);
  const tooLoud = (): AskReason | null =>
    energyAt(energies) >= wishes.cap * spreading ? 'louder than asked' : null;
  for (const duty of dutyOrder(hunt, energies)) {
    const trial = createTrial(machine, enclosure.duties[duty] as Duty);
    const found = solveDuty(hunt, trial, duty, energies, toBeat);
    hunt.passes += trial.passes();
    if (found === false) return null;
    if (energyAt(energies) >= toBeat) return tooLoud();
    speeds[duty] = found;
  }
  const isTooLoud = (heard: Float64Array): boolean => energyAt(heard) >= toBeat / spreading;
  const heard = energies.map((value) => value / spreading);
  const { demand } = hunt.options;
  const met = demand ? demand.meet(build, speeds, isTooLoud) : { speeds, energies: heard };
  if (!met) return null;
  // A demand is met within a tolerance of its own, which a cap on the level does not know.
  if (energyAt(met.energies) >= wishes.cap) return 'louder than asked';
  const refused = wishes.refused(machine, met.speeds);
  if (refused) return refused;
  const cost = wishes.exactCost(machine, met.speeds);
  return { build, energy: energyAt(met.energies), cost, speeds: met.speeds };
}
