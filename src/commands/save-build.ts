import { readFileSync, realpathSync } from 'node:fs';
import type { Build } from '../enclosure/enclosure.ts';
import { savedBuild } from '../reading/round-trip/saved-build.ts';
import type { Work } from './command.ts';
import { STANDARD_INPUT } from './console.ts';
import { reasonOf } from './text-file.ts';
import { writeWhole } from './written-file.ts';

/**
 * Puts a build under a name into the file of its scenario.
 *
 * @param work the scenario as it was read
 * @param file it was read from
 * @param build one option a place
 * @param name the build is to have
 * @returns why it was not done; undefined if it was
 */
export function saveBuild(work: Work, file: string, build: Build, name: string): string | undefined {
  if (file === STANDARD_INPUT) return '--save-build needs a file: standard input cannot be written to';
  const { text, enclosure, catalog } = work;
  const saved = savedBuild({ file, text, enclosure, catalog }, build, name);
  if (!saved.ok) return saved.reason;
  try {
    // A link stays a link: the file it leads to is replaced.
    const target = realpathSync(file);
    if (readFileSync(target, 'utf8') !== text) return `${file} has been changed meanwhile`;
    return writeWhole(target, saved.text, true)?.message;
  } catch (error) {
    return `${file}: ${reasonOf(error)}`;
  }
}
