import type { Argv } from 'yargs';

/**
 * Options of every command that gives an answer.
 *
 * @param args the parser
 */
export function answerOptions<T>(args: Argv<T>) {
  return args
    .option('json', { type: 'boolean', default: false, describe: 'one JSON document, SI units in the keys' })
    .option('wide', { type: 'boolean', default: false, describe: 'all columns, however wide' })
    .option('color', { type: 'boolean', describe: 'colours; --no-color for none' })
    .option('quiet', {
      alias: 'q',
      type: 'boolean',
      default: false,
      describe: 'no messages beside the answer',
    });
}

/**
 * Options of every command that reads fans.
 *
 * @param args the parser
 */
export function catalogOptions<T>(args: Argv<T>) {
  return args
    .option('catalog', {
      type: 'string',
      array: true,
      nargs: 1,
      default: [] as string[],
      describe: 'file or folder of fan families and stock, beside the shipped ones; - for standard input',
    })
    .option('shadow', {
      type: 'boolean',
      default: false,
      describe: 'a fan of a later file takes the place of an earlier one with its id',
    })
    .option('shipped', {
      type: 'boolean',
      default: true,
      describe: 'use the shipped (invented) fans; --no-shipped leaves them out',
    });
}

/**
 * Options of every command that reads a scenario.
 *
 * @param args the parser
 */
export function scenarioOptions<T>(args: Argv<T>) {
  const withScenario = args.positional('scenario', {
    type: 'string',
    demandOption: true,
    describe: 'scenario file, or - for standard input',
  });
  return answerOptions(catalogOptions(withScenario));
}
