import type { Enclosure } from '../../src/enclosure/enclosure.ts';
import { rankingOf } from '../../src/search/rank.ts';
import type { Ranking } from '../../src/search/ranking.ts';
import { beginSearch } from '../../src/search/search.ts';
import { geneticRival } from './genetic-rival.ts';
import { gridRival } from './grid-rival.ts';
import { milpRival } from './milp-rival.ts';
import {
  countOf,
  cutOf,
  generatedEnclosure,
  processorSeconds,
  type RivalResult,
  shippedEnclosure,
  type Task,
} from './rival.ts';
import { largeSpaces, type SpacePlan } from './spaces.ts';
import { printTable } from './table.ts';
import { writeSpaces } from './write-spaces.ts';

const GAP = 0.01;
/** Share of the heat in the louder amplifier [-]. */
const LOUD = 0.9;
const SEEDS = [1, 2, 3] as const;
/** Builds of a large space that the grid is run on to work out the rest. */
const SAMPLE = 200;
/** Seconds the search may take, and HiGHS. */
const LIMIT = 120;

/** The one quietest build; after a time the best so far. */
function ranked(enclosure: Enclosure): Ranking {
  const began = processorSeconds();
  const search = beginSearch(enclosure, { top: 1, gap: GAP });
  while (processorSeconds() - began < LIMIT && search.step());
  return rankingOf(search);
}

function own({ enclosure }: Task): RivalResult {
  const began = processorSeconds();
  const { rows, complete, count } = ranked(enclosure);
  return {
    method: 'hushwright, one row',
    level: rows[0]?.outcome.level ?? null,
    seconds: processorSeconds() - began,
    proof: complete ? `all ${count.space} builds, within ${GAP} dB` : `gap ${count.gap.toFixed(2)} dB`,
  };
}

function secondsIn({ seconds, extrapolated }: RivalResult): string {
  if (!extrapolated) return `${seconds.toPrecision(3)} s`;
  return seconds > 5400 ? `~${(seconds / 3600).toFixed(1)} h` : `~${(seconds / 60).toFixed(1)} min`;
}

/** Difference of two levels, zero without a sign [dB]. */
function aboveBy(level: number, least: number): string {
  return (Math.round(100 * (level - least)) / 100 + 0).toFixed(2);
}

function printResults({ title, enclosure }: Task, results: readonly RivalResult[]): void {
  console.log(`${title}: ${countOf(enclosure)} builds, ${enclosure.duties.length} duties`);
  const [first] = results;
  printTable(
    ['method', 'dB(A)', 'above', 'time', 'x', 'proof'],
    results.map((result) => [
      result.method,
      result.level?.toFixed(2) ?? '-',
      result.level === null || first?.level == null ? '-' : aboveBy(result.level, first.level),
      secondsIn(result),
      (result.seconds / (first?.seconds ?? 1)).toPrecision(2),
      result.proof,
    ]),
  );
}

/** Once before anything is timed: so that all methods find the code warm. */
function warmUp(enclosure: Enclosure): void {
  ranked(enclosure);
}

/** How hard the others try. */
interface Effort {
  /** Builds the grid is run on. */
  readonly sample: number;
  /** Times for the genetic algorithm, over that of the search [-]. */
  readonly times: readonly number[];
  readonly withMilp?: boolean;
}

async function contest(task: Task, { sample, times, withMilp = false }: Effort): Promise<void> {
  const first = own(task);
  printResults(task, [
    first,
    gridRival(task, sample),
    ...(await geneticRival(
      task,
      SEEDS,
      times.map((factor) => factor * first.seconds),
    )),
    ...(withMilp ? [await milpRival(task, LIMIT)] : []),
  ]);
}

/** The amplifier with more heat most of the time: as shipped it idles at the hold floor of its fan. */
function playedLoud(enclosure: Enclosure): Enclosure {
  const duties = enclosure.duties.map((duty) =>
    duty.share > 0 ? { ...duty, heat: duty.heat.map(() => LOUD) } : duty,
  );
  return { ...enclosure, duties };
}

/** Puts the same question to hushwright and to what one would do otherwise, and prints what came of it. */
export async function benchRivals(): Promise<void> {
  writeSpaces();
  const amplifier = playedLoud(shippedEnclosure('open-amplifier'));
  const scanner = shippedEnclosure('desk-scanner');
  const everyNinth = (first: number) => (option: number) => option === 0 || option % 9 === first;
  const cut = cutOf(scanner, {
    push: everyNinth(4),
    pull: everyNinth(4),
    exit: (option) => option % 12 === 3,
    rear: (option) => option === 2,
  });
  const tasks: readonly (Task & Effort)[] = [
    {
      title: 'one path, two banks',
      enclosure: amplifier,
      sample: countOf(amplifier),
      times: [1, 10],
      withMilp: true,
    },
    { title: 'the main example, cut down', enclosure: cut, sample: countOf(cut), times: [1, 10] },
    { title: 'the main example', enclosure: scanner, sample: SAMPLE, times: [1, 10] },
    { title: 's2', enclosure: generatedEnclosure(largeSpaces[0] as SpacePlan), sample: SAMPLE, times: [1] },
  ];
  warmUp(scanner);
  for (const task of tasks) await contest(task, task);
}
