import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';

const root = resolve(import.meta.dirname, '../..');

/** A file of the repository: its path from the top, with slashes, and its content. */
export interface SourceText {
  readonly path: string;
  readonly text: string;
}

/** Content of one file, by its path from the top of the repository. */
export function textOf(path: string): string {
  return readFileSync(join(root, path), 'utf8');
}

/** All files below a folder at the top of the repository, in the order of their paths. */
export function filesBelow(folder: string): readonly SourceText[] {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(root.length + 1))
    .map((path) => path.replaceAll('\\', '/'))
    .sort()
    .map((path) => ({ path, text: textOf(path) }));
}

/** Those of the named files at the top of the repository that exist. */
export function filesAt(...paths: readonly string[]): readonly SourceText[] {
  return paths.filter((path) => existsSync(join(root, path))).map((path) => ({ path, text: textOf(path) }));
}
