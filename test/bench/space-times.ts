import { availableParallelism } from 'node:os';
import { median } from './median.ts';
import { type ProcessRun, runNode } from './process-run.ts';
import { ladder, largeSpaces, mainExample, namedBy, type Space, spaceOf } from './spaces.ts';
import { printTable } from './table.ts';
import { writeSpaces } from './write-spaces.ts';

/** Seconds a search may take, from the environment or 60. */
const LIMIT = Number(process.env['BENCH_LIMIT'] ?? 60);
/** A process is killed after this many times the limit: it did not heed it. */
const PATIENCE = 3;
/** A space is run this often if the first run took less than a few seconds. */
const ROUNDS = 5;
const SHORT = 6000;

/** Counts of a ranking as its JSON document tells them. */
interface Counts {
  readonly space: number;
  readonly solved: number;
  readonly gap_dB: number | null;
  readonly passes: number;
}

interface Answer {
  readonly complete: boolean;
  readonly count: Counts;
  readonly rows: readonly { readonly outcome: { readonly level_dBA: number } }[];
}

function answerOf({ output, code }: ProcessRun): Answer | null {
  return code === null ? null : (JSON.parse(output) as { result: Answer }).result;
}

/** A process that does nothing, once. */
function bareRun(): ProcessRun {
  return runNode(['-e', '0'], 60_000);
}

/** Runs of a space, in turn with runs of a process that does nothing. */
function runsOf(space: Space): {
  readonly runs: readonly ProcessRun[];
  readonly bare: readonly ProcessRun[];
} {
  const command = ['dist/hushwright.js', 'rank', ...namedBy(space), '--json', '--time-limit', String(LIMIT)];
  const bare = [bareRun()];
  const runs = [runNode(command, 1000 * LIMIT * PATIENCE)];
  while ((runs[0]?.took ?? 0) < SHORT && runs.length < ROUNDS) {
    bare.push(bareRun());
    runs.push(runNode(command, 1000 * LIMIT * PATIENCE));
  }
  bare.push(bareRun());
  return { runs, bare };
}

function proofOf(answer: Answer | null): string {
  if (!answer) return 'none: killed';
  if (answer.complete) return 'whole';
  const { gap_dB: gap } = answer.count;
  return gap === null ? 'none: list not full' : `gap ${gap.toFixed(2)} dB`;
}

function rowOf(space: Space): readonly string[] {
  const { runs, bare } = runsOf(space);
  const took = median(runs.map((run) => run.took));
  const answer = answerOf(runs[0] as ProcessRun);
  const known = runs.filter(({ code }) => code !== null);
  const processor = (of: readonly ProcessRun[]) => median(of.map((run) => run.processor ?? Number.NaN));
  const levels = answer?.rows.map(({ outcome }) => outcome.level_dBA) ?? [];
  return [
    space.name,
    answer ? answer.count.space.toExponential(1) : '',
    `${(took / 1000).toFixed(2)} s`,
    (took / median(bare.map((run) => run.took))).toFixed(1),
    known.length > 0 ? (processor(known) / processor(bare)).toFixed(1) : '',
    String(runs.length),
    known.length > 0 ? `${median(known.map((run) => run.memory ?? Number.NaN)).toFixed(0)} MB` : '',
    proofOf(answer),
    answer ? String(answer.count.solved) : '',
    answer ? String(answer.count.passes) : '',
    levels.length > 0 ? Math.min(...levels).toFixed(2) : 'none',
  ];
}

/** Times of the clock on the wall; `processor` is that of all threads, also over that of a bare node. */
const HEAD = [
  'space',
  'builds',
  'time',
  'x node',
  'processor x',
  'runs',
  'memory',
  'proof',
  'solved',
  'passes',
  'dB(A)',
];

function printTimes(title: string, spaces: readonly Space[]): void {
  console.log(`${title}; ${availableParallelism()} cores, limit ${LIMIT} s`);
  printTable(HEAD, spaces.map(rowOf));
}

/** Measures and prints whole rankings of the main example and of the large spaces. */
export function benchSpaces(): void {
  writeSpaces();
  printTimes('whole rankings against node -e 0', [mainExample, ...largeSpaces.map(spaceOf)]);
}

/** Measures and prints how the time of a ranking grows with the space. */
export function benchLadder(): void {
  writeSpaces();
  printTimes('one enclosure, more and more to choose from', ladder.map(spaceOf));
}
