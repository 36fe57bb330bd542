import type { Point, Trial } from '../trial.ts';
import { type SpeedNode, speedNode } from './speed-node.ts';
import { type HeatedLegs, heatedLegs } from './turning-legs.ts';

/** Points of a trial at the nodes of a lattice, even in log speed between floors and ceilings; each is tried once. */
export interface SpeedLattice {
  /** Cells along each axis [-], a power of two. */
  readonly side: number;
  /** Range of each log speed [-]. */
  readonly spans: Float64Array;
  /** What is at a node, counted from the floors. */
  readonly at: (node: readonly number[]) => SpeedNode;
  /** Speeds at a place between nodes. */
  readonly speedsAt: (place: readonly number[]) => Float64Array;
  /** Legs in which there is heat. */
  readonly heated: HeatedLegs;
  /** Nodes tried so far. */
  readonly tried: () => number;
}

/**
 * Prepares a lattice of speeds.
 *
 * @param trial build and duty
 * @param side cells along each axis [-]
 * @param look is told of every point met
 */
export function speedLattice(trial: Trial, side: number, look: (point: Point) => Point): SpeedLattice {
  const spans = trial.floors.map((floor, bank) => Math.log((trial.ceilings[bank] as number) / floor));
  const nodes = new Map<number, SpeedNode>();
  const speedsAt = (place: readonly number[]): Float64Array =>
    trial.floors.map((floor, bank) =>
      // The ends are met exactly: limits may just hold there.
      place[bank] === side
        ? (trial.ceilings[bank] as number)
        : floor * Math.exp(((place[bank] as number) / side) * (spans[bank] as number)),
    );
  return {
    side,
    spans,
    heated: heatedLegs(trial),
    speedsAt,
    at: (node) => {
      const key = node.reduce((sum, step) => sum * (side + 1) + step, 0);
      const known = nodes.get(key);
      if (known) return known;
      const found = speedNode(trial, look(trial.evaluate(speedsAt(node))));
      nodes.set(key, found);
      return found;
    },
    tried: () => nodes.size,
  };
}
