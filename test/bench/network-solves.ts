import { createBalancer, newNetworkState } from '../../src/airway/balance.ts';
import type { SeriesLeg } from '../../src/airway/series.ts';
import { curveFromBox } from '../../src/fan/box-figures.ts';
import { epanetNetworks, type PlainLeg, type WaterNetwork } from '../airway/epanet.ts';
import { DENSITY } from '../airway/leg-laws.ts';
import { blowsForwards, type PlainNetwork, plainNetwork } from '../airway/plain-network.ts';
import { seededRandom } from '../airway/seeded-random.ts';
import { bank, legOf, passive } from '../airway/solved-network.ts';
import { median } from './median.ts';

const SEED = 2_718;
const ROUNDS = 7;
const OWN_SOLVES = 20_000;
const HELD_SOLVES = 10_000;
const ANEW_SOLVES = 100;
/** Speeds tried in turn: a step that has no common measure with the range, so that none comes twice. */
const SPEED_STEP = 0.618_033_988_75;
const SLOWEST = 0.25;
const AGREEMENT = 1e-6;

/** A network that can be solved at any speed of its fans. */
interface Contender {
  readonly solve: (ratio: number) => void;
  /** Volume flows of the last solution [m³/s]. */
  readonly flows: () => readonly number[];
}

function legFor(leg: PlainLeg): SeriesLeg {
  const stage =
    leg.kind === 'fan' ? bank(curveFromBox(leg.freeDelivery, leg.shutOff, 0)) : passive(leg.a, leg.b);
  return legOf([stage]);
}

function own({ topology, legs }: PlainNetwork): Contender {
  const laws = legs.map(legFor);
  const state = newNetworkState(topology);
  const balance = createBalancer(topology);
  const solve = (ratio: number): void => {
    for (const law of laws) {
      law.ratios.fill(ratio);
      law.refresh();
    }
    const { status } = balance(laws, state);
    if (status !== 'balanced') throw new Error(`a network was not solved: ${status}`);
  };
  return { solve, flows: () => Array.from(state.flows, (flow) => flow / DENSITY) };
}

function water(network: WaterNetwork): Contender {
  return { solve: network.solve, flows: () => network.read().flows };
}

/** A number of solutions, each at another speed, from where the last one ended: solutions per second. */
function timedRound({ solve }: Contender, solves: number): number {
  let share = 0;
  const began = process.hrtime.bigint();
  for (let count = 0; count < solves; count++) {
    share = (share + SPEED_STEP) % 1;
    solve(SLOWEST + (1 - SLOWEST) * share);
  }
  return solves / (Number(process.hrtime.bigint() - began) * 1e-9);
}

/** Rate of each contender in its median round; they take turns, so that a busy machine slows them alike. */
function rates(contenders: readonly { contender: Contender; solves: number }[]): readonly number[] {
  for (const { contender, solves } of contenders) timedRound(contender, solves);
  const rounds = Array.from({ length: ROUNDS }, () =>
    contenders.map(({ contender, solves }) => timedRound(contender, solves)),
  );
  return contenders.map((_, index) => median(rounds.map((round) => round[index] ?? Number.NaN)));
}

/** Whether all fans blow forwards from the slowest speed to the fastest, as those of EPANET must. */
function comparable(network: PlainNetwork): boolean {
  const contender = own(network);
  return [SLOWEST, 0.5, 1].every((ratio) => {
    contender.solve(ratio);
    return blowsForwards(network, { flows: contender.flows(), pressures: [] });
  });
}

function comparableNetwork(inner: number, extra: number): PlainNetwork {
  const random = seededRandom(SEED);
  for (;;) {
    const network = plainNetwork(random, inner, extra);
    if (comparable(network)) return network;
  }
}

/** Stops the run if the two do not solve the same thing. */
function agree(one: Contender, other: Contender): void {
  for (const ratio of [SLOWEST, 1]) {
    one.solve(ratio);
    other.solve(ratio);
    const flows = one.flows();
    const most = Math.max(...flows.map(Math.abs));
    const gap =
      Math.max(...other.flows().map((flow, leg) => Math.abs(flow - (flows[leg] ?? Number.NaN)))) / most;
    if (!(gap < AGREEMENT)) throw new Error(`flows differ by ${gap}`);
  }
}

const thousands = (rate: number): string => `${(rate / 1000).toPrecision(3)} thousand`;

/**
 * Measures and prints how many networks are solved per second, and how many by EPANET in the same process. Timed
 * is a change of the speed of all fans and the solution that follows, from the last flows; of EPANET its own calls
 * (speed of each pump, initialisation that keeps the flows, run) on a project that stays open, to its finest
 * accuracy, a change of flow of 1e-8, and, apart, the same on a project that is opened anew from its input each
 * time. Reading the answer is not timed.
 */
export async function benchNetworkSolves(): Promise<void> {
  const open = await epanetNetworks();
  for (const [inner, extra] of [
    [1, 2],
    [3, 5],
    [12, 17],
  ] as const) {
    const network = comparableNetwork(inner, extra);
    const held = open(network.topology, network.legs);
    agree(own(network), water(held));
    const [ownRate = 0, heldRate = 0] = rates([
      { contender: own(network), solves: OWN_SOLVES },
      { contender: water(held), solves: HELD_SOLVES },
    ]);
    held.close();
    const anew = (ratio: number): void => {
      const water = open(network.topology, network.legs);
      water.solve(ratio);
      water.close();
    };
    const [anewRate = 0] = rates([{ contender: { solve: anew, flows: () => [] }, solves: ANEW_SOLVES }]);
    console.log(
      [
        `solves of ${inner} ${inner === 1 ? 'chamber' : 'chambers'}, ${network.legs.length} legs: `,
        `${thousands(ownRate)} per second; EPANET, held open, ${thousands(heldRate)} `,
        `(${(ownRate / heldRate).toFixed(1)} times that), opened anew ${thousands(anewRate)} `,
        `(${(ownRate / anewRate).toFixed(0)} times)`,
      ].join(''),
    );
  }
}
