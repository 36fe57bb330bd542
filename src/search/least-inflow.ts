import type { KelvinDifference, KilogramsPerSecond } from '../quantities/dimensions.ts';

const MOST_FLOW: KilogramsPerSecond = 0.5;
const LEAST_FLOW: KilogramsPerSecond = 1e-6;
const FIRST_GUESS: KilogramsPerSecond = 0.005;
const TRIALS = 60;
/** Trials that follow the local slope before plain halving takes over. */
const LOCAL_TRIALS = 8;
/** Relative accuracy of the least flows; they are rounded down. */
const TOLERANCE = 2e-6;
/** Excess falls about as the flow to the power 0.7, and there are about 20 K of it in hand. */
const SLOPE = 0.7;
const SPAN: KelvinDifference = 20;

/** Factor on the flow that should bring the excess to nothing, a trifle beyond. */
function localFactor(over: KelvinDifference): number {
  const step = Number.isFinite(over) ? over / (SLOPE * (Math.abs(over) + SPAN)) : 1;
  return Math.exp(Math.max(-1, Math.min(1, step))) * (over > 0 ? 1 + TOLERANCE : 1 - TOLERANCE);
}

/**
 * Prepares the search for the least inflow that keeps all limits. Each starts from the result of the first: a start near
 * by, and the same whatever was asked in between.
 *
 * @param excess largest excess over the limits [K] at an inflow [kg/s], falling
 * @returns a function that gives the inflow, infinite if none does
 */
export function inflowFinder(
  excess: (inflow: KilogramsPerSecond) => KelvinDifference,
): () => KilogramsPerSecond {
  let guess: number | null = null;
  return () => {
    if (excess(LEAST_FLOW) <= 0) return LEAST_FLOW;
    let low = LEAST_FLOW;
    let high = MOST_FLOW;
    let flow = guess ?? FIRST_GUESS;
    for (let count = 0; count < TRIALS && high / low > 1 + TOLERANCE; count++) {
      const over = excess(flow);
      if (over > 0) low = flow;
      else high = flow;
      const next = flow * localFactor(over);
      flow = next > low && next < high && count < LOCAL_TRIALS ? next : Math.sqrt(low * high);
    }
    if (low >= MOST_FLOW * 0.999) return Number.POSITIVE_INFINITY;
    guess ??= low;
    return low;
  };
}
