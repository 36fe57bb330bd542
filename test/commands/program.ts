import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

const root = resolve(import.meta.dirname, '../..');

/** The built program. */
export const program = join(root, 'dist/hushwright.js');

/** What a run of the program left behind. */
export interface Run {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the built program in the project's folder. */
export function hushwright(
  args: readonly string[],
  input?: string | Buffer,
  env: NodeJS.ProcessEnv = {},
): Run {
  const run = spawnSync(process.execPath, [program, ...args], {
    cwd: root,
    env: { ...process.env, FORCE_COLOR: undefined, NO_COLOR: undefined, ...env },
    ...(input === undefined ? {} : { input }),
  });
  return { code: run.status, out: run.stdout.toString('utf8'), err: run.stderr.toString('utf8') };
}

/** Text of a shipped scenario. */
export function scenarioText(name: string): string {
  return readFileSync(join(root, 'scenarios', `${name}.yaml`), 'utf8');
}

/** Writes a file into a fresh folder and returns its path. */
export function written(name: string, content: string | Buffer): string {
  const file = join(mkdtempSync(join(tmpdir(), 'hushwright-')), name);
  writeFileSync(file, content);
  return file;
}
