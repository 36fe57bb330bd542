import { describe, expect, it } from 'vitest';
import {
  between,
  chance,
  logBetween,
  type Random,
  seededRandom,
  wholeBetween,
} from '../airway/seeded-random.ts';
import { type Case, CP, mix, ROOM, rises } from './mixed-air.ts';

const SEED = 606;

/** Flows through one to five chambers made of closed rounds, so that no chamber gains or loses air. */
function randomCase(random: Random): Case {
  const chambers = wholeBetween(random, 2, 6);
  const legs: [number, number, number, number, number][] = [];
  const hop = (start: number, end: number, flow: number): void => {
    const watts = chance(random, 0.3) ? between(random, 0, 60) : 0;
    const share = start === 0 && chance(random, 0.3) ? between(random, 0, 0.4) : 0;
    const turned = share === 0 && chance(random, 0.4);
    legs.push(turned ? [end, start, -flow, watts, share] : [start, end, flow, watts, share]);
  };
  for (let round = wholeBetween(random, 1, 4) + chambers; round > 0; round--) {
    const flow = logBetween(random, 1e-4, 0.03);
    const first = round > chambers ? wholeBetween(random, 1, chambers - 1) : 0;
    let at = first;
    for (let hops = wholeBetween(random, 1, 3); hops > 0; hops--) {
      const next = round <= chambers - 1 && at === 0 ? round : wholeBetween(random, 1, chambers - 1);
      hop(at, next, flow);
      at = next;
    }
    hop(at, first, flow);
  }
  const heat = Array.from({ length: chambers }, (_, chamber) =>
    chamber > 0 && chance(random, 0.6) ? between(random, 0, 150) : 0,
  );
  return { chambers, legs, heat, room: between(random, 263, 323) };
}

interface Stream {
  readonly source: number;
  readonly target: number;
  readonly flow: number;
  readonly watts: number;
  readonly share: number;
}

/** Legs in the sense in which the air runs. */
function streams({ legs }: Case): readonly Stream[] {
  return legs.map(([from, to, flow, watts = 0, share = 0]) =>
    flow >= 0
      ? { source: from, target: to, flow, watts, share }
      : { source: to, target: from, flow: -flow, watts, share: 0 },
  );
}

/** Temperature of a stream where it enters its leg and where it leaves it [K]. */
function ends(
  stream: Stream,
  temperatures: Float64Array,
): { readonly entering: number; readonly leaving: number } {
  const own = temperatures[stream.source] ?? Number.NaN;
  const exhaust = temperatures[temperatures.length - 1] ?? Number.NaN;
  const entering = own + stream.share * (exhaust - own);
  return { entering, leaving: entering + stream.watts / (stream.flow * CP) };
}

describe('any airway', () => {
  const random = seededRandom(SEED);
  const cases = Array.from({ length: 1000 }, () => randomCase(random));

  it('carries out what it is given', () => {
    // Conservation of energy, over the box and over each chamber.
    for (const plan of cases) {
      const temperatures = mix(plan);
      const total = streams(plan).reduce((sum, { watts }) => sum + watts, 0) + sumOf(plan.heat);
      let carried = 0;
      const surplus = Array.from(plan.heat ?? [], (watts) => watts);
      for (const stream of streams(plan)) {
        const { entering, leaving } = ends(stream, temperatures);
        if (stream.target === 0) carried += stream.flow * CP * leaving;
        else surplus[stream.target] = (surplus[stream.target] ?? 0) + stream.flow * CP * leaving;
        if (stream.source === 0) carried -= stream.flow * CP * entering;
        else surplus[stream.source] = (surplus[stream.source] ?? 0) - stream.flow * CP * entering;
      }
      expect(Math.abs(carried - total)).toBeLessThan(1e-6 * Math.max(total, 1));
      expect(Math.max(...surplus.map(Math.abs))).toBeLessThan(1e-6 * Math.max(total, 1));
    }
  });

  it('makes no entropy vanish where streams only mix', () => {
    // Second law: Σ ṁ·cp·ln(T/T_in) ≥ 0 in a chamber without heat of its own.
    let chambers = 0;
    for (const plan of cases) {
      const temperatures = mix(plan);
      const made = new Float64Array(plan.chambers);
      for (const stream of streams(plan)) {
        const { leaving } = ends(stream, temperatures);
        const gain = stream.flow * CP * Math.log((temperatures[stream.target] ?? Number.NaN) / leaving);
        made[stream.target] = (made[stream.target] ?? 0) + gain;
      }
      for (let chamber = 1; chamber < plan.chambers; chamber++) {
        if (plan.heat?.[chamber] !== 0) continue;
        chambers += 1;
        // The nominal leak of 1e-10 kg/s to the room takes a little with it.
        const temperature = temperatures[chamber] ?? Number.NaN;
        const leaked = (1e-10 * CP * (temperature - (plan.room ?? ROOM))) / temperature;
        expect((made[chamber] ?? Number.NaN) + leaked).toBeGreaterThan(-1e-11);
      }
    }
    expect(chambers).toBeGreaterThan(500);
  });

  it('is nowhere colder than the room, and as warm as the room without heat', () => {
    // Second law.
    for (const plan of cases) {
      for (const rise of rises(plan)) expect(rise).toBeGreaterThan(-1e-7);
      const cold = {
        ...plan,
        heat: [],
        legs: plan.legs.map(([from, to, flow]) => [from, to, flow] as const),
      };
      for (const rise of rises(cold)) expect(Math.abs(rise)).toBeLessThan(1e-7);
    }
  });

  it('follows the room kelvin by kelvin and the heat in proportion', () => {
    // Linearity of the heat balance.
    for (const plan of cases.slice(0, 200)) {
      const base = rises(plan);
      const warmer = rises({ ...plan, room: (plan.room ?? ROOM) + 10 });
      const twice = rises({
        ...plan,
        heat: plan.heat?.map((watts) => 2 * watts) ?? [],
        legs: plan.legs.map(([from, to, flow, watts = 0, share = 0]) => [from, to, flow, 2 * watts, share]),
      });
      base.forEach((rise, index) => {
        expect(Math.abs((warmer[index] ?? Number.NaN) - rise)).toBeLessThan(1e-6 * (1 + rise));
        expect(Math.abs((twice[index] ?? Number.NaN) - 2 * rise)).toBeLessThan(1e-6 * (1 + rise));
      });
    }
  });
});

function sumOf(values: readonly number[] = []): number {
  return values.reduce((sum, value) => sum + value, 0);
}
