import type { ArgumentsCamelCase, Argv } from 'yargs';
import type { ExitCode } from '../commands/console.ts';

/** One way to call the program, as the parser is told of it. */
export interface Call {
  /** First word. */
  readonly name: string;
  /** The command and what follows it. */
  readonly usage: string;
  readonly describe: string;
  /** Adds its options to a parser, for those who only want to know them. */
  readonly declare: (args: Argv) => void;
  /** Tells the parser of the call; `settle` gets the exit code once the command has run. */
  readonly attach: (args: Argv, settle: (code: ExitCode) => void) => Argv;
}

/** What makes a call. */
interface CallParts<T> {
  /** The command and what follows it, such as `rank <scenario>`. */
  readonly usage: string;
  readonly describe: string;
  /** Adds options, checks and examples. */
  readonly options: (args: Argv) => Argv<T>;
  /** Loads the command and runs it: what is not called is not loaded. */
  readonly run: (options: ArgumentsCamelCase<T>) => Promise<ExitCode>;
}

/**
 * A call with its options typed for the command that takes them.
 *
 * @param parts usage, help, options and the command itself
 */
export function call<T>({ usage, describe, options, run }: CallParts<T>): Call {
  return {
    name: usage.split(' ')[0] ?? usage,
    usage,
    describe,
    declare: (args) => void options(args),
    attach: (args, settle) =>
      args.command(usage, describe, options, async (given) => {
        settle(await run(given));
      }),
  };
}
