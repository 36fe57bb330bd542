import type { Argv } from 'yargs';

/**
 * The build that a question is about.
 *
 * @param args the parser
 */
export function buildOption<T>(args: Argv<T>) {
  return args.option('build', {
    type: 'string',
    requiresArg: true,
    describe: 'a build the scenario names; the quietest adequate one if absent',
  });
}

/**
 * An answer as a table for other programs.
 *
 * @param args the parser
 */
export function csvOption<T extends { readonly json: boolean }>(args: Argv<T>) {
  return args
    .option('csv', {
      type: 'boolean',
      default: false,
      describe: 'comma-separated values, SI units in the heads',
    })
    .check(({ csv, json }) => {
      if (csv && json) throw new Error('give --csv or --json, not both');
      return true;
    });
}

/**
 * Refuses a speed that is none.
 *
 * @param speed in percent [%], as given
 */
export function checkSpeed(speed: number | undefined): void {
  if (speed !== undefined && !(speed > 0 && speed <= 100))
    throw new Error('--speed takes percent above 0 and up to 100');
}
