#!/usr/bin/env node
import yargs from 'yargs';
import { hideBin } from 'yargs/helpers';
import { calls } from './arguments/calls.ts';
import { EXIT, type ExitCode, STANDARD_INPUT } from './commands/console.ts';
import { VERSION } from './commands/version.ts';

const CAUTIONS =
  'Mains wiring, moving blades, hot surfaces and batteries can hurt people: local codes and licensed practice ' +
  'come first, and over-temperature protection must stay in place. See the README.';

/** Tells the words of a wrong call, where to find help, and the exit code for it. */
class UsageError extends Error {}

/** Arguments with `-` under the name the readers know standard input by: the parser would take it for nothing. */
function givenArguments(): string[] {
  return hideBin(process.argv).map((argument) => (argument === '-' ? STANDARD_INPUT : argument));
}

/** What a command lacks, by the words that must follow it. */
function missingWord(): string {
  const [name] = givenArguments();
  const word = /<(\w+)>/.exec(calls.find((each) => each.name === name)?.usage ?? '')?.[1] ?? 'scenario';
  return word === 'scenario'
    ? 'which scenario? Name a file, or - for standard input'
    : `which ${word}? See ${name} --help`;
}

/** What the parser says, in words a user would use. */
function plainly(message: string): string {
  if (message.startsWith('Not enough non-option arguments')) return missingWord();
  if (message.startsWith('Did you mean')) return `there is no such command; d${message.slice(1)}`;
  return message.replace(/\s*\n\s*/g, ' ');
}

/** Whether help is wanted: the parser lays its text out at every call, which takes time nobody else should wait for. */
function asksForHelp(): boolean {
  const given = givenArguments();
  return given.length === 0 || given.some((word) => word === '--help' || word === '-h');
}

/** `a, b or c`. */
function oneOf(names: readonly string[]): string {
  return `${names.slice(0, -1).join(', ')} or ${names.at(-1)}`;
}

function parser(settle: (code: ExitCode) => void) {
  const program = yargs(givenArguments())
    .scriptName('hushwright')
    .locale('en')
    .usage(
      '$0 <command> <scenario>\n\nFinds the quietest fans, arrangement, speeds and vents that keep a compact enclosure cool.',
    );
  return calls
    .reduce((args, { attach }) => attach(args, settle), program)
    .demandCommand(1, `Name a command: ${oneOf(calls.map(({ name }) => name))}.`)
    .recommendCommands()
    .strict()
    .version(VERSION)
    .help()
    .alias('h', 'help')
    .epilog(
      `Exit codes: 0 answered, 1 no adequate build, 2 usage or file error, 70 internal error, 130 interrupted.\n\n${CAUTIONS}`,
    )
    .exitProcess(false)
    .wrap(asksForHelp() ? Math.min(100, process.stdout.columns ?? 100) : null)
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
