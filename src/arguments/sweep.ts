import { call } from './call.ts';
import { buildOption, checkSpeed, csvOption } from './question-options.ts';
import { scenarioOptions } from './scenario-options.ts';

/** Most values of each quantity in a matrix [-]. */
const MOST_IN_MATRIX = 50;

/** `sweep`: one quantity varied, or two. */
export const sweepCall = call({
  usage: 'sweep <scenario>',
  describe: 'varies a quantity: level, margin, flow and speeds, and where the limits are met',
  options: (args) =>
    csvOption(buildOption(scenarioOptions(args)))
      .option('vary', {
        type: 'string',
        array: true,
        nargs: 1,
        demandOption: true,
        describe: 'a quantity and its values, such as "room = 20 °C to 40 °C"; twice for a matrix',
      })
      .option('points', {
        type: 'number',
        requiresArg: true,
        describe: 'values that a range is divided into; 21, or 7 in a matrix, if absent',
      })
      .option('log', { type: 'boolean', default: false, describe: 'logarithmic spacing' })
      .option('speed', {
        type: 'number',
        requiresArg: true,
        describe: 'one speed for all banks, percent; the quietest adequate speeds if absent',
      })
      .option('duty', { type: 'string', requiresArg: true, describe: 'looks at this duty only' })
      .option('anew', {
        type: 'boolean',
        default: false,
        describe: 'looks for the quietest adequate build at every point',
      })
      .option('show', {
        choices: ['level', 'margin', 'flow', 'power'] as const,
        describe: 'what is drawn, or set out in the matrix',
      })
      .check(({ vary, points, speed, anew, build }) => {
        if (vary.length > 2) throw new Error('--vary takes one quantity or two');
        if (points !== undefined && !(Number.isInteger(points) && points >= 2 && points <= 500))
          throw new Error('--points takes a whole number from 2 to 500');
        if (vary.length > 1 && (points ?? 0) > MOST_IN_MATRIX)
          throw new Error(`--points takes no more than ${MOST_IN_MATRIX} in a matrix`);
        checkSpeed(speed);
        if (anew && build !== undefined) throw new Error('give --build or --anew, not both');
        return true;
      })
      .example(
        '$0 sweep scenarios/desk-scanner.yaml --build as-built --vary "room = 20 °C to 45 °C"',
        'up to which room temperature a build holds',
      )
      .example(
        '$0 sweep scenarios/desk-scanner.yaml --build as-built --duty scanning --points 5 --vary "elements.rear.hole = 3 mm to 8 mm" --vary "duties.scanning.heat = 60 % to 120 %"',
        'a matrix of two quantities',
      ),
  run: async ({ points, ...options }) => {
    const usual = options.vary.length > 1 ? 7 : 21;
    return (await import('../commands/sweep.ts')).run({ ...options, points: points ?? usual });
  },
});
