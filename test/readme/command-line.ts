import type { Argv } from 'yargs';
import type { Call } from '../../src/arguments/call.ts';

/** Options of each command, by their long names, as the program declares them. */
export interface DeclaredOptions {
  readonly commands: ReadonlyMap<string, readonly string[]>;
  /** Long names by their short ones. */
  readonly aliases: ReadonlyMap<string, string>;
  /** Options that may be turned round with `--no-`. */
  readonly switches: readonly string[];
  /** Lines the help gives as examples. */
  readonly examples: readonly string[];
}

interface Declaration {
  readonly name: string;
  readonly alias: string | undefined;
  readonly type: string | undefined;
}

/** What one command tells the parser. */
interface Told {
  readonly options: Declaration[];
  readonly examples: string[];
}

/** Options the parser adds by itself. */
const ALWAYS = ['help', 'version'];

/** Stands in for the parser: writes down what it is told and does nothing. */
function recorder(told: Told): Argv {
  const heard: Readonly<Record<string, (...given: readonly never[]) => void>> = {
    option: (name: string, { alias, type }: { alias?: string; type?: string }) => {
      told.options.push({ name, alias, type });
    },
    example: (line: string) => {
      told.examples.push(line);
    },
    command: (_usage: string, _describe: string, options: (args: Argv) => unknown) => {
      options(recorder(told));
    },
  };
  const parser: Argv = new Proxy({} as Argv, {
    get:
      (_, method: string) =>
      (...given: readonly never[]) => {
        heard[method]?.(...given);
        return parser;
      },
  });
  return parser;
}

/**
 * What the program takes, as it tells its parser.
 *
 * @param calls every command of the program
 */
export function declaredOptions(calls: readonly Call[]): DeclaredOptions {
  const told = calls.map(({ name, attach }) => {
    const own: Told = { options: [], examples: [] };
    attach(recorder(own), () => {});
    return { name, ...own };
  });
  const all = told.flatMap(({ options }) => options);
  return {
    commands: new Map(
      told.map(({ name, options }) => [name, [...options.map((option) => option.name), ...ALWAYS]]),
    ),
    aliases: new Map([
      ...all.flatMap(({ name, alias }) => (alias === undefined ? [] : [[alias, name] as const])),
      ['h', 'help'],
    ]),
    switches: all.filter(({ type }) => type === 'boolean').map(({ name }) => name),
    examples: told.flatMap(({ examples }) => examples),
  };
}

/**
 * What is wrong with a line that calls the program.
 *
 * @param line of a document, beginning with a call
 * @param declared what the program takes
 * @returns a sentence for each fault, none if the line would be accepted
 */
export function callFaults(line: string, declared: DeclaredOptions): readonly string[] {
  const words = line.split(/\s+/).slice(line.startsWith('npx ') || line.startsWith('node ') ? 2 : 1);
  const [command = '', ...rest] = words;
  if (ALWAYS.includes(command.replace(/^--/, ''))) return [];
  const options = declared.commands.get(command);
  if (!options) return [`there is no command ${command}`];
  const given = rest.filter((word) => word.startsWith('-') && word !== '-');
  return given.flatMap((word) => {
    const short = /^-(\w)$/.exec(word)?.[1];
    const long = short === undefined ? word.slice(2) : (declared.aliases.get(short) ?? word);
    const turned = long.replace(/^no-/, '');
    const known = options.includes(long) || (turned !== long && declared.switches.includes(turned));
    return known ? [] : [`${command} has no option ${word}`];
  });
}
