import { call } from './call.ts';
import { scenarioOptions } from './scenario-options.ts';

/** `solve`: one build in full. */
export const solveCall = call({
  usage: 'solve <scenario>',
  describe: 'one build in full: flows, pressures, temperatures, levels',
  options: (args) =>
    scenarioOptions(args)
      .option('build', {
        type: 'string',
        describe: 'a build the scenario names; the quietest adequate one if absent',
      })
      .option('rank', { type: 'number', default: 1, describe: 'place in the ranking, if no build is named' })
      .option('speed', {
        type: 'number',
        requiresArg: true,
        describe: 'one speed for all banks, percent of full speed',
      })
      .option('duty', { type: 'string', describe: 'show this duty only' })
      .option('csv', {
        type: 'boolean',
        default: false,
        describe: 'what to change next as comma-separated values',
      })
      .option('save-build', {
        type: 'string',
        requiresArg: true,
        describe: 'put the build of that rank into the scenario, under this name',
      })
      .check(({ csv, json, speed }) => {
        if (csv && json) throw new Error('give --csv or --json, not both');
        if (csv && speed !== undefined)
          throw new Error('--csv tells what to change, which is not asked at a set --speed');
        return true;
      })
      .check(({ rank, speed, build, saveBuild }) => {
        if (build !== undefined && saveBuild !== undefined)
          throw new Error('--save-build saves a build of the ranking; one with a name is there already');
        if (!Number.isInteger(rank) || rank < 1 || rank > 1000)
          throw new Error('--rank takes a whole number from 1 to 1000');
        if (speed !== undefined && !(speed > 0 && speed <= 100))
          throw new Error('--speed takes percent above 0 and up to 100');
        return true;
      })
      .example('$0 solve scenarios/desk-scanner.yaml', 'budgets of the quietest adequate build')
      .example(
        '$0 solve scenarios/desk-scanner.yaml --build as-built --speed 100',
        'a named build at full speed',
      ),
  run: async (options) => (await import('../commands/solve.ts')).run(options),
});
