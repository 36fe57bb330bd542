import { call } from './call.ts';
import { scenarioOptions } from './scenario-options.ts';

/** `check`: all problems of the files, or what they hold. */
export const checkCall = call({
  usage: 'check <scenario>',
  describe: 'all problems of the files, or what they hold',
  options: (args) => scenarioOptions(args),
  run: async (options) => (await import('../commands/check.ts')).run(options),
});
