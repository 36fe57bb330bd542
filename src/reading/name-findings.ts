import { nearestName } from '../quantities/nearest.ts';
import type { Findings } from './findings.ts';
import { valueAt } from './form-tree.ts';
import { oneOf } from './issue-words.ts';
import type { Finding, Path } from './problem.ts';

/** Most names a wrong one is compared with [-]: thousands of wrong ones shall not take minutes. */
const MOST_COMPARED = 300;

/**
 * A name that nothing bears.
 *
 * @param what it should be, for example "chamber"
 * @param name as written
 * @param known names that exist
 * @param path of the name in the file
 * @param at whether the name is a key
 */
export function unknownName(
  what: string,
  name: string,
  known: readonly string[],
  path: Path,
  at: Finding['at'] = 'value',
): Finding {
  const near = nearestName(name, known.slice(0, MOST_COMPARED));
  return {
    code: 'unknown-name',
    path,
    at,
    message: `there is no ${what} "${name}"`,
    ...(known.length > 0 ? { expected: oneOf(known) } : {}),
    ...(near ? { suggestion: near } : {}),
  };
}

/**
 * Reports a name that nothing bears, unless nothing has a name: then the list of names is missing or wrong, which
 * is reported where the list should be.
 *
 * @param what it should be, for example "chamber"
 * @param name as written
 * @param known names that exist
 * @param path of the name in the file
 * @param findings receives the finding
 */
export function refuseUnknown(
  what: string,
  name: string,
  known: readonly string[],
  path: Path,
  findings: Findings,
): void {
  if (known.length > 0) findings.push(unknownName(what, name, known, path));
}

/**
 * Finds names given twice in a list of maps, such as two legs of one name.
 *
 * @param what they are, for example "leg"
 * @param key that holds the name
 * @param items as written
 * @param path of the list
 * @param findings receives one finding for each repetition
 * @returns the names in order; items without a name are left out
 */
export function distinctNames(
  what: string,
  key: string,
  items: readonly unknown[],
  path: Path,
  findings: Findings,
): readonly string[] {
  const seen = new Set<string>();
  for (const [index, item] of items.entries()) {
    const name = valueAt(item, [key]);
    if (typeof name !== 'string') continue;
    if (seen.has(name)) findings.push(duplicate(what, name, [...path, index, key]));
    seen.add(name);
  }
  return [...seen];
}

/**
 * A name that stands a second time where it may stand once.
 *
 * @param what it names
 * @param name as written
 * @param path of the second one
 */
export function duplicate(what: string, name: string, path: Path): Finding {
  return { code: 'duplicate-name', path, at: 'value', message: `a second ${what} is called "${name}"` };
}
