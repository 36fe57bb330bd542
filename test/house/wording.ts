import type { SourceText } from './source-text.ts';

/** What must not stand in anything that ships, and why. */
const unwanted: readonly (readonly [RegExp, string])[] = [
  [/(?:^|[\s'"`(=:])\/(?:work|tmp|home|root|Users|var)\b/, 'an absolute path'],
  [/\b[A-Z]:\\\w/, 'an absolute path'],
  [/\b(?:TODO|FIXME|XXX|HACK)\b/, 'unfinished work'],
  [/\bnot (?:yet )?implemented\b/i, 'unfinished work'],
  [/\b(?:lorem ipsum|foo|baz)\b/i, 'filler'],
  [/\b(?:biome-ignore|eslint-disable)\b|@ts-(?:ignore|expect-error|nocheck)\b/, 'a check switched off'],
  [/\b(?:v8|c8|istanbul) ignore\b/, 'a check switched off'],
  [/\b(?:it|test|describe)(?:\.\w+)*\.(?:skip|skipIf|runIf|only|todo|fails)\b/, 'a test switched off'],
  [/\bas an? (?:AI|language model)\b|\b(?:AI|LLM|chatbot)s?\b/i, 'how it was written'],
  [/(?<!yargs\/)\b(?:sessions?|helpers?|(?:sub-?)?agents?)\b/i, 'how it was written'],
  [
    /\b(?:design|style|style-second|stories|airflow|heat|sound|command-line)\.md\b/,
    'a file that is not here',
  ],
  [/\breference sheets?\b/i, 'a file that is not here'],
];

/**
 * Unwanted words and where they stand.
 *
 * @param file path and content
 * @returns `path:line what` for each
 */
export function unwantedWords({ path, text }: SourceText): readonly string[] {
  return text
    .split('\n')
    .flatMap((line, index) =>
      unwanted.filter(([pattern]) => pattern.test(line)).map(([, what]) => `${path}:${index + 1} ${what}`),
    );
}
