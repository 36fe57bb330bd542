import { createBalancer, newNetworkState } from '../../src/airway/balance.ts';
import { largeAirway, MOST_CHAMBERS } from '../airway/large-airway.ts';
import { randomStart } from '../airway/random-airway.ts';
import { seededRandom } from '../airway/seeded-random.ts';

const AIRWAYS = 10_000;
const SEED = 90_210;
const ALLOWED = 25;
/** Chambers in one line of the table, legs in another. */
const CHAMBER_GROUP = 3;
const LEG_GROUP = 10;

/** Steps of many solutions, and how many of them failed. */
interface Tally {
  readonly steps: number[];
  failed: number;
}

/** From which number to which the group of a number reaches. */
function groupOf(count: number, size: number): string {
  const first = size * Math.floor((count - 1) / size) + 1;
  return `${first} to ${first + size - 1}`.padStart(8);
}

function lineOf(name: string, { steps, failed }: Tally): string {
  steps.sort((one, other) => one - other);
  const at = (share: number) => steps[Math.max(0, Math.ceil(share * steps.length) - 1)] ?? '-';
  const quantiles = [0.5, 0.9, 0.99, 0.999, 1].map(at).join(' / ');
  const within = steps.filter((count) => count <= ALLOWED).length / (steps.length + failed);
  return `${name}: ${steps.length} solved, ${failed} not; ${quantiles}; ${(100 * within).toFixed(3)} %`;
}

/**
 * Counts and prints the Newton steps that random airways of all sizes take, from the usual start and from a random
 * one: at the median, 90, 99, 99.9 and 100 % of them, and how many are solved in 25.
 */
export function countNewtonSteps(): void {
  const tallies = new Map<string, Tally>();
  const random = seededRandom(SEED);
  for (let trial = 0; trial < AIRWAYS; trial++) {
    const { topology, legs } = largeAirway(random);
    const balance = createBalancer(topology);
    const starts = { usual: newNetworkState(topology), random: randomStart(random, topology) };
    for (const [start, state] of Object.entries(starts)) {
      const { status, steps } = balance(legs, state);
      const chambers = `${groupOf(topology.chambers - 1, CHAMBER_GROUP)} chambers`;
      for (const group of ['all sizes', chambers, `${groupOf(legs.length, LEG_GROUP)} legs`]) {
        const name = `${group}, ${start} start`;
        const tally = tallies.get(name) ?? { steps: [], failed: 0 };
        tallies.set(name, tally);
        if (status === 'balanced') tally.steps.push(steps);
        else tally.failed += 1;
      }
    }
  }
  console.log(`Newton steps of ${AIRWAYS} random airways of up to ${MOST_CHAMBERS} chambers`);
  for (const [name, tally] of [...tallies].toSorted()) console.log(lineOf(name, tally));
}
