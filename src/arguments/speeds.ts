import { ABOVE_ZERO, asQuantity } from './as-quantity.ts';
import { call } from './call.ts';
import { buildOption, csvOption } from './question-options.ts';
import { scenarioOptions } from './scenario-options.ts';

/** `speeds`: what to set a controller to. */
export const speedsCall = call({
  usage: 'speeds <scenario>',
  describe: 'what to set the fans to in each duty, and a table for a controller',
  options: (args) =>
    csvOption(buildOption(scenarioOptions(args)))
      .option('between', {
        type: 'number',
        requiresArg: true,
        default: 1,
        describe: 'lines of the controller between those of two duties',
      })
      .option('step', {
        type: 'string',
        requiresArg: true,
        describe: 'least rise from line to line; 1 K if absent',
        coerce: asQuantity('step', 'temperatureDifference', ABOVE_ZERO),
      })
      .option('slack', {
        type: 'string',
        requiresArg: true,
        describe: 'how much the sensor may be off; 1 K if absent',
        coerce: asQuantity('slack', 'temperatureDifference', [(value) => value >= 0, 'zero or more']),
      })
      .option('table', {
        choices: ['controller', 'duties'] as const,
        default: 'controller' as const,
        describe: 'which table --csv writes',
      })
      .check(({ between }) => {
        if (!(Number.isInteger(between) && between >= 0 && between <= 20))
          throw new Error('--between takes a whole number from 0 to 20');
        return true;
      })
      .example('$0 speeds scenarios/shelf-charger.yaml', 'speeds of the quietest adequate build')
      .example('$0 speeds scenarios/shelf-charger.yaml --csv', 'the table for a controller, to paste'),
  run: async (options) => (await import('../commands/speeds.ts')).run(options),
});
