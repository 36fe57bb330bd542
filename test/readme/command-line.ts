/** Options of each command, by their long names, as the source of the program declares them. */
export interface DeclaredOptions {
  readonly commands: ReadonlyMap<string, readonly string[]>;
  /** Long names by their short ones. */
  readonly aliases: ReadonlyMap<string, string>;
  /** Options that may be turned round with `--no-`. */
  readonly switches: readonly string[];
}

interface Declaration {
  readonly name: string;
  readonly body: string;
}

/** Options the parser adds by itself. */
const ALWAYS = ['help', 'version'];

function declarationsIn(body: string): readonly Declaration[] {
  return body
    .split(".option('")
    .slice(1)
    .map((part) => ({ name: part.slice(0, part.indexOf("'")), body: part.slice(0, part.indexOf('})')) }));
}

/** Bodies of the functions of a source file, by name. */
function functionsIn(source: string): ReadonlyMap<string, string> {
  const parts = source.split(/^function /m).slice(1);
  return new Map(parts.map((part) => [/^\w+/.exec(part)?.[0] ?? '', part]));
}

/**
 * What the program takes, read from its source.
 *
 * @param source text of the file that declares commands and options
 */
export function declaredOptions(source: string): DeclaredOptions {
  const functions = functionsIn(source);
  const ofFunction = (name: string): readonly Declaration[] => {
    const body = functions.get(name) ?? '';
    const called = [...body.matchAll(/return (\w+Options)\(/g)].map(([, other = '']) => other);
    return [...called.flatMap(ofFunction), ...declarationsIn(body)];
  };
  const all = [...functions.keys()].flatMap((name) => declarationsIn(functions.get(name) ?? ''));
  const commands = [...source.matchAll(/\.command\(\s*'(\w+) [^']*',\s*'[^']*',\s*(\w+),/g)].map(
    ([, command = '', builder = '']) =>
      [command, [...ofFunction(builder).map(({ name }) => name), ...ALWAYS]] as const,
  );
  const aliases = all.flatMap(({ name, body }) => {
    const short = /alias: '(\w)'/.exec(body)?.[1];
    return short === undefined ? [] : [[short, name] as const];
  });
  return {
    commands: new Map(commands),
    aliases: new Map([...aliases, ['h', 'help']]),
    switches: all.filter(({ body }) => body.includes("type: 'boolean'")).map(({ name }) => name),
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
