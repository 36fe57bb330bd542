import { z } from 'zod';
import { findingsOf } from './form-issues.ts';
import { name } from './name.ts';
import { compareProblems, type Finding, type Path, type Problem } from './problem.ts';
import { sourceMap } from './source-map.ts';
import { lineStarts, placeIn } from './text-place.ts';
import type { YamlSource } from './yaml-source.ts';

/** All that was found wrong so far in one file; readers add to it and go on. */
export type Findings = Finding[];

/** A map as it was written. */
export type WrittenMap = Readonly<Record<string, unknown>>;

/**
 * Checks a written value against a form.
 *
 * @param form to fit
 * @param value as written
 * @param path of the value in the file
 * @param findings receives what does not fit
 * @returns what the form makes of it, or undefined if it does not fit
 */
export function check<Value>(
  form: z.ZodType<Value>,
  value: unknown,
  path: Path,
  findings: Findings,
): Value | undefined {
  const result = form.safeParse(value);
  if (result.success) return result.data;
  findings.push(...findingsOf(result.error.issues, { form, value, path }));
  return undefined;
}

/**
 * A form that sees to the keys of a map only, so that one wrong value does not hide the others.
 *
 * @param form of the whole map
 */
export function keysOnly(form: z.ZodObject): z.ZodType {
  const present = z.unknown().refine((value) => value !== undefined);
  const shape = Object.entries(form.shape).map(([key, inner]) => {
    return [key, z.safeParse(inner, undefined).success ? z.unknown().optional() : present] as const;
  });
  return z.strictObject(Object.fromEntries(shape));
}

/**
 * The entries of a written map in the order of the file, for maps with names of the user's choice.
 *
 * @param value as written
 * @param path of the value in the file
 * @param findings receives a finding if it is no map
 */
export function entriesOf(
  value: unknown,
  path: Path,
  findings: Findings,
): readonly (readonly [string, unknown])[] {
  // Not the form's copy: that would drop a key "__proto__" without a word.
  if (isMap(value)) {
    const entries = Object.entries(value);
    for (const [key] of entries) checkKey(key, [...path, key], findings);
    return entries;
  }
  if (value !== undefined) check(anyMap, value, path, findings);
  return [];
}

function checkKey(key: string, path: Path, findings: Findings): void {
  const result = name.safeParse(key);
  const [first] = result.success ? [] : findingsOf(result.error.issues, { form: name, value: key, path });
  if (first) findings.push({ ...first, at: 'key' });
}

/**
 * The items of a written list.
 *
 * @param value as written
 * @param path of the value in the file
 * @param findings receives a finding if it is no list, or an empty one
 */
export function itemsOf(value: unknown, path: Path, findings: Findings): readonly unknown[] {
  if (value === undefined) return [];
  return check(anyList, value, path, findings) ?? [];
}

/**
 * True if a value is a map with text keys.
 *
 * @param value as written
 */
export function isMap(value: unknown): value is WrittenMap {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

const anyMap = z.record(z.string(), z.unknown());
const anyList = z.array(z.unknown()).min(1);

/**
 * Gives findings their places in the text, in the order of the text; the same thing found twice is kept once.
 *
 * @param source the file
 * @param findings in it
 */
export function placeFindings(source: YamlSource, findings: readonly Finding[]): readonly Problem[] {
  const find = sourceMap(source);
  const starts = lineStarts(source.text);
  const problems = new Map<string, Problem>();
  for (const { at, ...finding } of findings) {
    const place = placeIn(source.text, find(finding.path, at), starts);
    const key = JSON.stringify([place.line, place.column, finding.message, finding.found, finding.expected]);
    if (!problems.has(key)) problems.set(key, { ...finding, file: source.file, ...place });
  }
  return [...problems.values()].sort(compareProblems);
}
