import { beforeAll, describe, expect, it } from 'vitest';
import {
  type BalanceReport,
  createBalancer,
  type NetworkState,
  newNetworkState,
} from '../../src/airway/balance.ts';
import { seriesLeg } from '../../src/airway/series.ts';
import { curvePool } from './element-pool.ts';
import { largeAirway, MOST_CHAMBERS, MOST_LEGS } from './large-airway.ts';
import { imbalance, type RandomAirway, randomStart } from './random-airway.ts';
import { seededRandom } from './seeded-random.ts';
import { bank, legOf, passive } from './solved-network.ts';

const SEED = 31_337;
const AIRWAYS = 1200;

interface Tried {
  readonly airway: RandomAirway;
  readonly report: BalanceReport;
  readonly state: NetworkState;
}

const tried: Tried[] = [];

beforeAll(() => {
  const random = seededRandom(SEED);
  for (let trial = 0; trial < AIRWAYS; trial++) {
    const airway = largeAirway(random);
    const balance = createBalancer(airway.topology);
    for (const state of [newNetworkState(airway.topology), randomStart(random, airway.topology)]) {
      tried.push({ airway, report: balance(airway.legs, state), state });
    }
  }
});

/** Whether some leg of a solved airway has a bank of which this is true. */
function someBank(test: (ratio: number, flow: number, lost: boolean) => boolean): boolean {
  return tried.some(({ airway, state }) =>
    airway.legs.some(({ stages, ratios }, leg) =>
      stages.some(
        (stage, index) =>
          stage.kind === 'bank' &&
          test(ratios[index] ?? 0, state.flows[leg] ?? 0, stage.conductance !== undefined),
      ),
    ),
  );
}

describe('1200 random airways of up to twelve chambers and thirty legs, each from two starts', () => {
  // Invented airways of pinholes, wide slots, all kinds of elements, legs without loss, legs with weight of air, and
  // banks that turn, stand still, are dead, missing, overdriven or blown backwards. Theory: one solution each, as
  // the laws are strictly increasing (Millar 1951, from memory).

  it('hold cases of every kind', () => {
    expect(Math.max(...tried.map(({ airway }) => airway.topology.chambers - 1))).toBe(MOST_CHAMBERS);
    expect(Math.max(...tried.map(({ airway }) => airway.legs.length))).toBe(MOST_LEGS);
    expect(someBank((ratio) => ratio === 0)).toBe(true);
    expect(someBank((ratio, flow) => ratio > 0 && flow < 0)).toBe(true);
    expect(someBank((_ratio, _flow, lost) => lost)).toBe(true);
    expect(tried.some(({ airway }) => airway.legs.some(({ stages }) => stages.length === 0))).toBe(true);
  });

  it('are all solved, 99.9 % of them in 25 steps and none in more than 22', () => {
    // The first figure is what is asked for; the second is what was found, 19 in 40 000 airways, with some room.
    expect(new Set(tried.map(({ report }) => report.status))).toEqual(new Set(['balanced']));
    const steps = tried.map(({ report }) => report.steps).sort((one, other) => one - other);
    expect(steps[Math.ceil(0.999 * steps.length) - 1]).toBeLessThanOrEqual(25);
    expect(steps.at(-1)).toBeLessThanOrEqual(22);
    // Found by running: 7 to 8.
    expect(steps[steps.length / 2]).toBeLessThanOrEqual(9);
  });

  it('lose no air in any chamber', () => {
    // Conservation of mass.
    const most = tried.map(({ airway, state }) => imbalance(airway.topology, state.flows));
    expect(Math.max(...most)).toBeLessThan(1e-10);
  });

  it('have the same pressures from both starts', () => {
    let most = 0;
    for (let index = 0; index < tried.length; index += 2) {
      tried[index]?.state.pressures.forEach((pressure, chamber) => {
        const gap = Math.abs(pressure - (tried[index + 1]?.state.pressures[chamber] ?? Number.NaN));
        if (!(gap <= most)) most = gap;
      });
    }
    // Found by running, with room; no source.
    expect(most).toBeLessThan(1e-6);
  });
});

describe('a stream that nothing holds back', () => {
  // Theory: warm air that rises through one leg without loss and comes back through another has no steady flow.
  const topology = { chambers: 2, from: [0, 0, 1], to: [1, 1, 0] };
  const rising = () => Object.assign(seriesLeg([]), { lift: 0.5 });
  const fan = () => legOf([bank(curvePool[3] ?? expect.fail('no curve')), passive(300, 1e5)]);

  it('is a failure with a reason, and its state holds numbers', () => {
    const state = newNetworkState(topology);
    const report = createBalancer(topology)([rising(), seriesLeg([]), fan()], state);
    expect(report.status).toBe('too many steps');
    expect([...state.flows, ...state.pressures].every((value) => Number.isFinite(value))).toBe(true);
  });

  it('is found as soon as there is any loss', () => {
    // Derived: 0.5 Pa over b·Q|Q| of 1000 Pa·s²/m⁶ each way round.
    const state = newNetworkState(topology);
    const lossy = () => legOf([passive(0, 1000)]);
    const report = createBalancer(topology)(
      [Object.assign(lossy(), { lift: 0.5 }), lossy(), legOf([passive(1e9, 0)])],
      state,
    );
    expect(report.status).toBe('balanced');
    expect((state.flows[0] ?? 0) / 1.2).toBeCloseTo(Math.sqrt(0.5 / 2000), 9);
  });
});
