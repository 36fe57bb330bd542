import { spawnSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { calls } from '../../src/arguments/calls.ts';
import { optionTable } from '../../src/arguments/option-table.ts';
import { completionScript, SHELLS, type Shell } from '../../src/commands/completion-scripts.ts';
import { hushwright } from './program.ts';

const folder = mkdtempSync(join(tmpdir(), 'hushwright-completion-'));
const table = optionTable(calls);
const script = (shell: Shell): string => join(folder, `completion.${shell}`);
for (const shell of SHELLS) writeFileSync(script(shell), completionScript(shell, table));
writeFileSync(join(folder, 'box.yaml'), '');

/** Whether a shell is installed where the tests run: bash always is. */
function isThere(shell: Shell): boolean {
  return runShell(shell, '-c', 'true').status === 0;
}

function runShell(shell: Shell, ...args: readonly string[]) {
  return spawnSync(shell, args, { cwd: folder });
}

/** What bash offers for the last word of a line. */
function offeredByBash(...words: readonly string[]): readonly string[] {
  const code = `source "$1"; shift; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _hushwright; printf '%s\\n' "\${COMPREPLY[@]}"`;
  const run = spawnSync('bash', ['-c', code, 'bash', script('bash'), 'hushwright', ...words], {
    cwd: folder,
  });
  expect(run.stderr.toString()).toBe('');
  return run.stdout
    .toString()
    .trim()
    .split('\n')
    .filter((word) => word !== '');
}

/** What fish offers; it asks its own completion of a line. */
function offeredByFish(line: string): readonly string[] {
  const code = `source ${script('fish')}; complete -C '${line}'`;
  const run = runShell('fish', '--no-config', '-c', code);
  return run.stdout
    .toString()
    .trim()
    .split('\n')
    .map((offer) => offer.split('\t')[0] ?? '');
}

/** What zsh offers: the words that its functions for completion are given. */
function offeredByZsh(...words: readonly string[]): readonly string[] {
  const code = `
autoload -Uz compinit; compinit -D -u
source ${script('zsh')}
compadd() { local -a all; while (($#)); do case $1 in --) shift; break;; -a) shift;; esac; shift; done; print -l -- "$@" }
_describe() { local name=$4; print -l -- "\${(@)\${(P)name}%%:*}" }
_arguments() { print -l -- "$@" }
words=(hushwright ${words.map((word) => `'${word}'`).join(' ')}); CURRENT=$#words
_hushwright
`;
  return runShell('zsh', '-f', '-c', code).stdout.toString().trim().split('\n');
}

const commandNames = table.map(({ name }) => name);
/** Values that `rank --by` takes. */
const orders =
  table.find(({ name }) => name === 'rank')?.options.find(({ name }) => name === 'by')?.values ?? [];

describe('the table of options', () => {
  // The help is made by the parser from the same declarations, by another way.
  it.each(['rank', 'solve', 'fans', 'new'])('has what the help of %s shows', (name) => {
    const options = table.find((command) => command.name === name)?.options ?? [];
    const [help = ''] = hushwright([name, '--help']).out.split('Examples:');
    const shown = [...help.matchAll(/^ +(?:-\w, )?--([\w-]+) /gm)].map(([, option = '']) => option);
    const known = options.map((option) => option.name.replace(/^no-/, ''));
    expect(known.toSorted()).toEqual(shown.filter((option) => option !== 'version').toSorted());
  });
});

describe('bash', () => {
  it('completes commands, options, values and, with nothing of its own, files', () => {
    expect(offeredByBash('')).toEqual([...commandNames, '--help', '--version']);
    expect(offeredByBash('ra')).toEqual(['rank']);
    expect(offeredByBash('rank', 'box.yaml', '--to')).toEqual(['--top']);
    expect(orders).toContain('loudest');
    expect(offeredByBash('rank', 'box.yaml', '--by', '')).toEqual(orders);
    expect(offeredByBash('schema', '')).toEqual(['scenario', 'catalog']);
    expect(offeredByBash('completion', 'z')).toEqual(['zsh']);
    expect(offeredByBash('rank', 'b')).toEqual([]);
    expect(offeredByBash('rank', 'box.yaml', '--no-')).toContain('--no-shipped');
    expect(completionScript('bash', table)).toContain('complete -o default');
  });
});

describe('zsh', () => {
  it('completes commands, options and values', () => {
    // Without the shell only the form of the script is looked at: its brackets and quotation marks go in pairs.
    const text = completionScript('zsh', table);
    expect((text.match(/'/g) ?? []).length % 2).toBe(0);
    expect(text).toMatch(/^#compdef hushwright\n/);
    if (!isThere('zsh')) return;
    expect(runShell('zsh', '-n', script('zsh')).stderr.toString()).toBe('');
    expect(offeredByZsh('')).toEqual(commandNames);
    const rank = offeredByZsh('rank', '');
    expect(rank.find((argument) => argument.startsWith('*--by['))).toContain(`:by:(${orders.join(' ')})`);
    expect(rank.find((argument) => argument.startsWith('1:'))).toBe('1:word:_files');
    expect(offeredByZsh('schema', '').find((argument) => argument.startsWith('1:'))).toBe(
      '1:word:(scenario catalog)',
    );
  });
});

describe('fish', () => {
  it('completes commands, options and values', () => {
    const text = completionScript('fish', table);
    expect(
      text.split('\n').filter((line) => line !== '' && !/^(?:#|complete -c hushwright )/.test(line)),
    ).toEqual([]);
    if (!isThere('fish')) return;
    expect(runShell('fish', '-n', script('fish')).stderr.toString()).toBe('');
    expect(offeredByFish('hushwright ').toSorted()).toEqual(commandNames.toSorted());
    expect(offeredByFish('hushwright rank box.yaml --by ').toSorted()).toEqual(orders.toSorted());
    expect(offeredByFish('hushwright rank box.yaml --to')).toContain('--top');
    expect(offeredByFish('hushwright schema ').toSorted()).toEqual(['catalog', 'scenario']);
    expect(offeredByFish('hushwright rank b')).toContain('box.yaml');
  });
});
