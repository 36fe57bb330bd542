import { describe, expect, it } from 'vitest';
import { readCatalog } from '../../src/reading/catalog-file.ts';
import { formatProblem, type Problem } from '../../src/reading/problem.ts';
import { readScenario } from '../../src/reading/scenario-file.ts';
import { changed, unmarked } from './marked.ts';
import { FAMILY, SCENARIO } from './samples.ts';

const catalog = readCatalog('slim.yaml', FAMILY);

/** The fans of the sample family. */
export const fans = catalog.ok ? catalog.fans : [];

/**
 * What is wrong with a scenario.
 *
 * @param text of the scenario
 */
export function problemsOf(text: string): readonly Problem[] {
  const outcome = readScenario('scanner.yaml', text, fans);
  return outcome.ok ? [] : outcome.problems;
}

/**
 * What is replaced in the good sample, by what, with a mark before each expected place, and the problems in order.
 * Each list is complete: one mistake gives one problem.
 */
export type Case = readonly [title: string, from: string, to: string, ...problems: object[]];

/** Matches any text that holds a piece. */
export const text = (piece: string): unknown => expect.stringContaining(piece);

/**
 * Checks that each mistake gives the expected problems, at the marked places.
 *
 * @param title of the group
 * @param cases mistakes
 */
export function describeProblems(title: string, cases: readonly Case[]): void {
  const named = cases.map(([name, from, to, ...expected]) => ({ name, from, to, expected }));
  describe(title, () => {
    it.each(named)('$name', ({ from, to, expected }) => {
      const { text: bad, places } = unmarked(changed(SCENARIO, from, to));
      const problems = problemsOf(bad);
      expect(problems).toMatchObject(expected);
      expect(problems.map(({ line, column }) => [line, column])).toEqual(places);
      for (const problem of problems) expectMarkUnderPlace(problem, bad);
    });
  });
}

/** The mark of the printed problem stands under the very place. */
function expectMarkUnderPlace(problem: Problem, bad: string): void {
  const [source = '', mark = ''] = formatProblem(problem).split('\n').slice(-2);
  const shown = source.slice(mark.indexOf('^'));
  const written = bad.split('\n')[problem.line - 1]?.slice(problem.column - 1) ?? '';
  expect(shown).not.toBe('');
  expect(written.startsWith(shown)).toBe(true);
}
