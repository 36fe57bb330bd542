import type { z } from 'zod';
import { nearestName } from '../quantities/nearest.ts';
import { describeValue } from '../quantities/written.ts';
import { branchesOf, formAt, keysOf, tagsOf, valueAt } from './form-tree.ts';
import { describeIssue, describeWord, type Words } from './issue-words.ts';
import type { Finding, Path } from './problem.ts';

type Issue = z.core.$ZodIssue;
type Form = z.core.$ZodType;

/** What was checked: the form, the written value and where that value stands in the file. */
export interface Checked {
  readonly form: Form | undefined;
  readonly value: unknown;
  readonly path: Path;
}

/**
 * Turns what zod has to say about a written value into findings: unknown keys with the key that was probably
 * meant, missing keys, and values with what was found and expected.
 *
 * @param issues of one check
 * @param checked form, value and its path in the file
 */
export function findingsOf(issues: readonly Issue[], checked: Checked): Finding[] {
  const wrongMaps = issues.filter((issue) => issue.code === 'unrecognized_keys').map(({ path }) => path);
  // What a wrong key leaves undone is no second problem: "a part needs a limit" beside "limt is no key".
  const first = issues.filter((issue) => !wrongMaps.some((path) => isAboutWhole(issue, path)));
  const findings = first.flatMap((issue) => findingsOfIssue(issue, checked));
  // A misspelt key is reported once, not as unknown and as missing as well.
  const meant = new Set(findings.filter(({ code }) => code === 'misspelt-key').map(meantPath));
  return findings.filter(({ code, path }) => code !== 'missing-key' || !meant.has(JSON.stringify(path)));
}

/** True of an issue that says how the keys of the map at a path go together. */
function isAboutWhole(issue: Issue, map: Issue['path']): boolean {
  if (issue.code !== 'custom' || issue.params !== undefined) return false;
  const within = issue.path.length - map.length;
  return (within === 0 || within === 1) && map.every((step, index) => step === issue.path[index]);
}

function meantPath({ path, suggestion = '' }: Finding): string {
  return JSON.stringify([...path.slice(0, -1), suggestion]);
}

function findingsOfIssue(issue: Issue, checked: Checked): Finding[] {
  const path = issue.path.map((step) => (typeof step === 'symbol' ? String(step) : step));
  if (issue.code === 'unrecognized_keys') return unknownKeys(issue.keys, path, checked);
  const value = valueAt(checked.value, path);
  const place = [...checked.path, ...path];
  const lacks = value === undefined && path.length > 0;
  if (issue.code === 'invalid_union' && issue.errors.length > 0) {
    return lacks ? [missing(undefined, place)] : bestBranch(issue, path, checked);
  }
  const words = issue.code === 'invalid_union' ? describeTag(path, checked) : describeIssue(issue, value);
  return lacks
    ? [missing(words.expected, place)]
    : [{ code: codeOf(issue), path: place, at: 'value', ...words }];
}

function unknownKeys(keys: readonly string[], path: Path, checked: Checked): Finding[] {
  const map = valueAt(checked.value, path);
  const known = keysOf(formAt(checked.form, path, checked.value));
  const free = known.filter((key) => valueAt(map, [key]) === undefined);
  return keys.map((key) => unknownKey(key, known, free, [...checked.path, ...path, key]));
}

const COMMA = 'there is no such key here: if it is the rest of a number, write a decimal point, not a comma';

/**
 * A key that does not belong where it stands.
 *
 * @param key as written
 * @param known keys that may stand there
 * @param free those of them that do not stand there yet
 * @param path of the key in the file
 */
export function unknownKey(
  key: string,
  known: readonly string[],
  free: readonly string[],
  path: Path,
): Finding {
  const meant = nearestName(key, free);
  if (meant) return misspelt(key, meant, path);
  if (/^\d/.test(key)) return { code: 'unknown-key', path, at: 'key', message: COMMA, found: key };
  const expected = known.length > 0 ? { expected: `one of ${known.join(', ')}` } : {};
  return { code: 'unknown-key', path, at: 'key', message: `there is no key "${key}" here`, ...expected };
}

/**
 * A key that is written wrongly.
 *
 * @param key as written
 * @param meant the key it stands for
 * @param path of the key in the file
 */
export function misspelt(key: string, meant: string, path: Path): Finding {
  const message = `there is no key "${key}", did you mean "${meant}"?`;
  return { code: 'misspelt-key', path, at: 'key', message, suggestion: meant };
}

/**
 * A key that is not there.
 *
 * @param expected what it should hold, in words, if that can be said
 * @param path the key would have
 */
export function missing(expected: string | undefined, path: Path): Finding {
  const message = `"${path.at(-1)}" is missing`;
  return { code: 'missing-key', path, at: 'key', message, ...(expected ? { expected } : {}) };
}

/** Of the ways to write a value, the one that was followed furthest. */
function bestBranch(issue: z.core.$ZodIssueInvalidUnion, path: Path, checked: Checked): Finding[] {
  const branches = branchesOf(formAt(checked.form, path, checked.value));
  const place = [...checked.path, ...path];
  const value = valueAt(checked.value, path);
  let best: { readonly score: number; readonly findings: Finding[] } | undefined;
  for (const [index, issues] of issue.errors.entries()) {
    const findings = findingsOf(issues, { form: branches[index], value, path: place });
    const score = branchScore(findings, place.length);
    if (!best || score > best.score) best = { score, findings };
  }
  return best?.findings ?? [];
}

/** Depth first, then fewness; a value of the wrong kind altogether comes last. */
function branchScore(findings: readonly Finding[], root: number): number {
  const depths = findings.map(({ code, path }) => {
    const keyIsWrong = code === 'missing-key' || code === 'unknown-key' || code === 'misspelt-key';
    return path.length - root - (keyIsWrong ? 1 : 0);
  });
  const wrongKind = findings.some(({ code, path }) => code === 'wrong-value' && path.length === root);
  return wrongKind ? -1 : Math.max(0, ...depths) + 1 / (1 + findings.length);
}

function codeOf(issue: Issue): Finding['code'] {
  const bound = issue.code === 'custom' && issue.params !== undefined && issue.params['found'] === undefined;
  const limit = issue.code === 'too_small' || issue.code === 'too_big' || issue.code === 'not_multiple_of';
  return bound || limit ? 'out-of-range' : 'wrong-value';
}

/** A tagged union whose tag fits no branch. */
function describeTag(path: Path, checked: Checked): Words {
  const [tag] = path.slice(-1);
  const union = formAt(checked.form, path.slice(0, -1), checked.value);
  return describeWord(describeValue(valueAt(checked.value, path)), tagsOf(union, String(tag)));
}
