import {
  chmodSync,
  existsSync,
  linkSync,
  lstatSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { Problem } from '../reading/problem.ts';
import { STANDARD_INPUT } from './console.ts';
import { fileProblem } from './text-file.ts';

const TAKEN = 'there is a file of this name already';

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such folder',
  ENOTDIR: 'a part of the path is no folder',
  EACCES: 'nothing may be written here',
  EPERM: 'nothing may be written here',
  EROFS: 'nothing may be written here',
  ENOSPC: 'there is no space left',
  EISDIR: 'this is a folder',
  EEXIST: TAKEN,
};

function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : '';
}

function refusal(file: string, error: unknown): Problem {
  const code = codeOf(error);
  const message = REASONS[code] ?? `the file cannot be written (${code || 'unknown reason'})`;
  return fileProblem(file, message, message === TAKEN ? 'another name, or --force to replace it' : undefined);
}

/**
 * Why a file may not be written: something of its name is there, and may not be replaced.
 *
 * @param file path
 * @param over whether it may be replaced
 */
export function taken(file: string, over: boolean): Problem | undefined {
  if (file === STANDARD_INPUT)
    return fileProblem(file, 'nothing can be written to standard input', 'the name of a file');
  if (over || !lstatSync(file, { throwIfNoEntry: false })) return undefined;
  return refusal(file, Object.assign(new Error(TAKEN), { code: 'EEXIST' }));
}

/** Gives a draft its name, but never that of another file. */
function settle(draft: string, file: string): void {
  try {
    linkSync(draft, file);
    rmSync(draft);
  } catch (error) {
    if (codeOf(error) === 'EEXIST') throw error;
    // Some file systems have no second names: then the name was free a moment ago.
    renameSync(draft, file);
  }
}

/**
 * Writes a text file whole or not at all: into a new file in the same folder first, which then takes its name.
 *
 * @param file path
 * @param text content
 * @param over whether it may take the place of a file that is there, whose permissions it then takes over
 * @returns what went wrong; undefined if it is written
 */
export function writeWhole(file: string, text: string, over: boolean): Problem | undefined {
  const draft = join(dirname(file), `.${basename(file)}.${process.pid}.draft`);
  try {
    const refused = taken(file, over);
    if (refused) return refused;
    const there = lstatSync(file, { throwIfNoEntry: false });
    // "wx" follows no link and replaces nothing.
    writeFileSync(draft, text, { flag: 'wx' });
    if (there?.isFile()) chmodSync(draft, statSync(file).mode);
    if (there) renameSync(draft, file);
    else settle(draft, file);
    return undefined;
  } catch (error) {
    if (existsSync(draft)) rmSync(draft);
    return refusal(file, error);
  }
}
