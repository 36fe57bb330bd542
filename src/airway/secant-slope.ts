import type { KilogramsPerSecond, Pascals } from '../quantities/dimensions.ts';
import type { LegLaw } from './leg-law.ts';

/** Share of the misfit at which the search ends: the slope need not be exact. */
const CLOSE = 0.05;
const MOST_TRIALS = 12;
/** How far beyond a trial the next one lies that looks for the other side, in widths of the last step. */
const STRETCH = 2;

/**
 * Slope of the straight line from a leg's loss at its flow to the flow at which it would lose a given pressure
 * [Pa·s/kg]. A step with it lands there at once, where the tangent takes many: a square law near rest halves its
 * flow with each Newton step.
 *
 * Source: derived; the other flow is looked for by stretching, then by false position and halving in turn.
 *
 * @param law strictly increasing; evaluated anew
 * @param flow mass flow of the leg [kg/s]
 * @param drop pressure difference of its ends [Pa], other than the loss at that flow
 * @param first slope that gives the first trial [Pa·s/kg], > 0
 * @returns > 0; not a number if the law gives none
 */
export function secantSlope(law: LegLaw, flow: KilogramsPerSecond, drop: Pascals, first: number): number {
  law.evaluate(flow);
  const start = law.loss - drop;
  let near = flow;
  let nearMisfit = start;
  let far = Number.NaN;
  let farMisfit = Number.NaN;
  let trial = flow - start / first;
  let misfit = Number.NaN;
  for (let count = 1; ; count++) {
    law.evaluate(trial);
    misfit = law.loss - drop;
    if (Math.abs(misfit) <= CLOSE * Math.abs(start) || count === MOST_TRIALS) break;
    const before = near;
    if (misfit > 0 === start > 0) {
      near = trial;
      nearMisfit = misfit;
    } else {
      far = trial;
      farMisfit = misfit;
    }
    if (Number.isNaN(far)) trial = near + STRETCH * (near - before);
    else if (count % 2 === 0) trial = 0.5 * (near + far);
    else trial = far - (farMisfit * (far - near)) / (farMisfit - nearMisfit);
  }
  return (misfit - start) / (trial - flow);
}
