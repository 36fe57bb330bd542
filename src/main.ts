#!/usr/bin/env node
import yargs, { type Argv } from 'yargs';
import { hideBin } from 'yargs/helpers';
import { EXIT, type ExitCode, STANDARD_INPUT } from './commands/console.ts';
import { VERSION } from './commands/version.ts';

const CAUTIONS =
  'Mains wiring, moving blades, hot surfaces and batteries can hurt people: local codes and licensed practice ' +
  'come first, and over-temperature protection must stay in place. See the README.';

/** Options every command that reads a scenario takes. */
function scenarioOptions<T>(args: Argv<T>) {
  return args
    .positional('scenario', {
      type: 'string',
      demandOption: true,
      describe: 'scenario file, or - for standard input',
    })
    .option('catalog', {
      type: 'string',
      array: true,
      nargs: 1,
      default: [] as string[],
      describe: 'file or folder of fan families, beside the shipped ones',
    })
    .option('shipped', {
      type: 'boolean',
      default: true,
      describe: 'use the shipped (invented) fans; --no-shipped leaves them out',
    })
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

function rankOptions<T>(args: Argv<T>) {
  return scenarioOptions(args)
    .option('top', { type: 'number', requiresArg: true, default: 10, describe: 'length of the list' })
    .option('gap', { type: 'number', requiresArg: true, default: 0.01, describe: 'gap of the proof, dB' })
    .option('by', {
      choices: ['mean', 'loudest'] as const,
      default: 'mean' as const,
      describe: 'level that counts: mean over time, or the loudest duty',
    })
    .option('time-limit', {
      type: 'number',
      requiresArg: true,
      describe: 'most seconds; the best so far is shown',
    })
    .check(({ top, gap, timeLimit }) => {
      if (!Number.isInteger(top) || top < 1 || top > 1000)
        throw new Error('--top takes a whole number from 1 to 1000');
      if (!(gap >= 0 && gap <= 10)) throw new Error('--gap takes decibels from 0 to 10');
      if (typeof timeLimit === 'number' && !(timeLimit > 0))
        throw new Error('--time-limit takes seconds above 0');
      return true;
    })
    .example('$0 rank scenarios/desk-scanner.yaml', 'the quietest adequate builds of the main example')
    .example('$0 rank box.yaml --top 3 --json', 'three rows for a program to read');
}

function solveOptions<T>(args: Argv<T>) {
  return scenarioOptions(args)
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
    .check(({ rank, speed }) => {
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
    );
}

/** Tells the words of a wrong call, where to find help, and the exit code for it. */
class UsageError extends Error {}

/** Arguments with `-` under the name the readers know standard input by: the parser would take it for nothing. */
function givenArguments(): string[] {
  return hideBin(process.argv).map((argument) => (argument === '-' ? STANDARD_INPUT : argument));
}

/** What the parser says, in words a user would use. */
function plainly(message: string): string {
  if (message.startsWith('Not enough non-option arguments'))
    return 'which scenario? Name a file, or - for standard input';
  if (message.startsWith('Did you mean')) return `there is no such command; d${message.slice(1)}`;
  return message.replace(/\s*\n\s*/g, ' ');
}

function parser(settle: (code: ExitCode) => void) {
  return yargs(givenArguments())
    .scriptName('hushwright')
    .locale('en')
    .usage(
      '$0 <command> <scenario>\n\nFinds the quietest fans, arrangement, speeds and vents that keep a compact enclosure cool.',
    )
    .command(
      'rank <scenario>',
      'the quietest adequate builds, best first, proved',
      rankOptions,
      async (options) => {
        const { run } = await import('./commands/rank.ts');
        settle(await run(options));
      },
    )
    .command(
      'solve <scenario>',
      'one build in full: flows, pressures, temperatures, levels',
      solveOptions,
      async (options) => {
        const { run } = await import('./commands/solve.ts');
        settle(await run(options));
      },
    )
    .command(
      'check <scenario>',
      'all problems of the files, or what they hold',
      scenarioOptions,
      async (options) => {
        const { run } = await import('./commands/check.ts');
        settle(await run(options));
      },
    )
    .demandCommand(1, 'Name a command: rank, solve or check.')
    .recommendCommands()
    .strict()
    .version(VERSION)
    .help()
    .alias('h', 'help')
    .epilog(
      `Exit codes: 0 answered, 1 no adequate build, 2 usage or file error, 70 internal error, 130 interrupted.\n\n${CAUTIONS}`,
    )
    .exitProcess(false)
    .wrap(Math.min(100, process.stdout.columns ?? 100))
    .fail((message, error) => {
      throw error && !(error instanceof UsageError) && !message
        ? error
        : new UsageError(plainly(message || error?.message));
    });
}

async function main(): Promise<void> {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    // Whoever reads the answer may stop early: that is their right and no error.
    if (error.code === 'EPIPE') process.exit(process.exitCode ?? EXIT.answered);
    throw error;
  });
  try {
    if (givenArguments().length === 0) {
      parser(() => {}).showHelp((text) => process.stderr.write(`${text}\n`));
      process.exitCode = EXIT.badInput;
      return;
    }
    await parser((code) => {
      process.exitCode = code;
    }).parseAsync();
  } catch (error) {
    if (error instanceof UsageError) {
      process.stderr.write(`hushwright: ${error.message}\nTry: hushwright --help\n`);
      process.exitCode = EXIT.badInput;
      return;
    }
    const message = error instanceof Error ? error.message : String(error);
    process.stderr.write(
      `hushwright: internal error: ${message}\nThis is a fault of the program, not of your files.\n`,
    );
    process.exitCode = EXIT.internal;
  }
}

await main();
