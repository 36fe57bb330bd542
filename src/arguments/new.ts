import { STARTER_SHAPES, type StarterShape } from '../commands/starters.ts';
import { call } from './call.ts';

/** `new`: a scenario to begin with. */
export const newCall = call({
  usage: 'new <file>',
  describe: 'a commented scenario to begin with',
  options: (args) =>
    args
      .positional('file', { type: 'string', demandOption: true, describe: 'file to write' })
      .option('shape', {
        choices: STARTER_SHAPES,
        default: 'single' as StarterShape,
        describe: 'single path, tower with a bypass, or cabinet',
      })
      .option('schema', {
        type: 'string',
        requiresArg: true,
        describe: 'also write the schema for editors to this file, and name it in the scenario',
      })
      .option('force', { type: 'boolean', default: false, describe: 'replace files that are there' })
      .option('quiet', {
        alias: 'q',
        type: 'boolean',
        default: false,
        describe: 'no messages beside the answer',
      })
      .example('$0 new box.yaml --shape cabinet', 'then change it, and: hushwright rank box.yaml'),
  run: async (options) => (await import('../commands/new.ts')).run(options),
});
