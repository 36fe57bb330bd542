import type { Argv } from 'yargs';
import type { CommandWords, OptionWords } from '../commands/completion-scripts.ts';
import type { Call } from './call.ts';

/** What an option is declared with, as far as a shell has to know it. */
interface Declared {
  readonly type?: string;
  readonly alias?: string;
  readonly choices?: readonly string[];
  readonly describe?: string;
  readonly default?: unknown;
}

/** Names and what they are declared with, in order. */
interface Recorded {
  readonly options: [string, Declared][];
  readonly positionals: [string, Declared][];
}

/** Stands in for a parser and writes down what it is told; whatever else is asked of it changes nothing. */
function recorderOf(recorded: Recorded): Argv {
  const recorder: unknown = new Proxy(
    {},
    {
      get: (_, method) => (name: string, declared: Declared) => {
        if (method === 'option') recorded.options.push([name, declared]);
        if (method === 'positional') recorded.positionals.push([name, declared]);
        return recorder;
      },
    },
  );
  return recorder as Argv;
}

/** A switch that is on by itself is only ever turned off. */
function optionWords([name, declared]: [string, Declared]): OptionWords {
  const { type, alias, choices = [], describe = '' } = declared;
  return {
    name: type === 'boolean' && declared.default === true ? `no-${name}` : name,
    ...(alias === undefined ? {} : { letter: alias }),
    describe,
    takesValue: type !== 'boolean',
    values: choices,
  };
}

const HELP: OptionWords = { name: 'help', letter: 'h', describe: 'help', takesValue: false, values: [] };

function wordsOf({ name, describe, declare }: Call): CommandWords {
  const recorded: Recorded = { options: [], positionals: [] };
  declare(recorderOf(recorded));
  const words = recorded.positionals.map(([, { choices = [] }]) => choices);
  return { name, describe, options: [...recorded.options.map(optionWords), HELP], words };
}

/**
 * Commands with their options, as they are declared to the parser.
 *
 * @param calls of the program
 */
export function optionTable(calls: readonly Call[]): readonly CommandWords[] {
  return calls.map(wordsOf);
}
