import type { Duty, Enclosure } from '../../enclosure/enclosure.ts';
import { OBJECTIVES, type Objective } from '../objective.ts';
import type { RankedBy } from '../ranking.ts';

/** What a ranking goes by: a level, or what a build costs under a cap on its level. */
export const GOALS = ['mean', 'loudest', 'price', 'depth', 'power'] as const;
export type Goal = (typeof GOALS)[number];

/** Whether builds are ranked by their level. */
export function isByLevel(goal: Goal): goal is 'mean' | 'loudest' {
  return goal === 'mean' || goal === 'loudest';
}

/** The level in one duty; all others only have to be met. */
function inDuty(index: number): Objective {
  return {
    energyOf: (_, energies) =>
      energies.includes(Number.POSITIVE_INFINITY) ? Number.POSITIVE_INFINITY : (energies[index] as number),
    budgetOf: (_enclosure, _energies, duty, toBeat) => (duty === index ? toBeat : Number.POSITIVE_INFINITY),
    counts: (_, duty) => duty === index,
    levelOf: ({ duties }) => duties[index]?.level ?? Number.NEGATIVE_INFINITY,
  };
}

/**
 * The level that counts for a goal: by which it ranks, or on which a cap is set. Power is spared in each duty by itself,
 * so that every duty has the cap.
 *
 * @param enclosure the scenario
 * @param goal what the ranking goes by
 * @param duty name of the only duty whose level counts; all that last if absent
 * @throws RangeError if there is no duty of that name: a programming error, callers check user input before
 */
export function levelFor({ duties }: Enclosure, goal: Goal, duty: string | undefined): Objective {
  if (duty === undefined)
    return goal === 'loudest' || goal === 'power' ? OBJECTIVES.loudest : OBJECTIVES.mean;
  const index = duties.findIndex(({ id }: Duty) => id === duty);
  if (index < 0) throw new RangeError(`there is no duty "${duty}"`);
  return inDuty(index);
}

/**
 * What a search ranks by, for those who tell of it.
 *
 * @param enclosure the scenario, with what is asked
 * @param options of the search: what it goes by, and the only duty that counts
 */
export function rankedBy(
  { asks }: Enclosure,
  { by = 'mean', duty }: { readonly by?: Goal; readonly duty?: string },
): RankedBy {
  return {
    goal: by,
    ...(duty === undefined ? {} : { duty }),
    ...(asks?.level === undefined ? {} : { cap: asks.level }),
  };
}
