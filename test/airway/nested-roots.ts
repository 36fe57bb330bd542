import type { LegLaw } from '../../src/airway/leg-law.ts';
import { bracketedRoot } from '../../src/numerics/roots.ts';
import type { RandomAirway } from './random-airway.ts';

/** Root of an increasing function, in a bracket that doubles around zero until it holds one. */
function rootOf(rising: (x: number) => number, width: number, tolerance: number): number {
  let low = -width;
  let high = width;
  while (rising(low) > 0) low *= 2;
  while (rising(high) < 0) high *= 2;
  const found = bracketedRoot(rising, low, high, { tolerance, maxCalls: 200 });
  if (!found.ok) throw new Error(found.reason);
  return found.root;
}

/** Mass flow at which a leg loses a pressure [kg/s]. */
function flowAt(law: LegLaw, drop: number): number {
  const misfit = (flow: number): number => {
    law.evaluate(flow);
    return law.loss - drop;
  };
  return rootOf(misfit, 1e-3, 1e-20);
}

/** What leaves a chamber at given pressures of all [kg/s]. */
function outflow({ topology, legs }: RandomAirway, pressures: readonly number[], chamber: number): number {
  let sum = 0;
  legs.forEach((leg, index) => {
    const from = topology.from[index] ?? 0;
    const to = topology.to[index] ?? 0;
    if (from === to || (from !== chamber && to !== chamber)) return;
    const flow = flowAt(leg, (pressures[from] ?? 0) - (pressures[to] ?? 0));
    sum += from === chamber ? flow : -flow;
  });
  return sum;
}

/**
 * Balances an airway without any linear algebra: the pressure of the last chamber is found for every trial of the
 * one before it, and so on to the first; each leg is inverted by its loss alone, its slope is not looked at. What
 * leaves a chamber rises with its own pressure, whether the others stay or follow.
 *
 * @returns pressures of all chambers [Pa] and flows of all legs [kg/s]
 */
export function nestedRoots(airway: RandomAirway): {
  readonly pressures: readonly number[];
  readonly flows: readonly number[];
} {
  const pressures = new Array<number>(airway.topology.chambers).fill(0);
  const settle = (chamber: number): void => {
    if (chamber >= pressures.length) return;
    const leaving = (pressure: number): number => {
      pressures[chamber] = pressure;
      settle(chamber + 1);
      return outflow(airway, pressures, chamber);
    };
    leaving(rootOf(leaving, 10, 1e-11));
  };
  settle(1);
  const flows = airway.legs.map((leg, index) => {
    const from = pressures[airway.topology.from[index] ?? 0] ?? 0;
    return flowAt(leg, from - (pressures[airway.topology.to[index] ?? 0] ?? 0));
  });
  return { pressures, flows };
}
