import { asQuantities } from './as-quantity.ts';
import { call } from './call.ts';
import { buildOption, checkSpeed, csvOption } from './question-options.ts';
import { scenarioOptions } from './scenario-options.ts';

const SHARE = [(value: number) => value >= 0 && value < 1, 'a percentage from 0 % to below 100 %'] as const;

/** `margin`: what a build survives. */
export const marginCall = call({
  usage: 'margin <scenario>',
  describe: 'what a build survives: hot rooms, altitude, dust, a dead fan, a low supply',
  options: (args) =>
    csvOption(buildOption(scenarioOptions(args)))
      .option('duty', {
        type: 'string',
        requiresArg: true,
        describe: 'duty to look at; the hardest if absent',
      })
      .option('speed', {
        type: 'number',
        requiresArg: true,
        describe: 'one speed for all banks, percent; the quietest adequate speeds if absent',
      })
      .option('room', {
        type: 'string',
        array: true,
        nargs: 1,
        default: [] as string[],
        describe: 'room temperature; those of the duties and one 5 K hotter if absent',
        coerce: asQuantities('room', 'temperature', [
          (value) => value >= 233.15 && value <= 343.15,
          'a temperature from -40 °C to 70 °C',
        ]),
      })
      .option('altitude', {
        type: 'string',
        array: true,
        nargs: 1,
        default: ['1500 m'],
        describe: 'altitude beside that of the scenario; 1500 m if absent',
        coerce: asQuantities('altitude', 'length', [
          (value) => value >= -500 && value <= 9000,
          'an altitude from -500 m to 9000 m',
        ]),
      })
      .option('dust', {
        type: 'string',
        array: true,
        nargs: 1,
        default: ['100 %'],
        describe: 'load of the filters beside that of the scenario; 100 %, due for change, if absent',
        coerce: asQuantities('dust', 'percent', [
          (value) => value >= 0 && value <= 1,
          'a percentage up to 100 %',
        ]),
      })
      .option('slower', {
        type: 'string',
        array: true,
        nargs: 1,
        default: ['5 %'],
        describe: 'how much slower fans run on a low supply; 5 % if absent',
        coerce: asQuantities('slower', 'percent', SHARE),
      })
      .option('dead', {
        type: 'boolean',
        default: true,
        describe: 'tries one fan of each place dead; --no-dead leaves that out',
      })
      .check(({ speed }) => {
        checkSpeed(speed);
        return true;
      })
      .example('$0 margin scenarios/desk-scanner.yaml --build as-built', 'everything at once')
      .example(
        '$0 margin scenarios/shelf-charger.yaml --speed 80 --room "33 °C" --altitude "1500 m" --dust "50 %" --no-dead',
        'a hot day up high with half a load of dust',
      ),
  run: async (options) => (await import('../commands/margin.ts')).run(options),
});
