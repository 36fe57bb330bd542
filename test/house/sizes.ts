import { posix } from 'node:path';
import type { SourceText } from './source-text.ts';

/** Most lines of a file and most files of a folder: beyond them a reader looks for the seam. */
export const LIMITS = { lines: 200, files: 40 };

function lineCount(text: string): number {
  return text.split('\n').length - (text.endsWith('\n') ? 1 : 0);
}

/**
 * Files that are too long and folders that hold too many.
 *
 * @param files paths and contents
 * @returns a sentence for each
 */
export function oversize(files: readonly SourceText[]): readonly string[] {
  const long = files.flatMap(({ path, text }) => {
    const lines = lineCount(text);
    return lines > LIMITS.lines ? [`${path} has ${lines} lines`] : [];
  });
  const counts = new Map<string, number>();
  for (const { path } of files) {
    const folder = posix.dirname(path);
    counts.set(folder, (counts.get(folder) ?? 0) + 1);
  }
  const crowded = [...counts].flatMap(([folder, count]) =>
    count > LIMITS.files ? [`${folder} holds ${count} files`] : [],
  );
  return [...long, ...crowded];
}
