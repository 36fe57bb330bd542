import { formatProblem, type Problem } from '../reading/problem.ts';
import { count } from './figures.ts';
import type { Paint } from './paint.ts';
import { printableWithTabs } from './printable.ts';

/** How a list of problems is shown. */
export interface ProblemViewOptions {
  readonly paint: Paint;
}

/**
 * Problems as text: each with the line of the file and a mark under the place, then how many there are and where.
 *
 * @param problems in the order in which they are told
 * @param options paint
 * @returns lines that end with a line break; empty if there is no problem
 */
export function problemView(problems: readonly Problem[], { paint }: ProblemViewOptions): string {
  if (problems.length === 0) return '';
  const texts = problemTexts(problems, paint);
  return `${[...texts, paint.strong(countLine(problems))].join('\n\n')}\n`;
}

/**
 * Each problem as text, without a line break at its end.
 *
 * @param problems in the order in which they are told
 * @param paint colours
 */
export function problemTexts(problems: readonly Problem[], paint: Paint): readonly string[] {
  return problems.map((problem) => paintProblem(problem, paint));
}

function paintProblem(problem: Problem, paint: Paint): string {
  const lines = formatProblem(problem).split('\n').map(printableWithTabs);
  return lines
    .map((line, index) => {
      if (index === 0) return paint.strong(line);
      if (problem.sourceLine !== undefined && index === lines.length - 1) return paint.bad(line);
      return line.startsWith('  write ') ? paint.good(line) : line;
    })
    .join('\n');
}

function countLine(problems: readonly Problem[]): string {
  const files = [...new Set(problems.map(({ file }) => file))].map(printableWithTabs);
  const number = problems.length === 1 ? '1 problem' : `${count(problems.length)} problems`;
  const [last = '', ...others] = files.toReversed();
  const before = others.toReversed().join(', ');
  return `${number} in ${before === '' ? last : `${before} and ${last}`}`;
}
