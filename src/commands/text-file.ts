import { closeSync, openSync, readSync, statSync } from 'node:fs';
import type { TextFile } from '../reading/catalog-file.ts';
import type { Problem } from '../reading/problem.ts';
import { STANDARD_INPUT } from './console.ts';

/** A file with its text, or why there is none. */
export type ReadText =
  | { readonly ok: true; readonly files: readonly TextFile[] }
  | { readonly ok: false; readonly problem: Problem };

/** File descriptor of standard input. */
const STANDARD_INPUT_DESCRIPTOR = 0;
/** Largest file that is read [bytes]. */
const LARGEST_FILE = 10_000_000;
/** Bytes read at a time. */
const CHUNK = 65_536;
/** How long to wait for more from a pipe that has nothing yet [ms]. */
const PAUSE = 5;

/**
 * A problem with a file as a whole.
 *
 * @param file its name
 * @param message one short sentence
 * @param suggestion what to do
 */
export function fileProblem(file: string, message: string, suggestion?: string): Problem {
  return {
    code: 'unreadable',
    file,
    line: 1,
    column: 1,
    path: [],
    message,
    ...(suggestion === undefined ? {} : { suggestion }),
  };
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EACCES: 'the file may not be read',
  EISDIR: 'this is a folder',
  ENOTDIR: 'a part of the path is no folder',
  ELOOP: 'the links of this path go round in circles',
  ENAMETOOLONG: 'the name is too long',
};

/** What an error of the file system means, in words. */
export function reasonOf(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return REASONS[code] ?? `the file cannot be read (${code || 'unknown reason'})`;
}

/** One read; a pipe that has nothing yet is waited for. */
function readSome(descriptor: number, into: Buffer): number {
  for (;;) {
    try {
      return readSync(descriptor, into, 0, into.length, null);
    } catch (error) {
      const code = error instanceof Error && 'code' in error ? error.code : undefined;
      if (code === 'EOF') return 0;
      if (code !== 'EAGAIN') throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, PAUSE);
    }
  }
}

/** All bytes, or undefined if there are too many: a stream need not end. */
function readAll(descriptor: number): Buffer | undefined {
  const chunks: Buffer[] = [];
  let size = 0;
  for (;;) {
    const chunk = Buffer.allocUnsafe(CHUNK);
    const count = readSome(descriptor, chunk);
    if (count === 0) return Buffer.concat(chunks);
    size += count;
    if (size > LARGEST_FILE) return undefined;
    chunks.push(chunk.subarray(0, count));
  }
}

/** The encoding of a text that is not UTF-8, if its first bytes give it away. */
function otherEncoding(bytes: Buffer): string | undefined {
  const [first, second] = bytes;
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff)) return 'UTF-16';
  // In UTF-16 without a mark every other byte of plain letters is zero.
  if (bytes.length >= 4 && (first === 0) !== (second === 0) && (bytes[2] === 0) === (first === 0)) {
    return (bytes[3] === 0) === (second === 0) ? 'UTF-16' : undefined;
  }
  return undefined;
}

function textOf(file: string, descriptor: number): ReadText {
  const bytes = readAll(descriptor);
  if (!bytes)
    return { ok: false, problem: fileProblem(file, `the file is larger than ${LARGEST_FILE / 1e6} MB`) };
  const encoding = otherEncoding(bytes);
  if (encoding === undefined) return { ok: true, files: [{ file, text: bytes.toString('utf8') }] };
  const problem = fileProblem(file, `this file is in ${encoding}, not in UTF-8`, 'save it as UTF-8');
  return { ok: false, problem: { ...problem, code: 'not-text' } };
}

/**
 * Reads a text file, or standard input. Devices, pipes by name and what is too large are refused, not opened.
 *
 * @param file path, or the name of standard input
 */
export function readText(file: string): ReadText {
  try {
    if (file === STANDARD_INPUT) {
      if (!process.stdin.isTTY) return textOf(file, STANDARD_INPUT_DESCRIPTOR);
      const problem = fileProblem(file, 'standard input is a terminal', 'give a file, or pipe one in');
      return { ok: false, problem };
    }
    const stat = statSync(file);
    if (!stat.isFile()) return { ok: false, problem: fileProblem(file, 'this is no ordinary file') };
    if (stat.size > LARGEST_FILE) {
      return { ok: false, problem: fileProblem(file, `the file is larger than ${LARGEST_FILE / 1e6} MB`) };
    }
    const descriptor = openSync(file, 'r');
    try {
      return textOf(file, descriptor);
    } finally {
      closeSync(descriptor);
    }
  } catch (error) {
    return { ok: false, problem: fileProblem(file, reasonOf(error)) };
  }
}
