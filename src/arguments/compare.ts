import { asQuantity } from './as-quantity.ts';
import { call } from './call.ts';
import { csvOption } from './question-options.ts';
import { scenarioOptions } from './scenario-options.ts';

/** `compare`: arrangements, fans or builds against each other. */
export const compareCall = call({
  usage: 'compare <scenario>',
  describe: 'push or pull, one or two, slim or thick: at full speed, equally loud, equally warm',
  options: (args) =>
    csvOption(scenarioOptions(args))
      .option('build', {
        type: 'string',
        array: true,
        nargs: 1,
        default: [] as string[],
        describe: 'two or more: these builds; one: the build to start from, else the quietest adequate one',
      })
      .option('bank', {
        type: 'string',
        requiresArg: true,
        describe: 'place whose fans are compared; the first on fins if absent',
      })
      .option('fan', {
        type: 'string',
        array: true,
        nargs: 1,
        default: [] as string[],
        describe: 'two or more: these fans there; one: the fan to arrange, else that of the build',
      })
      .option('larger', {
        type: 'string',
        requiresArg: true,
        describe: 'the larger fan; the next of the catalog if absent',
      })
      .option('duty', {
        type: 'string',
        requiresArg: true,
        describe: 'duty to compare in; the hardest if absent',
      })
      .option('level', {
        type: 'string',
        requiresArg: true,
        describe: 'level to compare at, such as "25 dB(A)"; the quietest full speed if absent',
        coerce: asQuantity('level', 'level'),
      })
      .check(({ build, fan }) => {
        if (build.length > 1 && fan.length > 0) throw new Error('give builds or fans, not both');
        return true;
      })
      .example(
        '$0 compare scenarios/desk-scanner.yaml --build as-built',
        'push, pull, both, two side by side',
      )
      .example(
        '$0 compare scenarios/desk-scanner.yaml --build as-built --bank exit --fan p80-15-b --fan p80-25-c',
        'a slim fan against a thick one',
      ),
  run: async (options) => (await import('../commands/compare.ts')).run(options),
});
