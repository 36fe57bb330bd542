import { ABOVE_ZERO, asQuantity } from './as-quantity.ts';
import { call } from './call.ts';
import { csvOption } from './question-options.ts';
import { answerOptions } from './scenario-options.ts';

/** `air`: how much air carries a heat away. */
export const airCall = call({
  usage: 'air',
  describe: 'the air that carries a heat away, without any file',
  options: (args) =>
    csvOption(answerOptions(args))
      .option('power', {
        type: 'string',
        requiresArg: true,
        demandOption: true,
        describe: 'heat to carry away, such as "95 W"',
        coerce: asQuantity('power', 'power', ABOVE_ZERO),
      })
      .option('rise', {
        type: 'string',
        requiresArg: true,
        describe: 'what the air may get warmer, such as "10 K" ; 10 K if neither this nor a limit is said',
        coerce: asQuantity('rise', 'temperatureDifference', ABOVE_ZERO),
      })
      .option('limit', {
        type: 'string',
        requiresArg: true,
        describe: 'or the warmest that the air may get, such as "45 °C"',
        coerce: asQuantity('limit', 'temperature', ABOVE_ZERO),
      })
      .option('room', {
        type: 'string',
        requiresArg: true,
        describe: 'room temperature; 26 °C if absent',
        coerce: asQuantity('room', 'temperature', [
          (value) => value >= 233.15 && value <= 343.15,
          'a temperature from -40 °C to 70 °C',
        ]),
      })
      .option('altitude', {
        type: 'string',
        requiresArg: true,
        describe: 'of the place, such as "500 m"; sea level if absent',
        coerce: asQuantity('altitude', 'length', [
          (value) => value >= -500 && value <= 9000,
          'an altitude from -500 m to 9000 m',
        ]),
      })
      .check(({ rise, limit }) => {
        if (rise !== undefined && limit !== undefined) throw new Error('give --rise or --limit, not both');
        return true;
      })
      .example('$0 air --power "95 W" --rise "10 K"', 'the flow that 95 W need, and a table around it')
      .example(
        '$0 air --power "60 W" --limit "45 °C" --room "30 °C" --altitude "1500 m"',
        'on a hot day, high up',
      ),
  run: async (options) => (await import('../commands/air.ts')).run(options),
});
