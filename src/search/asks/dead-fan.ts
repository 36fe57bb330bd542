import type { Build, Duty, Enclosure } from '../../enclosure/enclosure.ts';
import { withLostFans } from '../../enclosure/lost-fans.ts';
import { assemble, plantOf } from '../../enclosure/machine.ts';
import type { KelvinDifference } from '../../quantities/dimensions.ts';
import { createTrial, fullSpeed } from '../trial.ts';

/** Which dead fan a build stands least well. */
export interface DeadFan {
  /** Place of the fan. */
  readonly place: number;
  readonly duty: Duty;
  /** Kelvins over the limit, asked margin included [K]; ≤ 0 if it stands it, infinite if there is no solution. */
  readonly over: KelvinDifference;
}

/**
 * The dead fan that a build stands least well: each of its fans in turn stands still, all others run at full speed, in
 * every duty. What is asked of working points does not count then.
 *
 * @param scenario the enclosure
 * @param build one option index per place
 * @returns null if it has no fans
 */
export function worstDeadFan(scenario: Enclosure, build: Build): DeadFan | null {
  const { asks: _, ...enclosure } = scenario;
  let worst: DeadFan | null = null;
  for (const [index, place] of enclosure.places.entries()) {
    if (place.kind !== 'bank' || !place.options[build[index] as number]) continue;
    const lost = withLostFans(enclosure, build, [{ place: index, dead: 1, missing: 0 }]);
    const machine = assemble(plantOf(lost), build);
    for (const duty of enclosure.duties) {
      const trial = createTrial(machine, duty);
      const over = trial.evaluate(fullSpeed(trial)).worst;
      if (!worst || over > worst.over) worst = { place: index, duty, over };
    }
  }
  return worst;
}
