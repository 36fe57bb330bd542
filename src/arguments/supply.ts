import type { Argv } from 'yargs';
import { ABOVE_ZERO, asQuantity, type Fits } from './as-quantity.ts';
import { call } from './call.ts';
import { buildOption, csvOption } from './question-options.ts';
import { answerOptions, catalogOptions } from './scenario-options.ts';

const NOT_NEGATIVE: Fits = [(value) => value >= 0, 'zero or more'];
const EFFICIENCY: Fits = [(value) => value > 0 && value <= 1, 'more than 0 %, at most 100 %'];

/** What is known of the supply itself. */
function supplyOptions<T>(args: Argv<T>) {
  return args
    .option('wall', {
      type: 'string',
      requiresArg: true,
      describe: 'reading of the wall meter, such as "300 W"',
      coerce: asQuantity('wall', 'power', ABOVE_ZERO),
    })
    .option('rating', {
      type: 'string',
      requiresArg: true,
      describe: 'what the supply may give, such as "330 W"',
      coerce: asQuantity('rating', 'power', ABOVE_ZERO),
    })
    .option('efficiency', {
      type: 'string',
      requiresArg: true,
      describe: 'of the supply, such as "77 %"; 88 % if neither this nor a tier is said',
      coerce: asQuantity('efficiency', 'percent', EFFICIENCY),
    })
    .option('tier', {
      choices: ['base', 'bronze', 'silver', 'gold', 'platinum', 'titanium'] as const,
      describe: 'or its class',
    })
    .option('mains', {
      choices: ['115 V', '230 V', '230 V redundant'] as const,
      default: '230 V' as const,
      describe: 'for the tier',
    })
    .option('outside', { type: 'boolean', default: false, describe: 'the supply stands outside the box' })
    .option('internal', {
      type: 'boolean',
      default: false,
      describe: 'an internal supply that must ride through short peaks',
    });
}

/** What hangs on it. */
function loadOptions<T>(args: Argv<T>) {
  return args
    .option('useful', {
      type: 'string',
      requiresArg: true,
      describe: 'what leaves the box as electricity, sound or light',
      coerce: asQuantity('useful', 'power', NOT_NEGATIVE),
    })
    .option('fans', {
      type: 'string',
      requiresArg: true,
      describe: 'power of all fans at full speed, for their start',
      coerce: asQuantity('fans', 'power', NOT_NEGATIVE),
    })
    .option('peak', {
      type: 'number',
      requiresArg: true,
      describe: 'short peaks over what lasts; 1.2 if absent',
    })
    .option('duration', { type: 'number', requiresArg: true, default: 100, describe: 'of the peaks, ms' });
}

/** `supply`: what a supply gives, loses and has left. */
export const supplyCall = call({
  usage: 'supply [scenario]',
  describe: 'what a supply gives, loses and has left, from a reading at the wall',
  options: (args) => {
    const withScenario = args.positional('scenario', {
      type: 'string',
      describe: 'scenario with a supply, or - for standard input; none is needed',
    });
    return loadOptions(supplyOptions(csvOption(buildOption(answerOptions(catalogOptions(withScenario))))))
      .check(({ efficiency, tier, peak, duration }) => {
        if (efficiency !== undefined && tier !== undefined)
          throw new Error('give --efficiency or --tier, not both');
        if (peak !== undefined && !(peak >= 1 && peak <= 10))
          throw new Error('--peak takes a factor from 1 to 10');
        if (!(duration > 0 && duration <= 1e6)) throw new Error('--duration takes milliseconds above 0');
        return true;
      })
      .example('$0 supply --wall "300 W" --efficiency "77 %" --rating "330 W"', 'headroom without any file')
      .example(
        '$0 supply --wall "210 W" --tier gold --rating "300 W" --fans "6 W" --peak 1.4',
        'by its class',
      );
  },
  run: async (options) => (await import('../commands/supply.ts')).run(options),
});
