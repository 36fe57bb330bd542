import { call } from './call.ts';

/** `schema`: help for editors. */
export const schemaCall = call({
  usage: 'schema <of>',
  describe: 'JSON Schema of scenarios or catalogs, for help in editors',
  options: (args) =>
    args
      .positional('of', {
        choices: ['scenario', 'catalog'] as const,
        demandOption: true,
        describe: 'which files',
      })
      .option('to', { type: 'string', requiresArg: true, describe: 'file to write; else standard output' })
      .option('force', { type: 'boolean', default: false, describe: 'replace a file that is there' })
      .option('quiet', {
        alias: 'q',
        type: 'boolean',
        default: false,
        describe: 'no messages beside the answer',
      })
      .example('$0 schema scenario --to scenario.schema.json', 'then say so in the first line of a scenario'),
  run: async (options) => (await import('../commands/schema.ts')).run(options),
});
