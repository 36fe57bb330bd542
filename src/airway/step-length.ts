import type { LegLaw } from './leg-law.ts';
import type { NewtonSystem } from './newton-system.ts';

const DAMPING_TRIALS = 12;
/** Share of the starting gradient that may be left after a damped step. */
const DAMPING = 0.5;

/**
 * Gradient of the content along the step, `share` of the way. The steps are balanced, so the pressure differences
 * add nothing; subtracting them keeps rounding of the large losses out of the sum. Losses and slopes there are left
 * in the system: they serve the next step if this one is taken.
 */
function gradient(system: NewtonSystem, laws: readonly LegLaw[], flows: Float64Array, share: number): number {
  const { steps, drops, losses, slopes } = system;
  let sum = 0;
  for (let leg = 0; leg < steps.length; leg++) {
    const delta = steps[leg] as number;
    const law = laws[leg] as LegLaw;
    law.evaluate((flows[leg] as number) + share * delta);
    losses[leg] = law.loss;
    slopes[leg] = law.slope;
    sum += (law.loss - (drops[leg] as number)) * delta;
  }
  return sum;
}

/**
 * Length of the step: 1 unless the gradient of the content has turned strongly positive there.
 *
 * @param system with its steps taken; losses and slopes are overwritten
 * @param laws of the legs, strictly increasing
 * @param flows mass flow of each leg before the step [kg/s]
 * @returns share of the step to go [-], > 0 and ≤ 1
 */
export function stepLength(system: NewtonSystem, laws: readonly LegLaw[], flows: Float64Array): number {
  let start = 0;
  for (let leg = 0; leg < system.steps.length; leg++) {
    start += (system.slopes[leg] as number) * (system.steps[leg] as number) ** 2;
  }
  const allowed = DAMPING * start;
  let low = 0;
  let high = 1;
  let share = 1;
  for (let trial = 0; trial < DAMPING_TRIALS; trial++) {
    const slope = gradient(system, laws, flows, share);
    if (slope <= allowed && (share === 1 || slope >= -allowed)) {
      system.known = true;
      return share;
    }
    if (slope > 0) high = share;
    else low = share;
    share = 0.5 * (low + high);
  }
  return share;
}
