/** What is wrong, as a word a program can compare. */
export type ProblemCode =
  /** The file itself: not there, no permission, no ordinary file. */
  | 'unreadable'
  /** Not text in UTF-8, or with characters no text has. */
  | 'not-text'
  | 'too-large'
  | 'too-deep'
  /** Not YAML: indentation, brackets, quotes. */
  | 'syntax'
  | 'alias'
  | 'duplicate-key'
  | 'empty-file'
  | 'misspelt-key'
  | 'unknown-key'
  | 'missing-key'
  /** Not the kind of thing that belongs there, or without its unit. */
  | 'wrong-value'
  | 'out-of-range'
  | 'unknown-name'
  | 'duplicate-name'
  /** Two things that exclude each other. */
  | 'conflict'
  | 'unused'
  | 'used-twice'
  /** A chamber without a way to the room. */
  | 'unreachable'
  /** No fan that goes into a place. */
  | 'no-fit'
  /** Points that cannot be a fan's curve. */
  | 'fan-curve'
  /** Can be read, but is probably a slip: told, and no reason to refuse. */
  | 'doubtful';

/** Keys and list indices from the top of a file. */
export type Path = readonly (string | number)[];

/** A problem whose place in the text is not yet known. */
export interface Finding {
  readonly code: ProblemCode;
  readonly path: Path;
  /** Whether the key or the value is to blame. */
  readonly at: 'key' | 'value';
  /** One short sentence without a full stop. */
  readonly message: string;
  readonly found?: string;
  readonly expected?: string;
  /** What was probably meant, ready to be written. */
  readonly suggestion?: string;
}

/** Something wrong in a file, as plain data. */
export interface Problem extends Omit<Finding, 'at'> {
  readonly file: string;
  /** From 1. */
  readonly line: number;
  /** From 1, in characters. */
  readonly column: number;
  /** The line of the file; absent if it shows nothing, as in a file that is no text. */
  readonly sourceLine?: string;
}

/** Widest piece of a source line shown [letters]. */
const WIDEST = 120;
/** Letters shown before the place in a line that is too wide. */
const BEFORE = 60;

/**
 * A problem as text: `file:line:column: where: message`, then what was found, what was expected, what was
 * probably meant, and the line with a mark under the place. No colour.
 *
 * Source: form of the first line as in the GNU Coding Standards, "Formatting Error Messages".
 *
 * @param problem to show
 */
export function formatProblem(problem: Problem): string {
  const { file, line, column, path, message, found, expected, suggestion } = problem;
  const where = path.length > 0 ? `${formatPath(path)}: ` : '';
  const lines = [`${file}:${line}:${column}: ${where}${message}`];
  if (found !== undefined) lines.push(`  found     ${printable(found)}`);
  if (expected !== undefined) lines.push(`  expected  ${printable(expected)}`);
  if (suggestion !== undefined) lines.push(`  write     ${printable(suggestion)}`);
  return [...lines, ...excerpt(problem)].join('\n');
}

/**
 * A path as text, for example `heat[0].limit`.
 *
 * @param path keys and list indices
 */
function formatPath(path: Path): string {
  const steps = path.map((step) => (typeof step === 'number' ? `[${step}]` : `.${printable(step)}`));
  return steps.join('').replace(/^\./, '');
}

/**
 * Order of problems in a report: by place, then by message.
 *
 * @param one of a file
 * @param other of the same file
 */
export function compareProblems(one: Problem, other: Problem): number {
  const byPlace = one.line - other.line || one.column - other.column;
  if (byPlace !== 0 || one.message === other.message) return byPlace;
  return one.message < other.message ? -1 : 1;
}

function excerpt({ line, column, sourceLine }: Problem): string[] {
  if (sourceLine === undefined) return [];
  const letters = [...sourceLine];
  const start = letters.length > WIDEST ? Math.max(0, column - 1 - BEFORE) : 0;
  const shown = letters.slice(start, start + WIDEST);
  // A tab under a tab keeps the mark under its letter whatever width the terminal gives it.
  const blank = shown.slice(0, column - 1 - start).map((letter) => (letter === '\t' ? '\t' : ' '));
  const head = `${line}`.padStart(5);
  return [`${head} | ${printable(shown.join(''))}`, `${' '.repeat(head.length)} | ${blank.join('')}^`];
}

/** Characters that would move a terminal's cursor or colour it are shown as a replacement mark. */
function printable(text: string): string {
  return text.replace(/[^\P{Cc}\t]|\p{Cf}/gu, '\uFFFD');
}
