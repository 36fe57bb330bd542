import type { NetworkState } from '../../src/airway/balance.ts';
import { type SeriesLeg, type Stage, seriesLeg } from '../../src/airway/series.ts';
import type { Topology } from '../../src/airway/topology.ts';
import { curvePool, elementPool } from './element-pool.ts';
import { between, chance, logBetween, oneOf, type Random, wholeBetween } from './seeded-random.ts';

/** An airway ready to be balanced. */
export interface RandomAirway {
  readonly topology: Topology;
  readonly legs: readonly SeriesLeg[];
}

const MOST_CHAMBERS = 6;

function randomStage(random: Random): Stage {
  const kind = random();
  if (kind < 0.25) {
    const derating = oneOf(random, [1, 0.9, 0.8]);
    return { kind: 'bank', curve: oneOf(random, curvePool), count: wholeBetween(random, 1, 3), derating };
  }
  return kind < 0.35 ? { kind: 'empty' } : { kind: 'element', element: oneOf(random, elementPool) };
}

/** A leg of up to five stages of all kinds in random air, its banks at random speeds or still. */
export function randomLeg(random: Random): SeriesLeg {
  const stages = Array.from({ length: wholeBetween(random, 0, 5) }, () => randomStage(random));
  const leg = seriesLeg(stages);
  stages.forEach((_, stage) => {
    leg.densities[stage] = between(random, 0.8, 1.3);
    leg.viscosities[stage] = between(random, 1.6e-5, 2.3e-5);
    // A third of the banks stand still, one in six runs flat out.
    leg.ratios[stage] = oneOf(random, [0, 0, 1, between(random, 0.1, 1), between(random, 0.1, 1), 0.25]);
  });
  leg.refresh();
  return leg;
}

/**
 * An airway of 1 to 6 chambers beside outside, with legs between random chambers, some from a chamber to itself.
 * Most have a path from every chamber to outside; one in twenty is left as it falls.
 */
export function randomAirway(random: Random): RandomAirway {
  const inner = wholeBetween(random, 1, MOST_CHAMBERS);
  const from: number[] = [];
  const to: number[] = [];
  const join = (one: number, other: number): void => {
    const [start, end] = chance(random, 0.5) ? [one, other] : [other, one];
    from.push(start);
    to.push(end);
  };
  if (!chance(random, 0.05)) {
    for (let chamber = 1; chamber <= inner; chamber++) join(chamber, wholeBetween(random, 0, chamber - 1));
  }
  const extra = wholeBetween(random, 1, inner + 2);
  for (let leg = 0; leg < extra; leg++) join(wholeBetween(random, 0, inner), wholeBetween(random, 0, inner));
  const topology = { chambers: inner + 1, from, to };
  return { topology, legs: from.map(() => randomLeg(random)) };
}

/** Chambers without a path to outside. */
export function cutOff({ chambers, from, to }: Topology): readonly number[] {
  const reached = new Array<boolean>(chambers).fill(false);
  reached[0] = true;
  for (let round = 0; round < chambers; round++) {
    from.forEach((start, leg) => {
      const end = to[leg] ?? 0;
      if (reached[start] || reached[end]) {
        reached[start] = true;
        reached[end] = true;
      }
    });
  }
  return reached.flatMap((there, chamber) => (there ? [] : [chamber]));
}

/** Starting flows of any size and direction, balanced or not [kg/s]. */
export function randomStart(random: Random, topology: Topology): NetworkState {
  const flow = () => (chance(random, 0.5) ? 1 : -1) * logBetween(random, 1e-7, 0.2);
  return {
    flows: Float64Array.from(topology.from, flow),
    pressures: new Float64Array(topology.chambers),
  };
}

/** Largest imbalance of the mass flows in any chamber but outside [kg/s]. */
export function imbalance({ chambers, from, to }: Topology, flows: Float64Array): number {
  const net = new Float64Array(chambers);
  flows.forEach((flow, leg) => {
    const start = from[leg] ?? 0;
    const end = to[leg] ?? 0;
    net[start] = (net[start] ?? 0) - flow;
    net[end] = (net[end] ?? 0) + flow;
  });
  return Math.max(...Array.from(net.subarray(1), Math.abs));
}
