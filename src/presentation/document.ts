/** Anything a JSON text can hold. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

/** Something a reader of the result should know, as data. */
export interface Warning {
  /** A word a program can compare. */
  readonly code: string;
  readonly message: string;
  /** Place in the document, as a JSON pointer (RFC 6901). */
  readonly at?: string;
  /** Place in a file the user wrote, from 1. */
  readonly file?: string;
  readonly line?: number;
  readonly column?: number;
  /** What was probably meant there. */
  readonly suggestion?: string;
}

/** What a document says beside the result. */
export interface Meta {
  /** Version of the program. */
  readonly version: string;
  /** The command that was given, for example `rank`. */
  readonly command: string;
  readonly warnings?: readonly Warning[];
}

/** The answer to one command. Additions keep the format version, all other changes raise it. */
export interface Document {
  readonly formatVersion: 1;
  readonly tool: 'hushwright';
  readonly version: string;
  readonly command: string;
  readonly warnings: readonly Json[];
  readonly result: Json;
}

/** Digits that are kept of a number: more than is known, fewer than differ from machine to machine. */
const SIGNIFICANT_DIGITS = 7;

/**
 * Wraps a result. Numbers are rounded to 7 significant digits, whole ones stay exact. JSON has no infinite and
 * no undefined numbers: such a value becomes null and a warning says where and why.
 *
 * @param result in SI, with the unit in the key
 * @param meta version, command and warnings
 */
export function documentOf(result: Json, meta: Meta): Document {
  const lost: Warning[] = [];
  const settled = settle(result, '/result', lost);
  return {
    formatVersion: 1,
    tool: 'hushwright',
    version: meta.version,
    command: meta.command,
    warnings: [...(meta.warnings ?? []), ...lost].map((warning) => ({ ...warning })),
    result: settled,
  };
}

/**
 * A document as text: two spaces a level, ends with a line break.
 *
 * @param document to write
 */
export function toText(document: Document): string {
  return `${JSON.stringify(document, null, 2)}\n`;
}

function settle(value: Json, at: string, lost: Warning[]): Json {
  if (typeof value === 'number') return settleNumber(value, at, lost);
  if (value === null || typeof value !== 'object') return value;
  if (isList(value)) return value.map((entry, index) => settle(entry, `${at}/${index}`, lost));
  return Object.fromEntries(
    Object.entries(value).map(([key, entry]) => [key, settle(entry, `${at}/${escaped(key)}`, lost)]),
  );
}

function settleNumber(value: number, at: string, lost: Warning[]): number | null {
  if (Number.isFinite(value)) {
    // Adding zero turns a negative zero into a plain one.
    return Number.isSafeInteger(value) ? value + 0 : Number(value.toPrecision(SIGNIFICANT_DIGITS)) + 0;
  }
  lost.push({ code: 'not-finite', message: `null stands for ${nameOf(value)}`, at });
  return null;
}

function nameOf(value: number): string {
  if (Number.isNaN(value)) return 'a value that does not exist';
  return value > 0 ? 'plus infinity' : 'minus infinity';
}

function isList(value: Exclude<Json, null | boolean | number | string>): value is readonly Json[] {
  return Array.isArray(value);
}

function escaped(key: string): string {
  return key.replaceAll('~', '~0').replaceAll('/', '~1');
}
