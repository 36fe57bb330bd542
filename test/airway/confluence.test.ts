import { inverse, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { createBalancer, newNetworkState } from '../../src/airway/balance.ts';
import { type Effect, effectsOf } from '../../src/airway/confluence.ts';
import type { Topology } from '../../src/airway/topology.ts';
import { inSeries, lawOf, parabolicFan, resistance } from './leg-laws.ts';
import { chance, logBetween, type Random, seededRandom, wholeBetween } from './seeded-random.ts';

const SEED = 1965;
const DRAWS = 200;

/** A connected plan of one to five chambers beside outside; some legs run side by side, some go round. */
function randomPlan(random: Random): Topology {
  const inner = wholeBetween(random, 1, 5);
  const from: number[] = [];
  const to: number[] = [];
  const join = (one: number, other: number): void => {
    const turned = chance(random, 0.5);
    from.push(turned ? other : one);
    to.push(turned ? one : other);
  };
  for (let chamber = 1; chamber <= inner; chamber++) join(chamber, wholeBetween(random, 0, chamber - 1));
  for (let extra = wholeBetween(random, 1, 7); extra > 0; extra--) {
    join(wholeBetween(random, 0, inner), wholeBetween(random, 0, inner));
  }
  return { chambers: inner + 1, from, to };
}

/**
 * Flow in every leg per pressure added along every leg, for plain conductances: row is the source.
 *
 * Source: nodal analysis, Kirchhoff.
 */
function transfers({ chambers, from, to }: Topology, conductances: readonly number[]): readonly number[][] {
  const nodal = Matrix.zeros(chambers - 1, chambers - 1);
  const add = (row: number, column: number, value: number): void => {
    if (row > 0 && column > 0) nodal.set(row - 1, column - 1, nodal.get(row - 1, column - 1) + value);
  };
  conductances.forEach((conductance, leg) => {
    const [start, end] = [from[leg] ?? 0, to[leg] ?? 0];
    if (start === end) return;
    add(start, start, conductance);
    add(end, end, conductance);
    add(start, end, -conductance);
    add(end, start, -conductance);
  });
  const impedance = inverse(nodal);
  const at = (row: number, column: number) =>
    row > 0 && column > 0 ? impedance.get(row - 1, column - 1) : 0;
  return conductances.map((driven, source) => {
    const [start, end] = [from[source] ?? 0, to[source] ?? 0];
    const pressure = (chamber: number) => driven * (at(chamber, end) - at(chamber, start));
    return conductances.map((conductance, leg) => {
      const drop = pressure(from[leg] ?? 0) - pressure(to[leg] ?? 0);
      return conductance * (drop + (leg === source ? 1 : 0));
    });
  });
}

interface Seen {
  readonly effect: Effect;
  /** Whether it is the effect of a leg on itself, which in a dead end is nothing. */
  readonly own: boolean;
  /** Least and greatest flow, in units of what a source of 1 Pa drives through its own leg. */
  least: number;
  most: number;
}

/** What the drawing says of every pair of legs, and what random conductances show. */
function compare(random: Random, plan: Topology): readonly Seen[] {
  const pairs: Seen[][] = plan.from.map((_, source) =>
    effectsOf(plan, source).map((effect, leg) => ({ effect, own: leg === source, least: 0, most: 0 })),
  );
  for (let draw = 0; draw < DRAWS; draw++) {
    const conductances = plan.from.map(() => logBetween(random, 1e-2, 1e2));
    transfers(plan, conductances).forEach((row, source) => {
      row.forEach((flow, leg) => {
        const pair = pairs[source]?.[leg];
        if (!pair) return;
        const share = flow / (conductances[source] ?? Number.NaN);
        pair.least = Math.min(pair.least, share);
        pair.most = Math.max(pair.most, share);
      });
    });
  }
  return pairs.flat();
}

describe('the effect of one leg on another', () => {
  it('shows in the transfer conductance, whatever the resistances', () => {
    // Computed with ml-matrix 6.15: nodal analysis of random conductances over four decades.
    const random = seededRandom(SEED);
    const counts: Record<Effect, number> = { with: 0, against: 0, apart: 0, either: 0 };
    let witnessed = 0;
    for (let trial = 0; trial < 150; trial++) {
      for (const { effect, own, least, most } of compare(random, randomPlan(random))) {
        counts[effect] += 1;
        if (effect === 'with' || effect === 'apart') expect(least).toBeGreaterThan(-1e-10);
        if (effect === 'against' || effect === 'apart') expect(most).toBeLessThan(1e-10);
        if (effect === 'with' && !own) expect(most).toBeGreaterThan(1e-6);
        if (effect === 'against') expect(least).toBeLessThan(-1e-6);
        if (effect === 'either' && least < -1e-10 && most > 1e-10) witnessed += 1;
      }
    }
    for (const count of Object.values(counts)) expect(count).toBeGreaterThan(100);
    // `either` promises that some resistances make each sign; random ones find both nearly always.
    expect(witnessed / counts.either).toBeGreaterThan(0.9);
  });

  it('shows in the flows of fans and square laws', () => {
    // Derived: at every state the flows change as in the network of the slopes, so a whole step has the same sign.
    const random = seededRandom(SEED + 1);
    for (let trial = 0; trial < 300; trial++) {
      const plan = randomPlan(random);
      const laws = plan.from.map(() => {
        const loss = resistance(logBetween(random, 1, 1e3), logBetween(random, 1e4, 1e6));
        return chance(random, 0.4) ? inSeries(parabolicFan(logBetween(random, 5, 80), 0.03), loss) : loss;
      });
      const balance = createBalancer(plan);
      const before = newNetworkState(plan);
      expect(balance(laws, before).status).toBe('balanced');
      const source = wholeBetween(random, 0, laws.length - 1);
      const push = lawOf(
        () => -10,
        () => 0,
      );
      const pushed = laws.map((law, leg) => (leg === source ? inSeries(push, law) : law));
      const after = newNetworkState(plan);
      expect(balance(pushed, after).status).toBe('balanced');
      effectsOf(plan, source).forEach((effect, leg) => {
        const change = (after.flows[leg] ?? Number.NaN) - (before.flows[leg] ?? Number.NaN);
        if (effect === 'with' || effect === 'apart') expect(change).toBeGreaterThan(-1e-9);
        if (effect === 'against' || effect === 'apart') expect(change).toBeLessThan(1e-9);
      });
    }
  });
});

describe('the effect of a fan in well-known plans', () => {
  // Derived by hand from the cycles of each plan.

  it('in one path: with everything', () => {
    const plan = { chambers: 3, from: [0, 1, 2], to: [1, 2, 0] };
    expect(effectsOf(plan, 0)).toEqual(['with', 'with', 'with']);
  });

  it('in one path drawn against the stream: against that leg', () => {
    const plan = { chambers: 2, from: [0, 0], to: [1, 1] };
    expect(effectsOf(plan, 0)).toEqual(['with', 'against']);
  });

  it('beside another fan: against it, with the way out', () => {
    const plan = { chambers: 2, from: [0, 0, 1], to: [1, 1, 0] };
    expect(effectsOf(plan, 0)).toEqual(['with', 'against', 'with']);
  });

  it('in a leg of a bridge: undecided for the leg across', () => {
    const plan = { chambers: 4, from: [0, 1, 1, 2, 3, 2], to: [1, 2, 3, 3, 0, 0] };
    const across = 3;
    expect(effectsOf(plan, 0)[across]).toBe('either');
  });

  it('in another loop that meets only in the room: apart', () => {
    const plan = { chambers: 3, from: [0, 1, 0, 2], to: [1, 0, 2, 0] };
    expect(effectsOf(plan, 0)).toEqual(['with', 'with', 'apart', 'apart']);
  });

  it('in a dead end or in a leg that goes round in its chamber: apart from all but itself', () => {
    const plan = { chambers: 3, from: [0, 1, 1, 1], to: [1, 0, 2, 1] };
    expect(effectsOf(plan, 2)).toEqual(['apart', 'apart', 'with', 'apart']);
    expect(effectsOf(plan, 3)).toEqual(['apart', 'apart', 'apart', 'with']);
    expect(effectsOf(plan, 0)).toEqual(['with', 'with', 'apart', 'apart']);
  });
});

describe('a plan with too many paths', () => {
  /** Every chamber joined to every other, from the first one given on. */
  function thicket(first: number, last: number): readonly [number, number][] {
    const pairs: [number, number][] = [];
    for (let one = first; one <= last; one++) {
      for (let other = one + 1; other <= last; other++) pairs.push([one, other]);
    }
    return pairs;
  }

  function planOf(pairs: readonly (readonly [number, number])[], chambers: number): Topology {
    return { chambers, from: pairs.map(([start]) => start), to: pairs.map(([, end]) => end) };
  }

  it('is left open, soon', () => {
    // Common sense: a file from a stranger must not hang the program. 15 chambers all joined have 10^11 cycles.
    const plan = planOf(thicket(0, 15), 16);
    const began = performance.now();
    expect(new Set(effectsOf(plan, 0))).toEqual(new Set(['either']));
    expect(performance.now() - began).toBeLessThan(1000);
  });

  it('is left open, soon, also if the thicket leads nowhere', () => {
    // As above; the thicket hangs on one leg, so none of its paths closes a cycle.
    const plan = planOf([[0, 1], [1, 0], [1, 2], ...thicket(2, 17)], 18);
    const began = performance.now();
    const effects = effectsOf(plan, 0);
    expect(effects).toHaveLength(plan.from.length);
    expect(performance.now() - began).toBeLessThan(1000);
  });
});
