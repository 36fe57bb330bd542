import { describe, expect, it } from 'vitest';
import type { Enclosure } from '../../src/enclosure/enclosure.ts';
import { withLostFans } from '../../src/enclosure/lost-fans.ts';
import { assemble, plantOf } from '../../src/enclosure/machine.ts';
import { plain } from '../../src/presentation/paint.ts';
import { solveView } from '../../src/presentation/solve-view.ts';
import { isFailed, outcomeAt } from '../../src/search/build-outcome.ts';
import { scenarioFiles, shippedScenario } from '../scenarios/shipped.ts';

/** The first build a scenario names, or its last options, with every bank at a share of full speed, as text. */
function textOf(enclosure: Enclosure, ratio: number): string {
  const [named] = enclosure.builds;
  const build = named?.options ?? enclosure.places.map(({ options }) => options.length - 1);
  const machine = assemble(plantOf(withLostFans(enclosure, build, named?.lost ?? [])), build);
  const speeds = Float64Array.from(machine.banks, () => ratio);
  const outcome = outcomeAt(
    machine,
    enclosure.duties.map(() => speeds),
    0,
  );
  if (isFailed(outcome)) throw new Error(outcome.reason);
  return solveView(outcome, { paint: plain, width: undefined });
}

/** Printed budgets: each its terms and its total, all in tenths. */
function budgetsIn(text: string): readonly { readonly terms: number; readonly total: number }[] {
  const found: { terms: number; total: number }[] = [];
  let terms = 0;
  for (const line of text.split('\n')) {
    const number = /([+-]?\d+\.\d)(?: +[█▒▏]+)?$/.exec(line)?.[1];
    if (line === '' || number === undefined) terms = 0;
    else if (line.includes('sum: ')) {
      found.push({ terms, total: Math.round(Number(number) * 10) });
      terms = 0;
    } else terms += Math.round(Number(number) * 10);
  }
  return found;
}

/** Printed shares of the noise: those of the sources and that of all. */
function sharesIn(text: string): readonly (readonly number[])[] {
  return text
    .split('Source of noise')
    .slice(1)
    .map((table) => {
      const lines = table.split('\n').slice(2);
      const end = lines.findIndex((line) => line.startsWith('at the listener'));
      return lines.slice(0, end + 1).map((line) => Number(/(\d+)$/.exec(line)?.[1]));
    });
}

describe.each(scenarioFiles.map(({ file }) => file.replace('.yaml', '')))('printed figures of %s', (name) => {
  const text = [0.45, 0.8].map((ratio) => textOf(shippedScenario(name), ratio)).join('\n');

  it('of degrees, pressures and heat sum to their printed totals', () => {
    const budgets = budgetsIn(text);
    expect(budgets.length).toBeGreaterThan(5);
    expect(budgets.filter(({ terms, total }) => terms !== total)).toEqual([]);
  });

  it('of noise sum to all of it', () => {
    const shares = sharesIn(text);
    expect(shares.length).toBeGreaterThan(0);
    for (const each of shares) {
      const total = each.at(-1);
      expect(each.slice(0, -1).reduce((sum, share) => sum + share, 0)).toBe(total);
    }
  });
});
