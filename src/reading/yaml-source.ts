import {
  CORE_SCHEMA,
  constructFromEvents,
  type Event,
  floatJsonTag,
  intJsonTag,
  parseEvents,
  YAMLException,
} from 'js-yaml';
import type { Problem, ProblemCode } from './problem.ts';
import { placeIn } from './text-place.ts';

/** A YAML text with its value and what is needed to find the place of any part of it. */
export interface YamlSource {
  readonly file: string;
  readonly text: string;
  readonly events: readonly Event[];
  readonly value: unknown;
}

/** Most keys, values, lists and maps in one file [-]: a scenario has some hundreds, a fan some fifty. */
export const MOST_NODES = { scenario: 20_000, catalog: 300_000 };
/** Most letters of a file for each of them [-], and most at all: longer ones would only take time to refuse. */
const LETTERS_A_NODE = 50;
const MOST_LETTERS = 5_000_000;
/** Most signs that part or open something for each of them [-]. */
const SIGNS_A_NODE = 2;
/** Deepest nesting of lists and maps [-]; the formats here need eight. */
const DEEPEST = 32;

/** Numbers as JSON has them: "0x10", "012" and ".inf" stay text, and text in the place of a number is refused. */
const schema = CORE_SCHEMA.withTags(intJsonTag, floatJsonTag);

/**
 * Reads one YAML document. Aliases are refused, so that a short text cannot make a huge or endless value.
 *
 * @param file name, for messages
 * @param text content of the file
 * @param mostNodes keys, values, lists and maps it may have [-]
 */
export function parseYaml(
  file: string,
  text: string,
  mostNodes: number,
): { readonly ok: true; readonly source: YamlSource } | { readonly ok: false; readonly problem: Problem } {
  const plain = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const problem = unreadable(file, plain, mostNodes);
  if (problem) return { ok: false, problem };
  try {
    const events = parseEvents(plain, { filename: file, maxDepth: DEEPEST });
    if (events.length > mostNodes) {
      const message = `the file is too large: ${events.length} keys and values, at most ${mostNodes} are read`;
      return { ok: false, problem: { code: 'too-large', file, line: 1, column: 1, path: [], message } };
    }
    const documents = constructFromEvents(events, { source: plain, schema, filename: file, maxAliases: 0 });
    const [value = null] = documents;
    if (documents.length > 1) {
      const second = plain.lastIndexOf('\n---') + 1;
      return {
        ok: false,
        problem: problemAt(file, plain, second, 'syntax', 'a second document begins here'),
      };
    }
    if (value === null) {
      return { ok: false, problem: problemAt(file, plain, 0, 'empty-file', 'the file is empty') };
    }
    return { ok: true, source: { file, text: plain, events, value } };
  } catch (error) {
    if (!(error instanceof YAMLException)) throw error;
    const [code, message] = explain(error.reason);
    // The parser points behind the star of an alias.
    const place = (error.mark?.position ?? 0) - (code === 'alias' ? 1 : 0);
    const offset = Math.min(place, plain.length);
    return { ok: false, problem: problemAt(file, plain, offset, code, message) };
  }
}

/** How much larger a text is than it may be, told before it is parsed; undefined if it is not. */
function excess(text: string, mostNodes: number): string | undefined {
  const letters = Math.min(MOST_LETTERS, LETTERS_A_NODE * mostNodes);
  if (text.length > letters) return `${text.length} letters, at most ${letters} are read`;
  let signs = 0;
  for (const _ of text.matchAll(/[\n\r,[{]/g)) signs++;
  const most = SIGNS_A_NODE * mostNodes;
  return signs > most ? `${signs} lines, commas and brackets, at most ${most} are read` : undefined;
}

function unreadable(file: string, text: string, mostNodes: number): Problem | undefined {
  const much = excess(text, mostNodes);
  if (much !== undefined) {
    const message = `the file is too large: ${much}`;
    return { code: 'too-large', file, line: 1, column: 1, path: [], message };
  }
  // U+FFFD is what a decoder leaves where bytes were no UTF-8.
  const junk = text.search(/[\0\uFFFD]/);
  if (junk < 0) return undefined;
  const { line, column } = placeIn(text, junk);
  const suggestion = 'save it as UTF-8';
  return { code: 'not-text', file, line, column, path: [], message: NOT_TEXT, suggestion };
}

const NOT_TEXT = 'not a text file in UTF-8';

/** What the parser's reasons mean to somebody who does not know the parser; others are passed on. */
const explanations: readonly (readonly [RegExp, ProblemCode, string])[] = [
  [/^aliases exceeded/, 'alias', 'aliases (*name) are not read: write the value out'],
  [/^nesting exceeded/, 'too-deep', `lists and maps are nested more than ${DEEPEST} deep`],
  [/^duplicated mapping key/, 'duplicate-key', 'this key stands here a second time'],
  [/non-printable|null byte/, 'not-text', NOT_TEXT],
  [/^tab characters/, 'syntax', 'a tab is used for indentation: use spaces'],
  [/^bad indentation/, 'syntax', 'the indentation does not fit the lines above'],
  [/^deficient indentation/, 'syntax', 'this line is indented too little'],
  [
    /^end of the stream or a document separator/,
    'syntax',
    'the indentation does not fit, or a tab is used for it',
  ],
  [/^unexpected end of the stream within a flow/, 'syntax', 'a bracket is not closed'],
  [/quoted scalar$/, 'syntax', 'a quotation mark is not closed'],
  [/complex keys/, 'syntax', 'a list or a map cannot be a key'],
  [/multiline key/, 'syntax', 'a colon is missing, or the indentation does not fit'],
];

function explain(reason: string): readonly [ProblemCode, string] {
  const known = explanations.find(([pattern]) => pattern.test(reason));
  return known ? [known[1], known[2]] : ['syntax', reason];
}

function problemAt(file: string, text: string, offset: number, code: ProblemCode, message: string): Problem {
  return { code, file, ...placeIn(text, offset), path: [], message };
}
