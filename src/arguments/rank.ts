import { call } from './call.ts';
import { scenarioOptions } from './scenario-options.ts';

/** `rank`: the quietest adequate builds. */
export const rankCall = call({
  usage: 'rank <scenario>',
  describe: 'the quietest adequate builds, best first, proved',
  options: (args) =>
    scenarioOptions(args)
      .option('top', { type: 'number', requiresArg: true, default: 10, describe: 'length of the list' })
      .option('gap', { type: 'number', requiresArg: true, default: 0.01, describe: 'gap of the proof, dB' })
      .option('by', {
        choices: ['mean', 'loudest'] as const,
        default: 'mean' as const,
        describe: 'level that counts: mean over time, or the loudest duty',
      })
      .option('time-limit', {
        type: 'number',
        requiresArg: true,
        describe: 'most seconds; the best so far is shown',
      })
      .check(({ top, gap, timeLimit }) => {
        if (!Number.isInteger(top) || top < 1 || top > 1000)
          throw new Error('--top takes a whole number from 1 to 1000');
        if (!(gap >= 0 && gap <= 10)) throw new Error('--gap takes decibels from 0 to 10');
        if (typeof timeLimit === 'number' && !(timeLimit > 0))
          throw new Error('--time-limit takes seconds above 0');
        return true;
      })
      .example('$0 rank scenarios/desk-scanner.yaml', 'the quietest adequate builds of the main example')
      .example('$0 rank box.yaml --top 3 --json', 'three rows for a program to read'),
  run: async (options) => (await import('../commands/rank.ts')).run(options),
});
