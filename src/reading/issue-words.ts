import type { z } from 'zod';
import { nearestName } from '../quantities/nearest.ts';
import { describeValue } from '../quantities/written.ts';
import type { Finding } from './problem.ts';

const MISFIT = 'this does not fit here';

/** How a misfit is described. */
export type Words = Pick<Finding, 'message' | 'found' | 'expected' | 'suggestion'>;

/**
 * What zod found, in words.
 *
 * @param issue any but an unknown key or a union
 * @param value the written value it is about; undefined if there is none
 */
export function describeIssue(issue: z.core.$ZodIssue, value: unknown): Words {
  const found = describeValue(value);
  switch (issue.code) {
    case 'custom':
      return describeCustom(issue, typeof value === 'object' ? undefined : found);
    case 'invalid_type':
      return describeType(issue.expected, value, found);
    case 'invalid_value':
      return describeWord(found, issue.values.map(String));
    case 'too_small':
      return {
        message: 'too small',
        found,
        expected: bound(issue, ['at least', 'more than'], issue.minimum),
      };
    case 'too_big':
      return { message: 'too large', found, expected: bound(issue, ['at most', 'less than'], issue.maximum) };
    case 'invalid_key':
      return { message: issue.issues[0]?.message ?? issue.message };
    default:
      return { message: issue.message, found };
  }
}

/** Most names listed in a message. */
const MOST_NAMES = 12;

/**
 * Names to choose from, in words.
 *
 * @param known at least one
 */
export function oneOf(known: readonly string[]): string {
  if (known.length === 1) return `${known[0]}`;
  return `one of ${known.slice(0, MOST_NAMES).join(', ')}${known.length > MOST_NAMES ? ', ...' : ''}`;
}

/**
 * A word that is not among the known ones.
 *
 * @param found as written
 * @param known words
 */
export function describeWord(found: string, known: readonly string[]): Words {
  const near = nearestName(found, known);
  return {
    message: 'this word is not known here',
    found,
    expected: oneOf(known),
    ...(near ? { suggestion: near } : {}),
  };
}

function describeCustom(issue: z.core.$ZodIssueCustom, written: string | undefined): Words {
  const { found = written, expected, suggestion } = issue.params ?? {};
  const message = issue.params?.['found'] === undefined ? 'this number is not allowed' : MISFIT;
  return {
    message: typeof expected === 'string' ? message : issue.message,
    ...(typeof found === 'string' ? { found } : {}),
    ...(typeof expected === 'string' ? { expected } : {}),
    ...(typeof suggestion === 'string' ? { suggestion } : {}),
  };
}

const counted: Readonly<Record<string, string>> = { string: ' letter', array: ' item' };

function bound(
  issue: { readonly inclusive?: boolean | undefined; readonly origin: string },
  [inclusive, exclusive]: readonly [string, string],
  limit: number | bigint,
): string {
  const unit = counted[issue.origin];
  const shown = unit === undefined ? '' : `${unit}${Number(limit) === 1 ? '' : 's'}`;
  return `${issue.inclusive === false ? exclusive : inclusive} ${limit}${shown}`;
}

const typeNames: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  boolean: 'true or false',
  array: 'a list',
  object: 'keys with values',
  record: 'names with values',
};

function describeType(type: string, value: unknown, found: string): Words {
  const expected = typeNames[type];
  return { message: MISFIT, found, ...(expected ? { expected } : {}), ...mended(type, value, found) };
}

/** How a single value is written where text or a list is wanted. */
function mended(type: string, value: unknown, found: string): { readonly suggestion?: string } {
  if (value === undefined || value === null || typeof value === 'object') return {};
  if (type === 'array') return typeof value === 'string' ? { suggestion: `[${found}]` } : {};
  return type === 'string' ? { suggestion: `"${found}"` } : {};
}
