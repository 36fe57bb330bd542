import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Enclosure } from '../enclosure/enclosure.ts';
import { readCatalogs, type TextFile } from '../reading/catalog-file.ts';
import type { Problem } from '../reading/problem.ts';
import type { Reading } from '../reading/readings.ts';
import { readScenario } from '../reading/scenario-file.ts';
import { SOUND_ASSUMPTIONS } from '../sound/sound-assumptions.ts';
import { familyFiles, SHIPPED_CATALOG, shippedFans } from './catalog-folder.ts';
import { STANDARD_INPUT } from './console.ts';

/** What a command needs to begin. */
export type Input =
  | { readonly ok: true; readonly enclosure: Enclosure; readonly readings: readonly Reading[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Files of one folder or one file. */
type Files =
  | { readonly ok: true; readonly files: readonly TextFile[] }
  | { readonly ok: false; readonly problem: Problem };

/** File descriptor of standard input. */
const STANDARD_INPUT_DESCRIPTOR = 0;
/** Largest file that is opened [bytes]. */
const LARGEST_FILE = 10_000_000;

function fileProblem(file: string, message: string, suggestion?: string): Problem {
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
};

function reasonOf(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return REASONS[code] ?? `the file cannot be read (${code || 'unknown reason'})`;
}

function readText(file: string): Files {
  try {
    if (file === STANDARD_INPUT) {
      if (process.stdin.isTTY) {
        return {
          ok: false,
          problem: fileProblem(file, 'standard input is a terminal', 'give a file, or pipe one in'),
        };
      }
      return { ok: true, files: [{ file, text: readFileSync(STANDARD_INPUT_DESCRIPTOR, 'utf8') }] };
    }
    const stat = statSync(file);
    if (!stat.isFile()) return { ok: false, problem: fileProblem(file, 'this is no ordinary file') };
    if (stat.size > LARGEST_FILE) {
      return { ok: false, problem: fileProblem(file, `the file is larger than ${LARGEST_FILE / 1e6} MB`) };
    }
    return { ok: true, files: [{ file, text: readFileSync(file, 'utf8') }] };
  } catch (error) {
    return { ok: false, problem: fileProblem(file, reasonOf(error)) };
  }
}

/** Catalog files of a folder, by name; a file stands for itself. */
function catalogFiles(path: string): readonly Files[] {
  try {
    if (path === STANDARD_INPUT || !statSync(path).isDirectory()) return [readText(path)];
    return familyFiles(path).map((name) => readText(join(path, name)));
  } catch (error) {
    return [{ ok: false, problem: fileProblem(path, reasonOf(error)) }];
  }
}

/**
 * Reads the scenario and all catalogs a command is given; every problem of every file is told.
 *
 * @param scenario path, or `-` for standard input
 * @param catalogs files and folders of fan families beside the shipped one
 * @param shipped whether the shipped catalog is read
 */
export function readInput(scenario: string, catalogs: readonly string[], shipped: boolean): Input {
  const compiled = shipped ? shippedFans() : [];
  const read = [...(compiled ? [] : [SHIPPED_CATALOG]), ...catalogs].flatMap(catalogFiles);
  const unread = read.flatMap((entry) => (entry.ok ? [] : [entry.problem]));
  const fans = readCatalogs(
    read.flatMap((entry) => (entry.ok ? entry.files : [])),
    SOUND_ASSUMPTIONS,
    compiled,
  );
  const text = readText(scenario);
  const problems = [...unread, ...(fans.ok ? [] : fans.problems), ...(text.ok ? [] : [text.problem])];
  if (!text.ok || !fans.ok || unread.length > 0) return { ok: false, problems };
  const [file] = text.files;
  return file ? readScenario(file.file, file.text, fans.fans) : { ok: false, problems };
}
