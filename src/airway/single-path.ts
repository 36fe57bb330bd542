import type { KilogramsPerSecond } from '../quantities/dimensions.ts';
import type { SeriesLeg, Stage } from './series.ts';

/** Finds the mass flow [kg/s] of a single path from any starting guess [kg/s]. */
export type SinglePath = (start: KilogramsPerSecond) => KilogramsPerSecond;

/** Relative size of the step still to come at which the search ends [-]. */
const ACCURACY = 1e-12;
/** Smallest start taken, relative to the largest flow [-]: close to rest there is nothing to be learnt from a slope. */
const LEAST_START = 1e-6;
/** Width of the bracket, relative to the flow, at which rounding takes over [-]. */
const ROUNDING = 4 * Number.EPSILON;

/** The flow at which a bank has no pressure left to give [kg/s]; 0 at other stages. */
function freeFlow(stage: Stage, density: number, ratio: number): KilogramsPerSecond {
  return stage.kind === 'bank' ? density * stage.count * ratio * stage.curve.freeDelivery : 0;
}

/** Largest of the banks' free flows [kg/s]: beyond it no bank pushes, so the whole leg brakes. */
function mostFlow({ stages, densities, ratios }: SeriesLeg): KilogramsPerSecond {
  let most = 0;
  for (let index = 0; index < stages.length; index++) {
    const free = freeFlow(stages[index] as Stage, densities[index] as number, ratios[index] as number);
    if (free > most) most = free;
  }
  return most;
}

/** Whether a value lies between two others; false if it is not a number. */
function within(value: number, low: number, high: number): boolean {
  return value >= low && value <= high;
}

/** The flow that a collapsed bracket leaves [kg/s], unless the loss there is not a number. */
function closedIn(leg: SeriesLeg, flow: KilogramsPerSecond): KilogramsPerSecond {
  leg.evaluate(flow);
  if (Number.isNaN(leg.loss)) throw new RangeError(`the loss at ${flow} kg/s is not a number`);
  return flow;
}

/**
 * Prepares the operating point of an airway that is one leg from outside to outside: the mass flow at which its
 * loss is zero. Takes the state the leg had at its last `refresh`; allocates nothing.
 *
 * The loss rises strictly with the flow, is not above zero at rest (banks blow along the leg) and not below zero at
 * the largest free delivery of its banks. Newton's steps are taken inside this bracket; where one leaves it, or is
 * not half as long as the one before, the bracket is halved instead, so that every start arrives.
 * Source: safeguarded Newton as `rtsafe` in Press et al., Numerical Recipes (from memory); the bracket is derived.
 *
 * @param leg stages in series, every density > 0, every speed ratio ≥ 0
 * @returns a function from a starting guess [kg/s], any number, to the mass flow [kg/s], ≥ 0, which is 0 if every
 * fan is stopped; it throws a RangeError if the loss is not a number, which needs unusable air or speeds
 */
export function createSinglePath(leg: SeriesLeg): SinglePath {
  return (start) => {
    let low = 0;
    let high = mostFlow(leg);
    let flow = within(start, LEAST_START * high, high) ? start : 0.5 * high;
    let before = high;
    while (high - low > ROUNDING * high) {
      leg.evaluate(flow);
      const { loss } = leg;
      if (loss > 0) high = flow;
      else low = flow;
      const newton = flow - loss / leg.slope;
      const step = Math.abs(newton - flow);
      if (within(newton, low, high) && step < 0.5 * before) {
        // If the steps go on shrinking by step / before or more, less than this is left.
        if (step * step <= ACCURACY * newton * before) return newton;
        before = step;
        flow = newton;
      } else {
        before = 0.5 * (high - low);
        flow = low + before;
      }
    }
    return closedIn(leg, flow);
  };
}
