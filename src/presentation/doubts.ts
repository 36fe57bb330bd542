import type { Problem } from '../reading/problem.ts';
import type { Meta, Warning } from './document.ts';
import { count } from './figures.ts';
import type { Paint } from './paint.ts';
import { problemTexts } from './problem-view.ts';

/**
 * What is odd about the user's own figures, as text: each with its line, then how many.
 *
 * @param doubts in the order in which they are told
 * @param paint colours
 * @returns lines that end with a line break; empty if nothing is odd
 */
export function doubtView(doubts: readonly Problem[], paint: Paint): string {
  if (doubts.length === 0) return '';
  const end = `${doubts.length === 1 ? '1 figure looks' : `${count(doubts.length)} figures look`} like a slip; all are used as they stand`;
  return `${[...problemTexts(doubts, paint), paint.strong(end)].join('\n\n')}\n`;
}

/**
 * The same in one line, for answers to something else.
 *
 * @param doubts in the order in which they are told
 */
export function doubtNote(doubts: readonly Problem[]): string {
  const [first] = doubts;
  if (!first) return '';
  const number = doubts.length === 1 ? '1 figure looks' : `${count(doubts.length)} figures look`;
  return `hushwright: ${number} like a slip, such as ${first.file}:${first.line}:${first.column}: see "check"\n`;
}

/**
 * The same as warnings of a document.
 *
 * @param meta of the document
 * @param doubts in the order in which they are told
 */
export function withDoubts(meta: Meta, doubts: readonly Problem[]): Meta {
  return doubts.length === 0
    ? meta
    : { ...meta, warnings: [...(meta.warnings ?? []), ...doubts.map(warningOf)] };
}

function warningOf({
  code,
  path,
  message,
  found,
  expected,
  suggestion,
  file,
  line,
  column,
}: Problem): Warning {
  const more = [found, expected].filter((part) => part !== undefined).join('; ');
  return {
    code,
    message: `${path.join('.')}: ${message}${more === '' ? '' : ` (${more})`}`,
    file,
    line,
    column,
    ...(suggestion === undefined ? {} : { suggestion }),
  };
}
