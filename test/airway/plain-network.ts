import type { Topology } from '../../src/airway/topology.ts';
import type { PlainLeg, WaterSolution } from './epanet.ts';
import { chance, logBetween, type Random, wholeBetween } from './seeded-random.ts';

/** A network of fans and resistances that a program made for water can hold too. */
export interface PlainNetwork {
  readonly topology: Topology;
  readonly legs: readonly PlainLeg[];
}

function randomLeg(random: Random): PlainLeg {
  if (chance(random, 0.3)) {
    const shutOff = logBetween(random, 10, 80);
    return { kind: 'fan', shutOff, freeDelivery: logBetween(random, 0.008, 0.04) };
  }
  const a = chance(random, 0.5) ? 0 : logBetween(random, 50, 1500);
  return { kind: 'resistance', a, b: logBetween(random, 2e4, 1e6) };
}

/**
 * Chambers with a fan into the first, a passive way from each to the room or to another, and legs of all kinds
 * between them.
 *
 * @param random stream of numbers
 * @param inner chambers beside the room, ≥ 1
 * @param extra legs beyond one a chamber and the fan
 */
export function plainNetwork(random: Random, inner: number, extra: number): PlainNetwork {
  const from = [0];
  const to = [1];
  const legs: PlainLeg[] = [{ kind: 'fan', shutOff: 40, freeDelivery: 0.03 }];
  const join = (start: number, end: number, leg: PlainLeg): void => {
    from.push(start);
    to.push(end);
    legs.push(leg);
  };
  for (let chamber = 1; chamber <= inner; chamber++) {
    const b = logBetween(random, 2e4, 1e6);
    join(chamber, wholeBetween(random, 0, chamber - 1), { kind: 'resistance', a: 0, b });
  }
  for (let more = extra; more > 0; more--) {
    const start = wholeBetween(random, 0, inner);
    const end = (start + wholeBetween(random, 1, inner)) % (inner + 1);
    join(start, end, randomLeg(random));
  }
  return { topology: { chambers: inner + 1, from, to }, legs };
}

/** EPANET's pumps let nothing back, so only networks where all fans blow forwards can be compared. */
export function blowsForwards({ legs }: PlainNetwork, { flows }: WaterSolution): boolean {
  return legs.every((leg, index) => leg.kind !== 'fan' || (flows[index] ?? 0) > 1e-5);
}
