import { GOALS, type Goal, isByLevel } from '../search/asks/goal.ts';
import { FRONT_AXES, type FrontAxis } from '../search/front/front-axis.ts';
import { ABOVE_ZERO, asQuantity } from './as-quantity.ts';
import { call } from './call.ts';
import { scenarioOptions } from './scenario-options.ts';

/** Options of which some do not go together. */
interface Together {
  readonly by: Goal;
  readonly byDuty: unknown;
  readonly front: FrontAxis | undefined;
  readonly frontStep: unknown;
  readonly why: unknown;
  readonly confidence: unknown;
}

/** Refuses a call. */
function need(holds: boolean, words: string): void {
  if (!holds) throw new Error(words);
}

function isPercent(confidence: number | undefined): boolean {
  return confidence === undefined || (confidence >= 50 && confidence <= 99);
}

function isCount(jobs: number | undefined): boolean {
  return jobs === undefined || (Number.isInteger(jobs) && jobs >= 1 && jobs <= 64);
}

/** Refuses options that do not go together. */
function needFitting({ by, byDuty, front, frontStep, why, confidence }: Together): void {
  need(byDuty === undefined || by !== 'loudest', '--by-duty does not go with --by loudest');
  need(byDuty === undefined || by !== 'power', '--by-duty does not go with --by power');
  need(front === undefined || isByLevel(by), '--front goes by a level: --by mean or --by loudest');
  need(front === undefined || why === undefined, '--why does not go with --front');
  need(frontStep === undefined || front === 'margin', '--front-step goes with --front margin only');
  const plain = front === undefined && why === undefined && by !== 'power';
  need(confidence === undefined || plain, '--confidence does not go with --front, --why or --by power');
}

/** `rank`: the quietest adequate builds. */
export const rankCall = call({
  usage: 'rank <scenario>',
  describe: 'the quietest adequate builds, best first, proved',
  options: (args) =>
    scenarioOptions(args)
      .option('top', { type: 'number', requiresArg: true, default: 10, describe: 'length of the list' })
      .option('gap', { type: 'number', requiresArg: true, default: 0.01, describe: 'gap of the proof, dB' })
      .option('by', {
        choices: GOALS,
        default: 'mean' as const,
        describe: 'what counts: mean level over time, level of the loudest duty, price, depth or fan power',
      })
      .option('by-duty', {
        type: 'string',
        requiresArg: true,
        describe: 'only the level in this duty counts',
      })
      .option('level-cap', {
        type: 'string',
        requiresArg: true,
        coerce: asQuantity('level-cap', 'level'),
        describe: 'highest level, such as "30 dB(A)"',
      })
      .option('front', {
        choices: FRONT_AXES,
        describe: 'how noise trades against something else, instead of a list',
      })
      .option('front-step', {
        type: 'string',
        requiresArg: true,
        coerce: asQuantity('front-step', 'temperatureDifference', ABOVE_ZERO),
        describe: 'steps of the margin in a front; 2 K if absent',
      })
      .option('why', {
        type: 'string',
        requiresArg: true,
        describe: 'tells why this build of the scenario is not the first',
      })
      .option('time-limit', {
        type: 'number',
        requiresArg: true,
        describe: 'most seconds; the best so far is shown',
      })
      .option('jobs', {
        type: 'number',
        requiresArg: true,
        describe: 'threads that work on it; as many as processors if absent',
      })
      .option('confidence', {
        type: 'number',
        requiresArg: true,
        describe: 'least probability of holding all limits, percent',
      })
      .check(({ top, gap, timeLimit, confidence, jobs, by, byDuty, front, frontStep, why }) => {
        need(Number.isInteger(top) && top >= 1 && top <= 1000, '--top takes a whole number from 1 to 1000');
        need(gap >= 0 && gap <= 10, '--gap takes decibels from 0 to 10');
        need(typeof timeLimit !== 'number' || timeLimit > 0, '--time-limit takes seconds above 0');
        need(isPercent(confidence), '--confidence takes percent from 50 to 99');
        need(isCount(jobs), '--jobs takes a whole number from 1 to 64');
        needFitting({ by, byDuty, front, frontStep, why, confidence });
        return true;
      })
      .example('$0 rank scenarios/desk-scanner.yaml', 'the quietest adequate builds of the main example')
      .example('$0 rank box.yaml --top 3 --json', 'three rows for a program to read'),
  run: async (options) => (await import('../commands/rank.ts')).run(options),
});
