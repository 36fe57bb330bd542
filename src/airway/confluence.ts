import type { Topology } from './topology.ts';

/**
 * How pushing harder in one leg acts on the flow of another, whatever the resistances are:
 * `with` more or the same, `against` less or the same, `apart` not at all, `either` that depends.
 */
export type Effect = 'with' | 'against' | 'apart' | 'either';

/** Legs walked along per source before the answer is left open: a thicket may have no cycle and yet no end of paths. */
const MOST_STEPS = 100_000;

interface Walk {
  readonly topology: Topology;
  /** +1 or −1 where the leg was met along or against its direction, 2 where both. */
  readonly seen: Int8Array;
  readonly visited: boolean[];
  readonly path: { leg: number; sign: number }[];
  steps: number;
}

function markCycle(walk: Walk): void {
  for (const { leg, sign } of walk.path) {
    const before = walk.seen[leg] as number;
    walk.seen[leg] = before === 0 || before === sign ? sign : 2;
  }
}

/** Sense in which a leg would be passed when left from a chamber: 1 along it, −1 against it, 0 not at all. */
function senseFrom({ topology }: Walk, leg: number, chamber: number): number {
  const { from, to } = topology;
  if (from[leg] === to[leg]) return 0;
  if (from[leg] === chamber) return 1;
  return to[leg] === chamber ? -1 : 0;
}

function enter(walk: Walk, next: number, goal: number, source: number): void {
  if (next === goal) {
    markCycle(walk);
    return;
  }
  if (walk.visited[next]) return;
  walk.visited[next] = true;
  extend(walk, next, goal, source);
  walk.visited[next] = false;
}

function extend(walk: Walk, chamber: number, goal: number, source: number): void {
  const { from, to } = walk.topology;
  for (let leg = 0; leg < from.length && walk.steps < MOST_STEPS; leg++) {
    const sign = leg === source ? 0 : senseFrom(walk, leg, chamber);
    if (sign === 0) continue;
    walk.steps += 1;
    walk.path.push({ leg, sign });
    enter(walk, (sign === 1 ? to[leg] : from[leg]) as number, goal, source);
    walk.path.pop();
  }
}

function effectOf(mark: number): Effect {
  if (mark === 0) return 'apart';
  if (mark === 1) return 'with';
  return mark === -1 ? 'against' : 'either';
}

/**
 * Effect of a pressure source in one leg on the flow of every leg of an airway, from the drawing alone.
 *
 * Two legs whose common cycles all pass them in the same sense are confluent: in a network of strictly
 * increasing laws the transfer conductance between them has the same sign at every state.
 * Source: Duffin, "Topology of series-parallel networks", J. Math. Anal. Appl. 10 (1965) (from memory), with the
 * cycle expansion of transfer conductances.
 *
 * @param topology chambers and legs
 * @param source index of the leg that pushes harder, along its direction [-]
 * @returns the effect on each leg's flow along its own direction; `either` for all if there are too many paths
 */
export function effectsOf(topology: Topology, source: number): readonly Effect[] {
  const legs = topology.from.length;
  const start = topology.to[source] as number;
  const goal = topology.from[source] as number;
  const walk: Walk = {
    topology,
    seen: new Int8Array(legs),
    visited: new Array<boolean>(topology.chambers).fill(false),
    path: [],
    steps: 0,
  };
  if (start !== goal) {
    walk.visited[start] = true;
    extend(walk, start, goal, source);
  }
  if (walk.steps >= MOST_STEPS) return new Array<Effect>(legs).fill('either');
  walk.seen[source] = 1;
  return Array.from(walk.seen, effectOf);
}
