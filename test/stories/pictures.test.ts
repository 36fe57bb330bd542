import { describe, expect, it } from 'vitest';
import { hushwright } from '../commands/program.ts';

/** Lines of the field of a plot: those that begin with its left axis. */
function fieldOf(text: string): readonly string[] {
  return text.split('\n').filter((line) => /^\s*-?\d*\s?[┤│]/.test(line));
}

function countOf(lines: readonly string[], mark: string): number {
  return lines.join('').split(mark).length - 1;
}

// Reference: what is drawn can be counted.
describe('pictures', () => {
  it('of a supply: bars as long as the load is of what it may give', () => {
    const { out } = hushwright(['supply', '--wall', '300 W', '--efficiency', '77 %', '--rating', '330 W']);
    const bars = out.match(/█+░*▏/g) ?? [];
    // 231 of 330 W are 14 of 20 columns, peaks of 277.2 W are 16.8.
    expect(bars).toEqual([`${'█'.repeat(14)}${'░'.repeat(6)}▏`, `${'█'.repeat(17)}${'░'.repeat(3)}▏`]);
  });

  it('of the air: twice the flow for twice the heat, and every heat has its mark', () => {
    const { out } = hushwright(['air', '--power', '95 W', '--rise', '10 K']);
    const field = fieldOf(out);
    for (const mark of ['●', '+', '○']) expect(countOf(field, mark)).toBeGreaterThan(2);
    // The dearest heat at the least rise stands highest, the least heat at the greatest rise lowest.
    expect(field.findIndex((line) => line.includes('○'))).toBe(0);
    expect(field.findLastIndex((line) => line.includes('·'))).toBe(field.length - 1);
  });

  it('of margins: a mark for every room, falling, and an upright where the first limit is met', () => {
    const run = hushwright(['margin', 'scenarios/desk-scanner.yaml', '--build', 'as-built']);
    const field = fieldOf(run.out);
    expect(countOf(field, '●')).toBe(3);
    expect(countOf(field, '○')).toBe(3);
    const drawn = field.flatMap((line, row) => [...line.matchAll(/●/g)].map(({ index }) => ({ row, index })));
    expect(drawn.map(({ index }) => index)).toEqual(
      drawn.map(({ index }) => index).toSorted((a, b) => a - b),
    );
    expect(run.out).toContain('where the first limit is met');
  });

  it('of a comparison: every variant has its number in the picture and under it', () => {
    const { out } = hushwright(['compare', 'scenarios/desk-scanner.yaml', '--build', 'as-built']);
    const field = fieldOf(out).map((line) => line.replace(/^\s*-?\d*\s?[┤│]/, ''));
    for (const mark of ['1', '2', '3', '4', '5']) expect(countOf(field, mark)).toBeGreaterThan(0);
    expect(out).toMatch(/1 push {3}2 pull {3}3 push-pull {3}4 side by side {3}5 one larger/);
  });
});
