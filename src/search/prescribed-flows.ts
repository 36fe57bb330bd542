import type { BalanceReport, Balancer, NetworkState } from '../airway/balance.ts';
import type { LegLaw } from '../airway/leg-law.ts';
import type { Enclosure } from '../enclosure/enclosure.ts';
import type { KilogramsPerSecond, Pascals } from '../quantities/dimensions.ts';
import { isPassive, type OneChamberPlan } from './one-chamber-plan.ts';

const BALANCED: BalanceReport = { status: 'balanced', steps: 1 };
const ROOT_STEPS = 60;

/** Flow of a passive leg at a given pressure drop, by Newton with a bracket: the law is strictly increasing. */
function passiveFlow(law: LegLaw, drop: Pascals, start: number): number {
  let low = Number.NEGATIVE_INFINITY;
  let high = Number.POSITIVE_INFINITY;
  let flow = start;
  for (let count = 0; count < ROOT_STEPS; count++) {
    law.evaluate(flow);
    const error = law.loss - drop;
    if (error > 0) high = flow;
    else low = flow;
    const next = flow - error / law.slope;
    if (Math.abs(next - flow) <= 1e-12 + 1e-10 * Math.abs(next)) return next;
    // The law is convex on either side of zero, so that a step out of the bracket has both ends to halve.
    flow = next > low && next < high ? next : 0.5 * (low + high);
  }
  return flow;
}

/** Flows set from outside instead of balanced: the chamber's pressure and the inflow are given. */
export interface Prescription {
  pressure: Pascals;
  inflow: KilogramsPerSecond;
  /** Sum of what the passive legs bring in at this pressure [kg/s]; a result. */
  passiveInflow: KilogramsPerSecond;
}

/**
 * A balancer that sets the flows of an airway with one chamber instead of balancing them.
 *
 * @param plan which legs hold fans
 * @param enclosure the scenario
 * @param wanted pressure of the chamber and inflow by fans, read at each call; the passive inflow is a result
 */
export function prescribedFlows(plan: OneChamberPlan, enclosure: Enclosure, wanted: Prescription): Balancer {
  return (laws, state: NetworkState) => {
    wanted.passiveInflow = 0;
    enclosure.legs.forEach((leg, index) => {
      if (!isPassive(plan, index) || leg.from === leg.to) return;
      const inward = leg.to !== 0;
      const drop = inward ? -wanted.pressure : wanted.pressure;
      const flow = passiveFlow(laws[index] as LegLaw, drop, state.flows[index] as number);
      state.flows[index] = flow;
      wanted.passiveInflow += inward ? flow : -flow;
    });
    const total = wanted.inflow + wanted.passiveInflow;
    if (plan.inward !== null) state.flows[plan.inward] = wanted.inflow;
    if (plan.outward !== null) state.flows[plan.outward] = Math.max(0, total);
    state.pressures[1] = wanted.pressure;
    return BALANCED;
  };
}
