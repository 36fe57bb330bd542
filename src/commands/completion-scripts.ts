/** Shells that can be told how to complete a line. */
export const SHELLS = ['bash', 'zsh', 'fish'] as const;
export type Shell = (typeof SHELLS)[number];

/** An option, as a shell has to know it. */
export interface OptionWords {
  readonly name: string;
  /** Its short name. */
  readonly letter?: string;
  readonly describe: string;
  readonly takesValue: boolean;
  /** Values to choose from; a file or anything else if there are none. */
  readonly values: readonly string[];
}

/** A command, as a shell has to know it. */
export interface CommandWords {
  readonly name: string;
  readonly describe: string;
  readonly options: readonly OptionWords[];
  /** Values for each word after the command; a file or anything else where there are none. */
  readonly words: readonly (readonly string[])[];
}

const PROGRAM = 'hushwright';

function longNames({ options }: CommandWords): string {
  return options.map(({ name }) => `--${name}`).join(' ');
}

/** Lines of a case for each option with values to choose from, and for those that take anything. */
function bashValues(command: CommandWords): readonly string[] {
  return command.options
    .filter(({ takesValue }) => takesValue)
    .map(({ name, values }) => {
      const words = values.length > 0 ? `words="${values.join(' ')}"` : 'return';
      return `    '${command.name} --${name}') ${words} ;;`;
    });
}

function bashScript(commands: readonly CommandWords[]): string {
  const names = commands.map(({ name }) => name).join(' ');
  return `# Completion of ${PROGRAM} for bash: source it, or put it where bash looks for completions.
_${PROGRAM}() {
  local current=\${COMP_WORDS[COMP_CWORD]} before=\${COMP_WORDS[COMP_CWORD-1]} command=\${COMP_WORDS[1]} words=
  COMPREPLY=()
  if ((COMP_CWORD == 1)); then
    COMPREPLY=($(compgen -W "${names} --help --version" -- "$current"))
    return
  fi
  case "$command $before" in
${commands.flatMap(bashValues).join('\n')}
  esac
  if [[ -z $words && $COMP_CWORD -eq 2 && $current != -* ]]; then
    case "$command" in
${commands
  .filter(({ words }) => (words[0] ?? []).length > 0)
  .map(({ name, words }) => `      ${name}) words="${words[0]?.join(' ')}" ;;`)
  .join('\n')}
    esac
  fi
  if [[ -z $words && $current == -* ]]; then
    case "$command" in
${commands.map((command) => `      ${command.name}) words="${longNames(command)}" ;;`).join('\n')}
    esac
  fi
  # With no words of its own the line goes on with a file.
  [[ -n $words ]] && COMPREPLY=($(compgen -W "$words" -- "$current"))
  return 0
}
complete -o default -F _${PROGRAM} ${PROGRAM}
`;
}

/** Text between single quotes of a shell. */
function singleQuoted(text: string): string {
  return `'${text.replaceAll("'", `'\\''`)}'`;
}

/** Text that stands in brackets or before a colon of an argument of zsh. */
function zshText(text: string): string {
  return text.replace(/[[\]:\\]/g, '\\$&');
}

function zshOption({ name, letter, describe, takesValue, values }: OptionWords): string {
  const value = values.length > 0 ? `:${name}:(${values.join(' ')})` : `:${name}:_files`;
  const tail = `[${zshText(describe)}]${takesValue ? value : ''}`;
  const names = letter === undefined ? [`--${name}`] : [`-${letter}`, `--${name}`];
  return names.map((each) => singleQuoted(`*${each}${tail}`)).join(' ');
}

function zshCase({ name, options, words }: CommandWords): string {
  const places = words.map((values, index) =>
    singleQuoted(`${index + 1}:word:${values.length > 0 ? `(${values.join(' ')})` : '_files'}`),
  );
  return `    ${name})\n      _arguments ${[...options.map(zshOption), ...places].join(' \\\n        ')}\n      ;;`;
}

function zshScript(commands: readonly CommandWords[]): string {
  const list = commands.map(({ name, describe }) => `    ${singleQuoted(`${name}:${zshText(describe)}`)}`);
  return `#compdef ${PROGRAM}
# Completion of ${PROGRAM} for zsh: save it as _${PROGRAM} in a folder of fpath, or source it after compinit.
_${PROGRAM}() {
  local -a commands
  commands=(
${list.join('\n')}
  )
  if ((CURRENT == 2)); then
    _describe -t commands command commands
    return
  fi
  shift words
  ((CURRENT--))
  case $words[1] in
${commands.map(zshCase).join('\n')}
  esac
}
if [[ \${funcstack[1]} == _${PROGRAM} ]]; then
  _${PROGRAM} "$@"
else
  compdef _${PROGRAM} ${PROGRAM}
fi
`;
}

function fishOption(command: string, { name, letter, describe, takesValue, values }: OptionWords): string {
  const short = letter === undefined ? '' : ` -s ${letter}`;
  const choose = values.length > 0 ? ` -x -a ${singleQuoted(values.join(' '))}` : ' -r';
  const value = takesValue ? choose : '';
  const told = describe === '' ? '' : ` -d ${fishQuoted(describe)}`;
  return `complete -c ${PROGRAM} -n '__fish_seen_subcommand_from ${command}'${short} -l ${name}${value}${told}`;
}

/** Text between single quotes of fish. */
function fishQuoted(text: string): string {
  return `'${text.replace(/[\\']/g, '\\$&')}'`;
}

function fishCommand({ name, describe, options, words }: CommandWords): readonly string[] {
  const [first = []] = words;
  const seen = `-n '__fish_seen_subcommand_from ${name}'`;
  return [
    `complete -c ${PROGRAM} -f -n __fish_use_subcommand -a ${name} -d ${fishQuoted(describe)}`,
    ...(first.length > 0 ? [`complete -c ${PROGRAM} -f ${seen} -a ${singleQuoted(first.join(' '))}`] : []),
    ...options.map((option) => fishOption(name, option)),
  ];
}

function fishScript(commands: readonly CommandWords[]): string {
  const head = `# Completion of ${PROGRAM} for fish: save it as ${PROGRAM}.fish in the folder of completions.`;
  return `${[head, ...commands.flatMap(fishCommand)].join('\n')}\n`;
}

const scripts: Readonly<Record<Shell, (commands: readonly CommandWords[]) => string>> = {
  bash: bashScript,
  zsh: zshScript,
  fish: fishScript,
};

/**
 * A script that tells a shell how to complete a line.
 *
 * @param shell which
 * @param commands of the program, with their options
 */
export function completionScript(shell: Shell, commands: readonly CommandWords[]): string {
  return scripts[shell](commands);
}
